/** Talks to the HTTP door byte by byte, as no well-behaved client would. */

import { createHmac } from 'node:crypto';
import { once } from 'node:events';
import { connect, type Socket } from 'node:net';
import { Worker } from 'node:worker_threads';
import { expect } from 'vitest';
import { EVENTS_PATH } from '../../src/slack/door/http-door.ts';

export const SECRET = 'a-signing-secret-for-tests-only';
export const NOW_SECONDS = Date.UTC(2026, 10, 4, 9, 20) / 1000;
export const FORM = 'application/x-www-form-urlencoded';

interface Heard {
  /** Of every answer, in order. */
  readonly statuses: readonly number[];
  readonly text: string;
}

/**
 * Writes the bytes and listens until the connection is closed.
 *
 * @param localAddress everything of 127/8 is this machine
 * @param then `end`: says that nothing more will come; `wait`: leaves the door waiting; `hang up`: is gone at once
 */
export function exchange(
  port: number,
  bytes: Uint8Array,
  then: 'end' | 'wait' | 'hang up',
  localAddress = '127.0.0.1',
): Promise<Heard> {
  return new Promise((resolve) => {
    const socket = connect({ port, host: '127.0.0.1', localAddress, allowHalfOpen: true });
    const parts: Buffer[] = [];
    socket.on('data', (part) => parts.push(part));
    // The door may hang up while there is still something to write.
    socket.on('error', () => {});
    socket.on('end', () => socket.end());
    socket.on('close', () => {
      const text = Buffer.concat(parts).toString('latin1');
      const statuses = [...text.matchAll(/^HTTP\/1\.1 (\d{3}) /gm)].map(([, status]) => Number(status));
      resolve({ statuses, text });
    });
    socket.write(bytes, () => {
      if (then === 'hang up') socket.resetAndDestroy();
      else if (then === 'end') socket.end();
    });
  });
}

/** Opens connections, writes the same bytes to each, and ends when all are closed. */
const SENDERS = `
  const { connect } = require('node:net');
  const { workerData: { port, bytes, connections } } = require('node:worker_threads');
  for (let i = 0; i < connections; i += 1) {
    const socket = connect({ port, host: '127.0.0.1' });
    socket.on('error', () => {});
    socket.resume();
    socket.write(bytes);
  }
`;

/** The same from a thread of its own, so that what the senders hold isn't among what the door holds. */
export async function sendFromElsewhere(port: number, bytes: Uint8Array, connections: number): Promise<void> {
  const workerData = { port, bytes, connections };
  await once(new Worker(SENDERS, { eval: true, workerData }), 'exit');
}

const SILENT = 300;
const FEWER = 250;

/** While so many connections are held that say nothing; all but the latest must have been closed again. */
export async function withSilence(port: number, work: () => Promise<void>): Promise<void> {
  const held = new Set<Socket>();
  const all: Socket[] = [];
  const silent = Array.from({ length: SILENT }, async () => {
    const socket = connect({ port, host: '127.0.0.1' }).on('error', () => {});
    all.push(socket);
    socket.on('close', () => held.delete(socket));
    await once(socket, 'connect');
    held.add(socket);
  });
  try {
    await Promise.all(silent);
    await expect.poll(() => held.size, { timeout: 10_000 }).toBeLessThan(FEWER);
    await work();
  } finally {
    for (const socket of all) socket.destroy();
  }
}

function signatureOf(body: string | Uint8Array, timestamp: number | string = NOW_SECONDS): string {
  return `v0=${createHmac('sha256', SECRET).update(`v0:${timestamp}:`).update(body).digest('hex')}`;
}

/** The headers of a genuine request; each may be given otherwise, or left out as undefined. */
function headersOf(
  body: string | Uint8Array,
  change: Record<string, string | undefined> = {},
): Record<string, string | undefined> {
  return {
    host: 'bot.example',
    'content-type': FORM,
    'content-length': String(Buffer.byteLength(body)),
    'x-slack-request-timestamp': String(NOW_SECONDS),
    'x-slack-signature': signatureOf(body),
    ...change,
  };
}

/** A request as it goes over the wire. Names and values are not looked at: they may break the format. */
export function request(
  body: string | Uint8Array,
  change: Record<string, string | undefined> = {},
  { method = 'POST', path = EVENTS_PATH, version = 'HTTP/1.1' } = {},
): Buffer {
  const headers = Object.entries(headersOf(body, change))
    .filter(([, value]) => value !== undefined)
    .map(([name, value]) => `${name}: ${value}\r\n`);
  return Buffer.concat([
    Buffer.from(`${method} ${path} ${version}\r\n${headers.join('')}\r\n`, 'latin1'),
    Buffer.from(body),
  ]);
}
