/** How much of what a connection sends is understood before it can be closed over it. */
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, expect, it } from 'vitest';
import { readInSlices } from '../../../src/slack/door/in-slices.ts';
import { exchange } from '../../fuzz/raw-http.ts';

const REQUEST = 'GET / HTTP/1.1\r\nhost: b\r\n\r\n';
const TIMES = 2_000;

let server: Server;
afterEach(() => {
  server.closeAllConnections();
  server.close();
});

/** @returns how many requests are heard of a connection that is closed over the first */
async function heardOf(isTrusted: boolean): Promise<number> {
  let heard = 0;
  server = createServer(({ socket }) => {
    heard += 1;
    socket.destroy();
  });
  server.on('connection', (socket) => readInSlices(socket, () => isTrusted));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  await exchange((server.address() as AddressInfo).port, Buffer.from(REQUEST.repeat(TIMES)), 'wait');
  return heard;
}

it('is a slice of it', async () => {
  expect(await heardOf(false)).toBeLessThanOrEqual(Math.ceil(2_048 / REQUEST.length));
});

it('is all that has come, where it is trusted', async () => {
  expect(await heardOf(true)).toBeGreaterThan(3 * Math.ceil(2_048 / REQUEST.length));
});

it('is handed on whole, however large it is', async () => {
  let length = 0;
  server = createServer(async (request, response) => {
    for await (const part of request) length += (part as Buffer).length;
    response.writeHead(200, { connection: 'close' }).end();
  });
  server.on('connection', (socket) => readInSlices(socket, () => false));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const head = `POST / HTTP/1.1\r\nhost: b\r\ncontent-length: 300000\r\n\r\n`;
  const bytes = Buffer.from(`${head}${'x'.repeat(300_000)}`);
  const { statuses } = await exchange((server.address() as AddressInfo).port, bytes, 'wait');
  expect([statuses, length]).toEqual([[200], 300_000]);
});
