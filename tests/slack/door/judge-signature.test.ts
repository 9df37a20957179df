import { describe, expect, it } from 'vitest';
import { judgeSignature } from '../../../src/slack/door/judge-signature.ts';

/** The platform's own example: docs.slack.dev/authentication/verifying-requests-from-slack */
const EXAMPLE = {
  signingSecret: '8f742231b10e8888abcd99yyyzzz85a5',
  timestamp: '1531420618',
  rawBody: Buffer.from(
    'token=xyzz0WbapA4vBCDEFasx0q6G&team_id=T1DC2JH3J&team_domain=testteamnow&channel_id=G8PSS9T3V&channel_name=foobar&user_id=U2CERLKJA&user_name=roadrunner&command=%2Fwebhook-collect&text=&response_url=https%3A%2F%2Fhooks.slack.com%2Fcommands%2FT1DC2JH3J%2F397700885554%2F96rGlfmibIGlgcZRskXaIFfN&trigger_id=398738663015.47445629121.803a0bc887a14d10d2c447fce8b6703c',
  ),
  signature: 'v0=a2114d57b48eac39b9ad189dd8316235a7b4a8d21a10bd27519666489c69b503',
  nowMs: 1531420618_000,
};

describe('judgeSignature', () => {
  it('takes the published example for genuine', () => {
    expect(judgeSignature(EXAMPLE)).toBe('genuine');
  });

  it.each([
    ['a changed byte', { rawBody: Buffer.from(`${EXAMPLE.rawBody} `) }, 'forged'],
    ['a changed signature', { signature: EXAMPLE.signature.replace('a2', 'a3') }, 'forged'],
    ['a shorter signature', { signature: 'v0=a2' }, 'forged'],
    ['the same time written otherwise', { timestamp: '01531420618' }, 'forged'],
    ['no signature', { signature: undefined }, 'unsigned'],
    ['no time', { timestamp: undefined }, 'unsigned'],
    ['a time in scientific notation', { timestamp: '1.531420618e9' }, 'unsigned'],
    ['five minutes and a second later', { nowMs: EXAMPLE.nowMs + 301_000 }, 'stale'],
    ['five minutes and a second earlier', { nowMs: EXAMPLE.nowMs - 301_000 }, 'from the future'],
    ['five minutes later', { nowMs: EXAMPLE.nowMs + 300_000 }, 'genuine'],
    ['five minutes earlier', { nowMs: EXAMPLE.nowMs - 300_000 }, 'genuine'],
  ] as const)('%s: %s', (_what, change, verdict) => {
    expect(judgeSignature({ ...EXAMPLE, ...change })).toBe(verdict);
  });
});
