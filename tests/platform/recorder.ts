/** Takes the bot's place for a moment, to see what the stand-in sends. */
import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { JsonObject } from '../../src/rehearsal/stand-in/page-state.ts';

export interface Recorder {
  readonly url: string;
  /** What came so far, oldest first; asking takes it away. */
  taken(): JsonObject[];
  stop(): Promise<void>;
}

export async function startRecorder(): Promise<Recorder> {
  const heard: JsonObject[] = [];
  const server = createServer(async (request, response) => {
    const chunks: Buffer[] = [];
    for await (const chunk of request) chunks.push(chunk as Buffer);
    heard.push(read(Buffer.concat(chunks).toString('utf8'), request.headers['content-type'] ?? ''));
    response.writeHead(200).end();
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    taken: () => heard.splice(0),
    stop: async () => {
      server.closeAllConnections();
      server.close();
      await once(server, 'close');
    },
  };
}

function read(body: string, contentType: string): JsonObject {
  if (contentType.includes('json')) return JSON.parse(body) as JsonObject;
  const fields = Object.fromEntries(new URLSearchParams(body));
  return fields.payload === undefined ? fields : (JSON.parse(fields.payload) as JsonObject);
}
