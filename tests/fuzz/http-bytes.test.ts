/**
 * Bytes that strangers send to the HTTP door: it answers with a refusal or hangs up, holds little memory, waits for
 * nobody long, and goes on answering the platform.
 */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import type { App, ReceiverEvent } from '@slack/bolt';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { EVENTS_PATH, HttpDoor } from '../../src/slack/door/http-door.ts';
import { HTTP_LIMITS, type HttpLimits } from '../../src/slack/door/http-limits.ts';
import { MOST_AT_ONCE } from '../../src/slack/door/visitors.ts';
import { logCatcher } from '../slack/support/log-catcher.ts';
import { search } from '../support/search-width.ts';
import { exchange, FORM, NOW_SECONDS, request, sendFromElsewhere } from './raw-http.ts';

/** Quick, so that nobody has to wait to see what happens to the slow. */
const QUICK = { headersMs: 300, requestMs: 600, idleMs: 300, checkEveryMs: 50 };
/** So that what strangers send is looked at, however often they come. */
const PATIENT = { inVain: 1e9 };
const PLATFORM = '127.0.0.2';

const COMMAND =
  'command=%2Floadline&text=cards&team_id=T1&user_id=U1&channel_id=C1&trigger_id=1.2&token=from-the-platform';
const NO_SIGNATURE = { 'x-slack-signature': undefined, 'x-slack-request-timestamp': undefined };
const WRONG_SIGNATURE = { 'x-slack-signature': `v0=${'0'.repeat(64)}` };

let door: HttpDoor;
let port: number;
let looked: number;
let log: ReturnType<typeof logCatcher>;
let bodies: unknown[];
let turnedAway: string[];

async function open(limits: Partial<HttpLimits> = {}): Promise<void> {
  log = logCatcher('debug');
  bodies = [];
  turnedAway = [];
  looked = 0;
  door = new HttpDoor({
    signingSecret: 'a-signing-secret-for-tests-only',
    port: 0,
    readiness: async () => {
      looked += 1;
      return [];
    },
    pages: async ({ url }, response) => {
      if (url !== '/page') return false;
      response.end('a page');
      return true;
    },
    nowMs: () => NOW_SECONDS * 1000,
    logger: log.logger,
    meter: { turnedAway: (reason) => turnedAway.push(reason) },
    limits: { ...HTTP_LIMITS, ...QUICK, ...PATIENT, ...limits },
  });
  const bot = {
    processEvent: async ({ body, ack }: ReceiverEvent) => {
      bodies.push(body);
      await ack();
    },
  };
  door.init(bot as unknown as App);
  port = await door.start();
}
beforeEach(() => open());
afterEach(() => door.stop());

const badEntries = () => log.entries().filter(({ level }) => level === 'error' || level === 'fatal');

/** Refused or unheard, with nothing done and nothing for the operator to worry about. */
async function expectRefused(bytes: Uint8Array, then: 'end' | 'wait' | 'hang up' = 'end'): Promise<void> {
  const { statuses } = await exchange(port, bytes, then);
  for (const status of statuses) expect(status).toSatisfy((code) => code >= 400 && code < 500);
  expect(bodies).toEqual([]);
  expect(badEntries()).toEqual([]);
}

async function expectStillOpen(): Promise<void> {
  const { statuses } = await exchange(port, request(COMMAND), 'end', PLATFORM);
  expect(statuses).toEqual([200]);
  expect(bodies).toHaveLength(1);
}

