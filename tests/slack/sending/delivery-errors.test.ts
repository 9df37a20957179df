import { WebAPIPlatformError, WebAPIRequestError } from '@slack/web-api';
import { describe, expect, it } from 'vitest';
import { toDeliveryFailure } from '../../../src/slack/sending/delivery-errors.ts';
import documented from './documented-errors.json' with { type: 'json' };

/** What fetch throws: a TypeError whose cause holds the code of the connection. */
function connectionError(cause: Error): WebAPIRequestError {
  return new WebAPIRequestError(new TypeError('fetch failed', { cause }));
}

function withCode(code: string): Error {
  return Object.assign(new Error(code), { code });
}

describe('toDeliveryFailure', () => {
  it.each(['ECONNREFUSED', 'ENOTFOUND', 'EAI_AGAIN', 'NOT_CONNECTED_IN_TIME'])(
    '%s: the connection was never made, so nothing was sent',
    (code) => {
      expect(toDeliveryFailure(connectionError(withCode(code)))).toMatchObject({ kind: 'not-sent', code });
    },
  );

  it.each(['ECONNRESET', 'EPIPE'])('%s: the connection broke, so nobody knows', (code) => {
    expect(toDeliveryFailure(connectionError(withCode(code)))).toMatchObject({ kind: 'uncertain', code });
  });

  it('a timeout is uncertain', () => {
    const timeout = new WebAPIRequestError(new DOMException('timed out', 'TimeoutError') as unknown as Error);
    expect(toDeliveryFailure(timeout)).toMatchObject({ kind: 'uncertain', code: 'TimeoutError' });
  });

  it('all addresses of a host must have refused for nothing to be sent', () => {
    const all = new AggregateError([withCode('ECONNREFUSED'), withCode('ENETUNREACH')]);
    expect(toDeliveryFailure(connectionError(all)).kind).toBe('not-sent');
    const some = new AggregateError([withCode('ECONNREFUSED'), withCode('ECONNRESET')]);
    expect(toDeliveryFailure(connectionError(some)).kind).toBe('uncertain');
  });

  it('what nobody foresaw is uncertain and keeps its cause', () => {
    const cause = new Error('odd');
    expect(toDeliveryFailure(cause)).toMatchObject({ kind: 'uncertain', cause });
  });
});

/**
 * Every error code that the platform documents for the methods that the bot calls, in classes of our own; `*` has those of all
 * methods. Source: the error tables of docs.slack.dev/reference/methods, as captured in August 2026.
 */
describe('each documented error', () => {
  /** What comes of a post that ends so: nothing is tried for ever, and nothing is posted twice. */
  const ENDS: Readonly<Record<string, readonly string[]>> = {
    'try-later': ['not-sent', 'rate-limited'],
    'platform-trouble': ['uncertain'],
    'place-gone': ['refused'],
    'person-gone': ['refused'],
    'token-gone': ['refused'],
    permission: ['refused'],
    'our-defect': ['refused'],
  };
  /** Of two methods, but with one meaning for a post: what it is about is gone. */
  const ELSEWHERE: Readonly<Record<string, string>> = {
    file_not_found: 'place-gone',
    team_not_found: 'place-gone',
  };
  const cases = Object.entries(documented).flatMap(([method, classes]) =>
    Object.entries(classes).flatMap(([errorClass, codes]) =>
      (codes as string[]).map((code) => [method, code, ELSEWHERE[code] ?? errorClass] as const),
    ),
  );

  it.each(cases)('of %s has its end: %s (%s)', (_method, code, errorClass) => {
    const failure = toDeliveryFailure(new WebAPIPlatformError({ ok: false, error: code }));
    expect(ENDS[errorClass]).toContain(failure.kind);
    expect(failure.because).toBe(failure.kind === 'refused' ? errorClass : undefined);
  });

  it('is listed: the table is not empty, and has the errors of posting', () => {
    expect(cases.length).toBeGreaterThan(180);
    expect(documented['chat.postMessage']['place-gone']).toContain('is_archived');
  });

  it('that no table lists is tried again', () => {
    const failure = toDeliveryFailure(new WebAPIPlatformError({ ok: false, error: 'a_code_of_next_year' }));
    expect(failure.kind).toBe('not-sent');
  });
});
