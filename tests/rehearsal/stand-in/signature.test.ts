import { expect, test } from 'vitest';
import { requestSignature } from '../../../src/rehearsal/stand-in/bot-link.ts';

// The platform's documented example: docs.slack.dev/authentication/verifying-requests-from-slack
const SECRET = '8f742231b10e8888abcd99yyyzzz85a5';
const TIMESTAMP = 1531420618;
const BODY =
  'token=xyzz0WbapA4vBCDEFasx0q6G&team_id=T1DC2JH3J&team_domain=testteamnow&channel_id=G8PSS9T3V' +
  '&channel_name=foobar&user_id=U2CERLKJA&user_name=roadrunner&command=%2Fwebhook-collect&text=' +
  '&response_url=https%3A%2F%2Fhooks.slack.com%2Fcommands%2FT1DC2JH3J%2F397700885554%2F96rGlfmibIGlgcZRskXaIFfN' +
  '&trigger_id=398738663015.47445629121.803a0bc887a14d10d2c447fce8b6703c';
const SIGNATURE = 'v0=a2114d57b48eac39b9ad189dd8316235a7b4a8d21a10bd27519666489c69b503';

test('a request is signed as in the documented example', () => {
  expect(requestSignature(SECRET, TIMESTAMP, BODY)).toBe(SIGNATURE);
});

test('another timestamp, body or secret gives another signature', () => {
  expect(requestSignature(SECRET, TIMESTAMP + 1, BODY)).not.toBe(SIGNATURE);
  expect(requestSignature(SECRET, TIMESTAMP, `${BODY}&`)).not.toBe(SIGNATURE);
  expect(requestSignature(`${SECRET}0`, TIMESTAMP, BODY)).not.toBe(SIGNATURE);
});
