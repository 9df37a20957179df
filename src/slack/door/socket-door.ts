/**
 * The door for Socket Mode: opens a socket to the platform and keeps it open. At the start a refusal ends
 * the attempt with its reason; the library alone would silently go on trying after some of them.
 */
import { type App, type Receiver, SocketModeReceiver } from '@slack/bolt';
import { WebAPIPlatformError } from '@slack/web-api';
import type { Logger } from '../../logger.ts';
import { boltLogger } from '../bolt-logger.ts';
import { type PlatformProblem, socketProblem, TOO_MANY_SOCKETS } from '../workspaces/check-platform.ts';
import { isHeard } from './incoming.ts';
import { withoutNulls } from './request-content.ts';

/** Answers after which it makes sense to try again; every other one stays as it is until somebody acts. */
const PASSING = new Set([
  'internal_error',
  'fatal_error',
  'service_unavailable',
  'ratelimited',
  'request_timeout',
]);

/** The connection to the platform could not be made. */
export class PlatformStartError extends Error {
  override readonly name = 'PlatformStartError';
  readonly code = 'platform-start';
  readonly problem: PlatformProblem;

  constructor(problem: PlatformProblem, options: { cause: unknown }) {
    super(problem.code, options);
    this.problem = problem;
  }
}

interface SocketDoorOptions {
  readonly appToken: string;
  /** The platform's own address when left out. */
  readonly slackApiUrl?: string | undefined;
  readonly logger: Logger;
}

export class SocketDoor implements Receiver {
  readonly #socket: SocketModeReceiver;
  readonly #refused = Promise.withResolvers<never>();
  #isConnected = false;

  constructor({ appToken, slackApiUrl, logger }: SocketDoorOptions) {
    this.#refused.promise.catch(() => {});
    this.#socket = new SocketModeReceiver({
      appToken,
      logger: boltLogger(logger),
      installerOptions: {
        clientOptions: {
          fetch: (url, init) => this.#watchedFetch(url, init),
          ...(slackApiUrl === undefined ? {} : { slackApiUrl }),
        },
      },
    });
    this.#socket.client.on('ws_message', (data: unknown) => {
      if (!saysTooMany(data)) return;
      // While the bot runs, the library goes on trying; another process may have stopped by then.
      logger.error('The platform closed the socket: ten processes of the app have one already.');
      if (!this.#isConnected) this.#refused.reject(refusal(TOO_MANY_SOCKETS));
    });
    this.#socket.client.on('connected', () => {
      this.#isConnected = true;
    });
    for (const state of ['reconnecting', 'disconnected']) {
      this.#socket.client.on(state, () => {
        this.#isConnected = false;
      });
    }
  }

  get isConnected(): boolean {
    return this.#isConnected;
  }

  init(app: App): void {
    // The library calls nothing else of it.
    const processEvent: App['processEvent'] = async (event) => {
      const body = withoutNulls(event.body) as typeof event.body;
      await (isHeard(body) ? app.processEvent({ ...event, body }) : event.ack());
    };
    this.#socket.init({ processEvent } as App);
  }

  /** @throws PlatformStartError */
  async start(): Promise<void> {
    try {
      await Promise.race([this.#socket.start(), this.#refused.promise]);
    } catch (error) {
      await this.stop();
      const code = error instanceof WebAPIPlatformError ? error.data.error : undefined;
      throw new PlatformStartError(socketProblem(code), { cause: error });
    }
  }

  async stop(): Promise<void> {
    await this.#socket.stop();
    this.#isConnected = false;
  }

  async #watchedFetch(url: string | URL, init: Parameters<typeof fetch>[1] = {}): Promise<Response> {
    const response = await fetch(url, init);
    const answer: unknown = await response
      .clone()
      .json()
      .catch(() => undefined);
    const code = (answer as { error?: unknown } | null | undefined)?.error;
    if (typeof code === 'string' && !PASSING.has(code)) {
      this.#refused.reject(refusal(code));
    }
    return response;
  }
}

function refusal(code: string): WebAPIPlatformError {
  return new WebAPIPlatformError({ ok: false, error: code });
}

/** Sent in place of a greeting, or later: slackapi/node-slack-sdk#1762. */
function saysTooMany(data: unknown): boolean {
  if (typeof data !== 'string' || !data.includes(TOO_MANY_SOCKETS)) return false;
  // What people typed may hold the same word.
  const { type, reason } = JSON.parse(data) as { type?: unknown; reason?: unknown };
  return type === 'disconnect' && reason === TOO_MANY_SOCKETS;
}
