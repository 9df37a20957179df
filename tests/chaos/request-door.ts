/**
 * Where the platform's requests arrive: passes each to one of the bots that are up, as a load balancer does, and makes
 * the trouble that it is told to.
 */
import { once } from 'node:events';
import { createServer, type IncomingMessage, request, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { setTimeout as wait } from 'node:timers/promises';
import type { RequestTrouble } from './fault-schedule.ts';
import type { SeededRandom } from './seeded-random.ts';

interface Answer {
  readonly status: number;
  readonly contentType: string | undefined;
  readonly body: Buffer;
}

/** The platform waits for 3 s; what takes longer is lost. */
const ANSWER_LIMIT_MS = 3_500;
const OVERTAKEN_MS = 700;

export class RequestDoor {
  readonly #ports: () => readonly number[];
  readonly #random: SeededRandom;
  readonly #server: Server;
  #trouble: { readonly kind: RequestTrouble; readonly share: number } | undefined;

  /** @param ports of the bots that are up */
  constructor(ports: () => readonly number[], random: SeededRandom) {
    this.#ports = ports;
    this.#random = random;
    this.#server = createServer((incoming, response) => {
      this.#serve(incoming, response).catch(() => response.destroy());
    });
  }

  async listen(): Promise<string> {
    this.#server.listen(0, '127.0.0.1');
    await once(this.#server, 'listening');
    return `http://127.0.0.1:${(this.#server.address() as AddressInfo).port}/slack/events`;
  }

  /** @param trouble undefined: none */
  setTrouble(trouble: RequestTrouble | undefined, share = 1): void {
    this.#trouble = trouble && { kind: trouble, share };
  }

  async stop(): Promise<void> {
    const closed = once(this.#server, 'close');
    this.#server.close();
    this.#server.closeAllConnections();
    await closed;
  }

  async #serve(incoming: IncomingMessage, response: ServerResponse): Promise<void> {
    const pieces: Buffer[] = [];
    for await (const piece of incoming) pieces.push(piece as Buffer);
    const body = Buffer.concat(pieces);
    const [first, second] = this.#twoPorts();
    if (first === undefined) return void response.writeHead(503).end();
    const trouble =
      this.#trouble && this.#random.chance(this.#trouble.share) ? this.#trouble.kind : undefined;
    const send = (port: number) => forward(port, incoming, body);
    switch (trouble) {
      case undefined:
        return answer(response, await send(first));
      case 'twice': {
        const both = await Promise.allSettled([send(first), send(second ?? first)]);
        const good = both.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : []));
        // The one of the two that the platform listens to.
        const heard = this.#random.chance(0.5) ? good : good.reverse();
        const chosen = heard.find(({ status }) => status === 200) ?? heard[0];
        return chosen ? answer(response, chosen) : void response.destroy();
      }
      case 'again-after-lost-answer':
        await send(first).catch(() => undefined);
        return answer(response, await send(second ?? first));
      case 'answer-lost':
        await send(first).catch(() => undefined);
        return void response.destroy();
      case 'overtaken':
        await wait(OVERTAKEN_MS * this.#random.next());
        return answer(response, await send(first));
    }
  }

  #twoPorts(): [number | undefined, number | undefined] {
    const ports = this.#ports();
    if (ports.length === 0) return [undefined, undefined];
    const first = this.#random.whole(0, ports.length - 1);
    return [ports[first], ports.length > 1 ? ports[(first + 1) % ports.length] : undefined];
  }
}

function forward(port: number, incoming: IncomingMessage, body: Buffer): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const onward = request(
      {
        host: '127.0.0.1',
        port,
        path: incoming.url,
        method: incoming.method,
        headers: { ...incoming.headers, connection: 'close' },
        agent: false,
        signal: AbortSignal.timeout(ANSWER_LIMIT_MS),
      },
      (reply) => {
        const pieces: Buffer[] = [];
        reply.on('data', (piece: Buffer) => pieces.push(piece));
        reply.on('error', reject);
        reply.on('end', () =>
          resolve({
            status: reply.statusCode ?? 502,
            contentType: reply.headers['content-type'],
            body: Buffer.concat(pieces),
          }),
        );
      },
    );
    onward.on('error', reject);
    onward.end(body);
  });
}

function answer(response: ServerResponse, { status, contentType, body }: Answer): void {
  response.writeHead(status, contentType === undefined ? {} : { 'content-type': contentType });
  response.end(body);
}
