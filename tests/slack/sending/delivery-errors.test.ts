import { WebAPIRequestError } from '@slack/web-api';
import { describe, expect, it } from 'vitest';
import { toDeliveryFailure } from '../../../src/slack/sending/delivery-errors.ts';

/** What fetch throws: a TypeError whose cause holds the code of the connection. */
function connectionError(cause: Error): WebAPIRequestError {
  return new WebAPIRequestError(new TypeError('fetch failed', { cause }));
}

function withCode(code: string): Error {
  return Object.assign(new Error(code), { code });
}

describe('toDeliveryFailure', () => {
  it.each(['ECONNREFUSED', 'ENOTFOUND', 'EAI_AGAIN', 'UND_ERR_CONNECT_TIMEOUT'])(
    '%s: the connection was never made, so nothing was sent',
    (code) => {
      expect(toDeliveryFailure(connectionError(withCode(code)))).toMatchObject({ kind: 'not-sent', code });
    },
  );

  it.each(['ECONNRESET', 'UND_ERR_SOCKET', 'EPIPE'])('%s: the connection broke, so nobody knows', (code) => {
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
