/** The platform's end of a socket: greets, sends envelopes, hears acknowledgements. RFC 6455, short texts only. */
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Duplex } from 'node:stream';

const HANDSHAKE_GUID = '258EAFA5-E914-47DA-95CA-C5AB0DC85B11';
const TEXT = 0x1;

interface FakeSocketServer {
  readonly url: string;
  /** Sends an envelope to the bot. @returns what the bot says next, parsed */
  send(envelope: object): Promise<unknown>;
  /** Once the bot has opened another socket. */
  opened(): Promise<void>;
  /** Once the bot closes its socket. */
  closed(): Promise<void>;
  stop(): Promise<void>;
}

const HELLO = { type: 'hello', num_connections: 1 };

/** @param greeting what a new socket hears first */
export async function fakeSocketServer(greeting: object = HELLO): Promise<FakeSocketServer> {
  let heard = Promise.withResolvers<unknown>();
  let opened = Promise.withResolvers<void>();
  const sockets = new Set<Duplex>();
  const server = createServer();
  server.on('upgrade', (request, socket) => {
    const key = `${request.headers['sec-websocket-key']}${HANDSHAKE_GUID}`;
    const accept = createHash('sha1').update(key).digest('base64');
    socket.write(
      `HTTP/1.1 101 Switching Protocols\r\nUpgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Accept: ${accept}\r\n\r\n`,
    );
    sockets.add(socket);
    socket.on('error', () => {});
    socket.on('close', () => sockets.delete(socket));
    let pending = Buffer.alloc(0);
    socket.on('data', (data: Buffer) => {
      pending = Buffer.concat([pending, data]);
      for (let frame = readFrame(pending); frame; frame = readFrame(pending)) {
        pending = pending.subarray(frame.length);
        if (frame.opcode === TEXT) heard.resolve(JSON.parse(frame.text));
        if (frame.opcode === 0x8) socket.end(Buffer.from([0x88, 0]));
      }
    });
    socket.write(textFrame(JSON.stringify(greeting)));
    opened.resolve();
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  return {
    url: `ws://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    send: (envelope) => {
      heard = Promise.withResolvers();
      for (const socket of sockets) socket.write(textFrame(JSON.stringify(envelope)));
      return heard.promise;
    },
    opened: () => {
      opened = Promise.withResolvers();
      return opened.promise;
    },
    closed: async () => {
      for (const socket of sockets) await once(socket, 'close');
    },
    stop: async () => {
      for (const socket of sockets) socket.destroy();
      server.close();
      await once(server, 'close');
    },
  };
}

function textFrame(text: string): Buffer {
  const payload = Buffer.from(text);
  const head = payload.length < 126 ? Buffer.from([0x81, payload.length]) : Buffer.from([0x81, 126, 0, 0]);
  if (payload.length >= 126) head.writeUInt16BE(payload.length, 2);
  return Buffer.concat([head, payload]);
}

/** A client's frame is always masked. @returns undefined while it is incomplete */
function readFrame(data: Buffer): { opcode: number; text: string; length: number } | undefined {
  if (data.length < 2) return undefined;
  const short = (data[1] as number) & 0x7f;
  const headLength = short === 126 ? 4 : 2;
  if (data.length < headLength + 4) return undefined;
  const payloadLength = short === 126 ? data.readUInt16BE(2) : short;
  const length = headLength + 4 + payloadLength;
  if (data.length < length) return undefined;
  const mask = data.subarray(headLength, headLength + 4);
  const payload = data.subarray(headLength + 4, length).map((byte, i) => byte ^ (mask[i % 4] as number));
  return { opcode: (data[0] as number) & 0x0f, text: Buffer.from(payload).toString(), length };
}
