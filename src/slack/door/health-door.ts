/**
 * Answers the health routes on a port of their own, which strangers can't reach: what keeps the bot's other port busy is
 * then no reason to start it anew.
 */
import { once } from 'node:events';
import { createServer, type Server } from 'node:http';
import { listen } from './listen.ts';
import { answerHealth, type Readiness } from './readiness.ts';

/** Probes come one at a time. */
const MOST_CONNECTIONS = 20;
const REQUEST_LIMIT_MS = 5_000;

export class HealthDoor {
  readonly #port: number;
  readonly #server: Server;

  constructor({ port, readiness }: { readonly port: number; readonly readiness: Readiness }) {
    this.#port = port;
    const limits = { headersTimeout: REQUEST_LIMIT_MS, requestTimeout: REQUEST_LIMIT_MS };
    this.#server = createServer(limits, (request, response) => {
      answerHealth(request, response, readiness).then(
        (isAnswered) => isAnswered || response.writeHead(404, { 'content-length': 0 }).end(),
        // Whoever asked hears nothing, which says enough.
        () => response.destroy(),
      );
    });
    this.#server.maxConnections = MOST_CONNECTIONS;
  }

  /** @returns the port that is listened on. */
  async start(): Promise<number> {
    return listen(this.#server, this.#port);
  }

  async stop(): Promise<void> {
    if (!this.#server.listening) return;
    const closed = once(this.#server, 'close');
    this.#server.close();
    this.#server.closeAllConnections();
    await closed;
  }
}
