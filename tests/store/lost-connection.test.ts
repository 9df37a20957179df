import { describe, expect, it } from 'vitest';
import { isLostConnection } from '../../src/store/connection-error.ts';

const failure = (code: string) => Object.assign(new Error('failed'), { code });

describe('a lost connection', () => {
  it.each(['ECONNRESET', 'EPIPE', 'CONNECTION_CLOSED', '57P01', '57P03'])(
    'is recognised by %s, also as a cause',
    (code) => {
      expect(isLostConnection(failure(code))).toBe(true);
      expect(isLostConnection(new Error('the query failed', { cause: failure(code) }))).toBe(true);
    },
  );

  it('is not recognised by anything else, not even a loop of causes', () => {
    const loop = new Error('loop');
    loop.cause = loop;
    for (const other of [
      failure('23505'),
      failure('ENOENT'),
      new TypeError('a defect'),
      'text',
      undefined,
      loop,
    ]) {
      expect(isLostConnection(other)).toBe(false);
    }
  });
});