describe('bytes that are no request', () => {
  it('are refused', async () => {
    const line = fc.constantFrom(
      'GET / HTTP/1.1\r\n',
      `POST ${EVENTS_PATH} HTTP/1.1\r\n`,
      'PRI * HTTP/2.0\r\n',
    );
    const bytes = fc.uint8Array({ maxLength: 400 });
    const cases = fc.tuple(fc.oneof(line, fc.constant('')), bytes);
    await fc.assert(
      fc.asyncProperty(cases, ([start, rest]) =>
        expectRefused(Buffer.concat([Buffer.from(start), Buffer.from(rest)])),
      ),
      search(150),
    );
    await expectStillOpen();
  });

  it('are refused when a genuine request had one of them changed, removed or added', async () => {
    const genuine = request(COMMAND, { 'x-slack-signature': undefined });
    const where = fc.nat({ max: genuine.length - 1 });
    const change = fc.tuple(where, fc.uint8Array({ maxLength: 3 }), fc.constantFrom(0, 1, 5));
    await fc.assert(
      fc.asyncProperty(change, ([at, put, cut]) =>
        expectRefused(Buffer.concat([genuine.subarray(0, at), Buffer.from(put), genuine.subarray(at + cut)])),
      ),
      search(150),
    );
    await expectStillOpen();
  });

  it.each<[string, string]>([
    [
      'two lengths',
      `POST ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\ncontent-length: 5\r\ncontent-length: 6\r\n\r\nhello!`,
    ],
    ['a negative length', `POST ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\ncontent-length: -1\r\n\r\n`],
    ['a length of letters', `POST ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\ncontent-length: 0x10\r\n\r\n`],
    [
      'an endless length',
      `POST ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\ncontent-length: ${'9'.repeat(40)}\r\n\r\n`,
    ],
    [
      'a length and chunks',
      `POST ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\ncontent-length: 3\r\ntransfer-encoding: chunked\r\n\r\n0\r\n\r\n`,
    ],
    [
      'an unknown encoding',
      `POST ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\ntransfer-encoding: gzip, chunked\r\n\r\n0\r\n\r\n`,
    ],
    [
      'chunks of no size',
      `POST ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\ntransfer-encoding: chunked\r\n\r\nxyz\r\n`,
    ],
    [
      'a chunk of an endless size',
      `POST ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\ntransfer-encoding: chunked\r\n\r\n${'f'.repeat(30)}\r\n`,
    ],
    ['a NUL in a header', `POST ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\nx: a\u0000b\r\n\r\n`],
    ['a line end in a header', `POST ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\nx: a\rb\r\n\r\n`],
    ['no host', `POST ${EVENTS_PATH} HTTP/1.1\r\n\r\n`],
    ['an unknown method', `HURL ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\n\r\n`],
    ['a tunnel', 'CONNECT db:5432 HTTP/1.1\r\nhost: b\r\n\r\n'],
    [
      'another protocol',
      `POST ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\nconnection: upgrade\r\nupgrade: websocket\r\n\r\n`,
    ],
    ['an expectation', `POST ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\nexpect: the-impossible\r\n\r\n`],
    ['a long path', `POST /${'a'.repeat(20_000)} HTTP/1.1\r\nhost: b\r\n\r\n`],
    ['a long header', `POST ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\nx: ${'a'.repeat(20_000)}\r\n\r\n`],
    ['many headers', `POST ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\n${'x: y\r\n'.repeat(5_000)}\r\n`],
    [
      'one request hidden in another',
      `POST ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\ncontent-length: 0\r\n\r\n${'GET /nowhere HTTP/1.1\r\nhost: b\r\n\r\n'.repeat(3)}`,
    ],
  ])('are refused: %s', async (_what, text) => {
    await expectRefused(Buffer.from(text, 'latin1'));
    await expectStillOpen();
  });
});

