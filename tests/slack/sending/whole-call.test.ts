import { createServer, type RequestListener } from 'node:http';
import { type AddressInfo, createServer as createSocketServer, type Server } from 'node:net';
import { text } from 'node:stream/consumers';
import { afterEach, expect, it } from 'vitest';
import { postWhole, wholeCalls } from '../../../src/slack/sending/whole-call.ts';

const open: Server[] = [];
afterEach(() => {
  for (const server of open.splice(0)) server.close();
});

async function listen(server: Server): Promise<string> {
  open.push(server);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}/api/call`;
}

const answering = (listener: RequestListener): Promise<string> => listen(createServer(listener));

it('sends what it is given, and reads the whole answer', async () => {
  const url = await answering(async (request, response) => {
    const { method, headers } = request;
    response.setHeader('retry-after', '7');
    response.write('{"got": ');
    response.end(`${JSON.stringify([method, headers['content-type'], await text(request)])}}`);
  });
  const call = wholeCalls(5_000);
  const response = await call(url, { headers: { 'Content-Type': 'text/plain' }, body: 'Größe 5' });
  expect(response).toMatchObject({ ok: true, status: 200, statusText: 'OK', url });
  expect([response.headers.get('Retry-After'), response.headers.get('other')]).toEqual(['7', null]);
  expect(new Map(response.headers.entries()).get('retry-after')).toBe('7');
  expect(await response.json()).toEqual({ got: ['POST', 'text/plain', 'Größe 5'] });
  expect(new Uint8Array(await response.arrayBuffer())).toEqual(
    new Uint8Array(Buffer.from(await response.text())),
  );
});

it('sends bytes as they are', async () => {
  const url = await answering((request, response) => request.pipe(response));
  const body = Uint8Array.of(0, 255, 10, 13, 128);
  const response = await postWhole(url, { body, timeoutMs: 5_000 });
  expect(new Uint8Array(await response.arrayBuffer())).toEqual(body);
});

it('says that an answer is no success', async () => {
  const url = await answering((_, response) => response.writeHead(429).end('slowly'));
  const response = await postWhole(url, { body: '', timeoutMs: 5_000 });
  expect(response).toMatchObject({ ok: false, status: 429, statusText: 'Too Many Requests' });
});

it('takes no part of an answer for the whole', async () => {
  const url = await answering((_, response) => {
    response.writeHead(200, { 'content-length': '100' }).write('{"ok": true}');
    setImmediate(() => response.destroy());
  });
  await expect(postWhole(url, { body: '', timeoutMs: 5_000 })).rejects.toMatchObject({ code: 'ECONNRESET' });
});

it.each<[string, RequestListener]>([
  ['never', () => undefined],
  ['never in full', (_, response) => void response.writeHead(200).write('{')],
])('waits no longer than it is told for an answer that comes %s', async (_, listener) => {
  const url = await answering(listener);
  const error = await postWhole(url, { body: '', timeoutMs: 50 }).catch((thrown: unknown) => thrown);
  expect(error).toMatchObject({ name: 'TimeoutError' });
});

it('tells a connection that was never made from an answer that never came', async () => {
  const refused = await listen(createSocketServer());
  await new Promise((resolve) => open.splice(0)[0]?.close(resolve));
  const error = await postWhole(refused, { body: '', timeoutMs: 5_000 }).catch((thrown: unknown) => thrown);
  expect(error).toMatchObject({ code: 'ECONNREFUSED' });
});

it('uses a connection again', async () => {
  const ports = new Set<number | undefined>();
  const url = await answering(({ socket }, response) => {
    ports.add(socket.remotePort);
    response.end();
  });
  for (let i = 0; i < 3; i += 1) await postWhole(url, { body: '', timeoutMs: 5_000 });
  expect(ports.size).toBe(1);
});
