import { describe, expect, it, vi } from 'vitest';
import { noteSecurity } from '../src/logger.ts';
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

  it('writes only so many of what can be caused at will, and says how many it left out', () => {
    vi.useFakeTimers();
    try {
      const { logger, entries } = logCatcher();
      for (let i = 0; i < 1_000; i += 1) {
        logger.warn({ reason: 'forged', i }, 'A request was turned away.');
        logger.info({ refused: true }, 'Refused.');
      }
      logger.warn({ reason: 'stale' }, 'A request was turned away.');
      for (let i = 0; i < 100; i += 1) logger.info({}, 'Done.');
      for (let i = 0; i < 100; i += 1) logger.error({}, 'Something went wrong.');
      const count = (msg: string, reason?: string) =>
        entries().filter((line) => line.msg === msg && line.reason === reason).length;
      expect(count('A request was turned away.', 'forged')).toBe(60);
      expect(count('A request was turned away.', 'stale')).toBe(1);
      expect(count('Refused.')).toBe(60);
      expect([count('Done.'), count('Something went wrong.')]).toEqual([100, 100]);
      const before = entries().length;
      vi.advanceTimersByTime(60_000);
      expect(entries().slice(before)).toEqual([
        expect.objectContaining({
          level: 'warn',
          leftOut: 940,
          reason: 'forged',
          msg: 'A request was turned away.',
        }),
        expect.objectContaining({ level: 'info', leftOut: 940, msg: 'Refused.' }),
      ]);
      logger.info({ refused: true }, 'Refused.');
      expect(count('Refused.')).toBe(62);
    } finally {
      vi.useRealTimers();
    }
  });

  it('writes hardly anything of a warning that lasts, and all of it again once it is over', () => {
    vi.useFakeTimers();
    try {
      const { logger, entries } = logCatcher();
      const warnEverySecond = (seconds: number): number => {
        const before = entries().length;
        for (let i = 0; i < seconds; i += 1) {
          logger.warn({ reason: 'database-full' }, 'database trouble in the background');
          vi.advanceTimersByTime(1_000);
        }
        return entries().length - before;
      };
      expect(warnEverySecond(60)).toBe(60);
      // Of each minute a few lines, and one that says how many were left out.
      expect(warnEverySecond(600)).toBe(40);
      expect(entries().at(-1)).toMatchObject({ leftOut: 57, reason: 'database-full' });
      vi.advanceTimersByTime(120_000);
      expect(warnEverySecond(20)).toBe(20);
    } finally {
      vi.useRealTimers();
    }
  });

  it('leaves no workspace’s refusals out for those of another, and names in the last line what was left out', () => {
    vi.useFakeTimers();
    try {
      const { logger, entries } = logCatcher();
      const refused = (workspaceId: string, actorId: string) =>
        noteSecurity(logger, {
          ...{ event: 'request-refused', by: 'person', reason: 'not-a-facilitator' },
          ...{ workspaceId, actorId },
        });
      for (let i = 0; i < 500; i += 1) refused('T1', 'U1');
      refused('T2', 'U2');
      const of = (workspaceId: string) => entries().filter((line) => line.workspaceId === workspaceId);
      expect([of('T1').length, of('T2')]).toEqual([60, [expect.objectContaining({ actorId: 'U2' })]]);
      vi.advanceTimersByTime(60_000);
      expect(of('T1').at(-1)).toMatchObject({
        ...{ event: 'request-refused', reason: 'not-a-facilitator', leftOut: 440 },
      });
      // However many workspaces there are, not all of them together can fill the disk.
      const before = entries().length;
      for (let i = 0; i < 5_000; i += 1) refused(`T${i}`, 'U1');
      expect(entries().length - before).toBe(1_060);
    } finally {
      vi.useRealTimers();
    }
  });
});