describe('a body from a stranger', () => {
  it.each<[string, Record<string, string | undefined>]>([
    ['without a signature', NO_SIGNATURE],
    ['with a signature of another shape', { 'x-slack-signature': 'v0=1234' }],
    ['with a signature in capitals', { 'x-slack-signature': `v0=${'A'.repeat(64)}` }],
    ['with a time long ago', { 'x-slack-request-timestamp': '1' }],
    ['with a time that is no number', { 'x-slack-request-timestamp': '1e9' }],
    ['of another type', { 'content-type': 'text/plain' }],
    ['of no type', { 'content-type': undefined }],
  ])('is not waited for: %s', async (_what, change) => {
    const head = request('', { ...change, 'content-length': '1000000' });
    const { statuses } = await exchange(port, head, 'wait');
    expect(statuses).toEqual(['content-type' in change ? 415 : 401]);
    expect(turnedAway).toHaveLength(1);
  });

  it('is not waited for when it says that it is too large', async () => {
    const head = request('', { ...WRONG_SIGNATURE, 'content-length': String(HTTP_LIMITS.bodyBytes + 1) });
    expect((await exchange(port, head, 'wait')).statuses).toEqual([413]);
  });

  it('that never comes is given up', async () => {
    const head = request('', { ...WRONG_SIGNATURE, 'content-length': '1000' });
    expect((await exchange(port, head, 'wait')).statuses).toEqual([408]);
    expect(badEntries()).toEqual([]);
  });

  it('that is broken off is nothing for the operator to worry about', async () => {
    const head = request('only the beginning', { ...WRONG_SIGNATURE, 'content-length': '1000' });
    await exchange(port, head, 'hang up');
    await expectStillOpen();
    expect(log.entries().filter(({ level }) => level !== 'debug')).toEqual([]);
  });

  it('makes room for the next one when many are on their way', async () => {
    await door.stop();
    await open({ bodiesTogetherBytes: 150_000, requestMs: 3_000 });
    const slow = request('x'.repeat(60_000), { ...WRONG_SIGNATURE, 'content-length': '60001' });
    const answers = await Promise.all(Array.from({ length: 3 }, () => exchange(port, slow, 'wait')));
    const statuses = answers.map((answer) => answer.statuses.join()).sort();
    expect(statuses).toEqual(['', '408', '408']);
    expect(turnedAway.filter((reason) => reason === 'no-room')).toHaveLength(1);
    // Everything that was held is free again.
    await expectStillOpen();
  });

  it('in crumbs, each of which is work and memory, is given up in the middle', async () => {
    const head = request('', {
      ...WRONG_SIGNATURE,
      'content-length': undefined,
      'transfer-encoding': 'chunked',
    });
    const crumbs = Buffer.from('1\r\nx\r\n'.repeat(200));
    const { statuses } = await exchange(port, Buffer.concat([head, crumbs]), 'wait');
    expect(statuses).toEqual([]);
    expect(turnedAway).toEqual(['in-crumbs']);
    await expectStillOpen();
  });

  it('takes no more memory for many senders than for the room that there is', async () => {
    const flood = request('x'.repeat(HTTP_LIMITS.bodyBytes - 1), {
      ...WRONG_SIGNATURE,
      'content-length': String(HTTP_LIMITS.bodyBytes),
    });
    const before = heldBytes();
    let peak = 0;
    const watch = setInterval(() => {
      peak = Math.max(peak, heldBytes() - before);
    }, 20);
    await sendFromElsewhere(port, flood, 64);
    clearInterval(watch);
    // What is read and not yet taken in comes on top of the room itself.
    expect(peak).toBeLessThan(HTTP_LIMITS.bodiesTogetherBytes * 1.5);
    await expectStillOpen();
  });
});

setFlagsFromString('--expose-gc');
const collectGarbage = runInNewContext('gc') as () => void;

/** What buffers hold, without what nobody needs any more: when that is given back depends on how busy the machine is. */
function heldBytes(): number {
  collectGarbage();
  return process.memoryUsage().arrayBuffers;
}

