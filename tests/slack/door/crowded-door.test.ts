/**
 * Strangers who hold connections open, as many as the limits let in and more: they say nothing, or send a body and hold
 * its end back. Every signed request is answered all the same.
 */
import { connect, type Socket } from 'node:net';
import type { App, ReceiverEvent } from '@slack/bolt';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { HttpDoor } from '../../../src/slack/door/http-door.ts';
import { HTTP_LIMITS, type HttpLimits } from '../../../src/slack/door/http-limits.ts';
import { CROWD } from '../../../src/slack/door/visitors.ts';
import { exchange, NOW_SECONDS, request, SECRET } from '../../fuzz/raw-http.ts';
import { logCatcher } from '../support/log-catcher.ts';

const SIGNED = 50;
const SILENT = 500;
const SLOW = 100;
const HELD_MS = 600_000;
const WAITS = { timeout: 20_000 };

let door: HttpDoor;
let port: number;
let log: ReturnType<typeof logCatcher>;
let turnedAway: string[];
let answer: () => Promise<void>;
let attackers: Set<Socket>;

async function open(limits: Partial<HttpLimits> = {}): Promise<void> {
  log = logCatcher();
  const reasons: string[] = [];
  turnedAway = reasons;
  attackers = new Set();
  answer = async () => {};
  door = new HttpDoor({
    signingSecret: SECRET,
    port: 0,
    readiness: undefined,
    nowMs: () => NOW_SECONDS * 1000,
    logger: log.logger,
    meter: { turnedAway: (reason) => reasons.push(reason) },
    trustedProxies: ['127.0.0.0/8', '::1'],
    // Held open until the end, however busy the machine is.
    limits: { ...HTTP_LIMITS, headersMs: HELD_MS, requestMs: HELD_MS, ...limits },
  });
  const bot = {
    processEvent: async ({ ack }: ReceiverEvent) => {
      await answer();
      await ack();
    },
  };
  door.init(bot as unknown as App);
  port = await door.start();
}
beforeEach(() => open());
afterEach(async () => {
  for (const socket of attackers) socket.destroy();
  await door.stop();
});

/** Opens a connection, writes that, and holds it open. @returns when it stands */
function hold(bytes: Uint8Array): Promise<Socket> {
  return new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1');
    attackers.add(socket);
    socket.on('error', () => {});
    socket.on('data', () => {});
    socket.on('connect', () => {
      if (bytes.length === 0) resolve(socket);
      else socket.write(bytes, () => resolve(socket));
    });
    socket.on('close', () => {
      attackers.delete(socket);
      resolve(socket);
    });
  });
}

const times = <T>(count: number, make: () => Promise<T>): Promise<T[]> =>
  Promise.all(Array.from({ length: count }, make));

/** All but its end, with headers such as the platform sends. */
function withheld(bytes: number, more: Record<string, string> = {}): Buffer {
  return request('x'.repeat(bytes - 1), {
    'x-slack-signature': `v0=${'0'.repeat(64)}`,
    'content-length': String(bytes),
    ...more,
  });
}

const COMMAND =
  'command=%2Floadline&text=cards&team_id=T1&user_id=U1&channel_id=C1&trigger_id=1.2&token=from-the-platform';

async function statusesOfSigned(count: number): Promise<number[]> {
  const heard = await times(count, () => exchange(port, request(COMMAND, { connection: 'close' }), 'wait'));
  return heard.flatMap(({ statuses }) => statuses);
}

describe('a signed request', () => {
  it('is answered while strangers hold all connections in silence', async () => {
    await times(SILENT, () => hold(Buffer.alloc(0)));
    expect(await statusesOfSigned(SIGNED)).toEqual(Array(SIGNED).fill(200));
    expect(turnedAway).toContain('too-many-connections');
  });

  it('is answered while strangers hold all the room for bodies', async () => {
    await times(36, () => hold(withheld(HTTP_LIMITS.bodyBytes)));
    expect(await statusesOfSigned(SIGNED)).toEqual(Array(SIGNED).fill(200));
    expect(turnedAway).toContain('no-room');
  });

  it('is answered while strangers do both', async () => {
    await times(SLOW, () => hold(withheld(400_000)));
    await times(SILENT, () => hold(Buffer.alloc(0)));
    expect(await statusesOfSigned(SIGNED)).toEqual(Array(SIGNED).fill(200));
    expect(attackers.size).toBeGreaterThan(HTTP_LIMITS.connections - 2 * SIGNED);
  });

  it('that is at work is not closed for strangers', async () => {
    let finish = (): void => {};
    const finished = new Promise<void>((resolve) => {
      finish = resolve;
    });
    let begun = 0;
    answer = () => {
      begun += 1;
      return finished;
    };
    const answered = statusesOfSigned(SIGNED);
    await expect.poll(() => begun, WAITS).toBe(SIGNED);
    await times(SILENT + SLOW, () => hold(Buffer.alloc(0)));
    await expect.poll(() => turnedAway.length, WAITS).toBe(SILENT + SLOW + SIGNED - HTTP_LIMITS.connections);
    finish();
    expect(await answered).toEqual(Array(SIGNED).fill(200));
  });

  it('of one sender behind a named proxy finds its room, whatever a crowd behind it holds', async () => {
    await door.stop();
    await open({ bodiesTogetherBytes: 3_200_000 });
    const slow = (sender: string) => withheld(100_000, { 'x-forwarded-for': sender });
    const senders = Array.from({ length: 10 }, (_, i) => `192.0.2.${i}`);
    const others = await Promise.all(senders.map((sender) => hold(slow(sender))));
    await times(2 * CROWD, () => hold(slow('198.51.100.9')));
    // 50 bodies for 32 places.
    await expect.poll(() => turnedAway.length, WAITS).toBe(18);
    // They were there first, and are the slowest; but the crowd makes room for its own.
    expect(others.filter((socket) => attackers.has(socket))).toHaveLength(10);
  });
});

it('a crowd is logged in a few lines', async () => {
  await times(2 * SILENT, () => hold(Buffer.alloc(0)));
  await expect.poll(() => turnedAway.length, WAITS).toBe(SILENT);
  expect(log.entries().filter(({ level }) => level !== 'debug')).toMatchObject([
    { level: 'warn', reason: 'too many connections', msg: 'Connections were closed to make room.' },
  ]);
});
