import { describe, expect, it } from 'vitest';
import { logCatcher } from './slack/support/log-catcher.ts';

describe('the log', () => {
  it('lets out no token from any part of an error', () => {
    const { logger, text } = logCatcher();
    const cause = new Error('sent xapp-1-A0-SECRET and xoxe.xoxb-1-SECRET');
    logger.error({ err: new Error('token xoxb-12-SECRET refused', { cause }) }, 'Something went wrong.');
    expect(text()).not.toContain('SECRET');
    expect(text()).toContain('refused');
  });

  it('cuts off the parameters of a failed query, which are people’s words', () => {
    const { logger, text } = logCatcher();
    logger.error({ err: new Error('Failed query: insert into cards\nparams: Repair the tide gauge') }, 'x');
    expect(text()).toContain('insert into cards');
    expect(text()).not.toContain('tide gauge');
  });

  it('keeps kind, code and the code of the cause', () => {
    const { logger, entries } = logCatcher();
    const cause = Object.assign(new Error('no route'), { code: 'EHOSTUNREACH' });
    logger.error({ err: Object.assign(new TypeError('bad', { cause }), { code: 'odd' }) }, 'x');
    expect(entries()[0]?.err).toMatchObject({
      kind: 'TypeError',
      code: 'odd',
      cause: { kind: 'Error', code: 'EHOSTUNREACH' },
    });
  });

  it('shows no password of a database address', () => {
    const { logger, text } = logCatcher();
    logger.error({ err: new Error('can not reach postgres://bot:SECRET@db/loadline') }, 'x');
    expect(text()).toContain('postgres://bot:…@db/loadline');
  });
});