describe('a connection', () => {
  it.each<[string, string]>([
    ['says nothing', ''],
    ['stops in its first line', `POST ${EVENTS_PATH}`],
    ['stops in its headers', `POST ${EVENTS_PATH} HTTP/1.1\r\nhost: b\r\nx-slack-sig`],
  ])('that %s is closed in time', async (_what, text) => {
    const { statuses } = await exchange(port, Buffer.from(text), 'wait');
    expect(statuses.every((status) => status === 408)).toBe(true);
  });

  it('that has been answered is closed when nothing follows', async () => {
    expect((await exchange(port, request(COMMAND), 'wait')).statuses).toEqual([200]);
  });

  it.each<[string, Buffer]>([
    ['what isn’t there', Buffer.from('GET /nowhere HTTP/1.1\r\nhost: b\r\n\r\n')],
    ['health', Buffer.from('GET /readyz HTTP/1.1\r\nhost: b\r\n\r\n')],
    ['an installation', Buffer.from('GET /page HTTP/1.1\r\nhost: b\r\n\r\n')],
    ['the certificate', request('ssl_check=1', NO_SIGNATURE)],
  ])('of a stranger serves for one request: %s', async (_what, bytes) => {
    const { statuses, text } = await exchange(port, bytes, 'wait');
    expect(statuses).toHaveLength(1);
    expect(text).toMatch(/^connection: close\r$/im);
  });

  it('on which strangers ask many things before any is answered is closed, with little work done', async () => {
    const asked = Buffer.from('GET /readyz HTTP/1.1\r\nhost: b\r\n\r\n'.repeat(200));
    await exchange(port, asked, 'wait');
    expect(looked).toBeLessThanOrEqual(MOST_AT_ONCE);
    expect(turnedAway).toEqual(['pipelined']);
    // Each takes a kilobyte or two, and was understood already when the connection was closed.
    expect(await exchange(port, asked, 'wait')).toMatchObject({ statuses: [] });
    expect(turnedAway).toEqual(['pipelined', 'barred']);
    await expectStillOpen();
  });

  it('of a network that has come in vain too often is closed at once for the rest of the minute, the platform’s is not', async () => {
    await door.stop();
    await open({ inVain: 3 });
    await expectStillOpen();
    const nothing = Buffer.from('GET /nowhere HTTP/1.1\r\nhost: b\r\n\r\n');
    const statusesFor = async (address: string) => {
      const heard: number[] = [];
      for (let i = 0; i < 5; i += 1) heard.push(...(await exchange(port, nothing, 'wait', address)).statuses);
      return heard;
    };
    expect(await statusesFor('127.0.0.3')).toEqual([404, 404, 404]);
    expect(await statusesFor(PLATFORM)).toEqual([404, 404, 404, 404, 404]);
    expect(turnedAway).toEqual(['barred', 'barred']);
  });

  it('of a probe of the health is none in vain', async () => {
    await door.stop();
    await open({ inVain: 3 });
    const probe = Buffer.from('GET /healthz HTTP/1.1\r\nhost: b\r\n\r\n');
    for (let i = 0; i < 5; i += 1) expect((await exchange(port, probe, 'wait')).statuses).toEqual([200]);
  });

  it('that says nothing is closed for another when there are too many, counted, and logged once', async () => {
    await door.stop();
    await open({ connections: 2, headersMs: 600 });
    const silent = [exchange(port, Buffer.from('P'), 'wait'), exchange(port, Buffer.from('P'), 'wait')];
    const more = Array.from({ length: 3 }, () => exchange(port, Buffer.from('P'), 'wait'));
    const heard = await Promise.all([...silent, ...more]);
    expect(heard.filter(({ statuses }) => statuses.length === 0)).toHaveLength(3);
    expect(turnedAway).toEqual(Array(3).fill('too-many-connections'));
    expect(log.entries().filter(({ msg }) => msg === 'Connections were closed to make room.')).toHaveLength(
      1,
    );
    await expectStillOpen();
  });
});

describe('a genuine request', () => {
  it('is understood in one way only: what was judged is what is done', async () => {
    const { statuses } = await exchange(port, request(COMMAND), 'end');
    expect(statuses).toEqual([200]);
    expect(bodies).toEqual([Object.fromEntries(new URLSearchParams(COMMAND))]);
  });

  it.each<[string, string, string]>([
    ['a key twice', FORM, `${COMMAND}&text=export`],
    ['a key twice, spelled otherwise', FORM, `${COMMAND}&te%78t=export`],
    ['two payloads', FORM, 'payload=%7B%7D&payload=%7B%7D'],
    [
      'a payload after a thousand others',
      FORM,
      `${Array.from({ length: 1_001 }, (_, i) => `k${i}=`).join('&')}&payload=[]`,
    ],
    ['nesting without end', 'application/json', '['.repeat(500_000) + ']'.repeat(500_000)],
    [
      'nesting in an event',
      'application/json',
      `{"type":"event_callback","team_id":"T1","event_id":"E","event":{"type":"message","x":${'['.repeat(200)}${']'.repeat(200)}}}`,
    ],
  ])('is refused when it holds %s', async (_what, type, body) => {
    const { statuses } = await exchange(port, request(body, { 'content-type': type }), 'end');
    expect(statuses).toEqual([400]);
    expect(bodies).toEqual([]);
  });

  it('may say in which characters its form is written', async () => {
    const type = `${FORM}; charset=utf-8`;
    expect((await exchange(port, request(COMMAND, { 'content-type': type }), 'end')).statuses).toEqual([200]);
  });

  it('may come in the company of others on one connection', async () => {
    const { statuses } = await exchange(port, Buffer.concat([request(COMMAND), request(COMMAND)]), 'end');
    expect(statuses).toEqual([200, 200]);
  });

  it('may come in chunks', async () => {
    const chunks = `${COMMAND.length.toString(16)}\r\n${COMMAND}\r\n0\r\n\r\n`;
    const head = request('', {
      'content-length': undefined,
      'transfer-encoding': 'chunked',
      'x-slack-signature': /x-slack-signature: (\S+)/.exec(request(COMMAND).toString())?.[1],
    });
    const { statuses } = await exchange(port, Buffer.concat([head, Buffer.from(chunks)]), 'end');
    expect(statuses).toEqual([200]);
  });
});
