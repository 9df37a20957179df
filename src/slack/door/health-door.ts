/**
 * Answers the health routes on a port of their own, which strangers can't reach: what keeps the bot's other port busy is
 * then no reason to start it anew.
 */
import { once } from 'node:events';
import { createServer, type Server } from 'node:http';
import { keepNewest } from '../../newest-connections.ts';
import { listen } from './listen.ts';
import { answerHealth, type Readiness } from './readiness.ts';

const REQUEST_LIMIT_MS = 5_000;

export class HealthDoor {
  readonly #port: number;
  readonly #host: string | undefined;
  readonly #server: Server;

  /** @param options.host the address of this machine that is listened on; undefined: all of them */
  constructor(options: {
    readonly port: number;
    readonly host?: string | undefined;
    readonly readiness: Readiness;
  }) {
    const { port, host, readiness } = options;
    this.#port = port;
    this.#host = host;
    const limits = { headersTimeout: REQUEST_LIMIT_MS, requestTimeout: REQUEST_LIMIT_MS };
    this.#server = createServer(limits, (request, response) => {
      answerHealth(request, response, readiness).then(
        (isAnswered) => isAnswered || response.writeHead(404, { 'content-length': 0 }).end(),
        // Whoever asked hears nothing, which says enough.
        () => response.destroy(),
      );
    });
    keepNewest(this.#server);
  }

  /** @returns the port that is listened on. */
  async start(): Promise<number> {
    return listen(this.#server, this.#port, this.#host);
  }

  async stop(): Promise<void> {
    if (!this.#server.listening) return;
    const closed = once(this.#server, 'close');
    this.#server.close();
    this.#server.closeAllConnections();
    await closed;
  }
}
