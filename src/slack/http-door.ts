/**
 * The door for HTTP: lets in the platform's signed requests and nothing else, and answers the health
 * routes. Every refused request is turned away here, before any of the bot's work begins: too large,
 * unsigned, forged, too old, from the future, or not what the platform sends.
 */
import { once } from 'node:events';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type App, HTTPReceiver, type Receiver } from '@slack/bolt';
import type { Logger } from '../logger.ts';
import { withNewReference } from '../reference.ts';
import { boltLogger } from './bolt-logger.ts';
import { answerHealth, type Readiness } from './health-routes.ts';
import { isFromPlatform } from './incoming.ts';
import { judgeSignature } from './judge-signature.ts';
import { readBody } from './read-body.ts';
import type { RequestMeter } from './request-scope.ts';

export const EVENTS_PATH = '/slack/events';

/**
 * The largest request the platform sends holds a form of at most 250 kB with what was typed in it; a
 * form-encoded character can take nine bytes.
 */
export const BODY_LIMIT_BYTES = 1024 * 1024;

/** Slow senders are cut off; the platform itself gives up after 3 s. */
const REQUEST_TIMEOUT_MS = 10_000;
const TIMEOUT_CHECK_MS = 2_000;
/** Whoever has not sent a whole request by then is cut off when the door closes. */
const CLOSING_LIMIT_MS = 5_000;

const SERVER_OPTIONS = {
  requestTimeout: REQUEST_TIMEOUT_MS,
  headersTimeout: REQUEST_TIMEOUT_MS,
  connectionsCheckingInterval: TIMEOUT_CHECK_MS,
};

export interface HttpDoorOptions {
  /** Undefined in socket mode: only the health routes are answered. */
  readonly signingSecret: string | undefined;
  readonly port: number;
  readonly readiness: Readiness;
  readonly nowMs: () => number;
  readonly logger: Logger;
  readonly meter?: Pick<RequestMeter, 'turnedAway'> | undefined;
}

export class HttpDoor implements Receiver {
  readonly #options: HttpDoorOptions;
  readonly #bolt: HTTPReceiver;
  readonly #server: Server;

  constructor(options: HttpDoorOptions) {
    this.#options = options;
    // The signature is verified here, future timestamps included; verifying it twice would use two clocks.
    this.#bolt = new HTTPReceiver({
      signingSecret: '',
      signatureVerification: false,
      endpoints: EVENTS_PATH,
      logger: boltLogger(options.logger),
    });
    this.#server = createServer(SERVER_OPTIONS, (request, response) => {
      withNewReference(() =>
        this.#answer(request, response).catch((error: unknown) => {
          options.logger.error({ err: error }, 'A request could not be answered.');
          if (!response.headersSent) refuse(response, 500);
        }),
      );
    });
  }

  init(app: App): void {
    this.#bolt.init(app);
  }

  /** @returns the port that is listened on. */
  async start(): Promise<number> {
    this.#server.listen(this.#options.port);
    await once(this.#server, 'listening');
    return (this.#server.address() as AddressInfo).port;
  }

  /** Takes no new connection and lets the requests in hand be answered. */
  async stop(): Promise<void> {
    if (!this.#server.listening) return;
    const closed = once(this.#server, 'close');
    this.#server.close();
    this.#server.closeIdleConnections();
    const cutOff = setTimeout(() => this.#server.closeAllConnections(), CLOSING_LIMIT_MS);
    await closed;
    clearTimeout(cutOff);
  }

  async #answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (await answerHealth(request, response, this.#options.readiness)) return;
    const isEvents = request.method === 'POST' && request.url?.split('?')[0] === EVENTS_PATH;
    if (!isEvents || this.#options.signingSecret === undefined) return refuse(response, 404);
    const rawBody = await readBody(request, BODY_LIMIT_BYTES);
    if (rawBody === undefined) return this.#turnAway(response, 413, 'too large');
    if (isCertificateCheck(request, rawBody)) return refuse(response, 200);
    const verdict = judgeSignature({
      signingSecret: this.#options.signingSecret,
      timestamp: header(request, 'x-slack-request-timestamp'),
      signature: header(request, 'x-slack-signature'),
      rawBody,
      nowMs: this.#options.nowMs(),
    });
    if (verdict !== 'genuine') return this.#turnAway(response, 401, verdict);
    if (!isFromPlatform(contentOf(request, rawBody))) return this.#turnAway(response, 400, 'malformed');
    this.#bolt.requestListener(Object.assign(request, { rawBody, url: EVENTS_PATH }), response);
  }

  #turnAway(response: ServerResponse, status: number, reason: string): void {
    this.#options.meter?.turnedAway(reason.replaceAll(' ', '-'));
    this.#options.logger.warn({ reason, status }, 'A request was turned away.');
    refuse(response, status);
  }
}

function refuse(response: ServerResponse, status: number): void {
  // What is left of a refused body is not read, so the connection can not be used again.
  response.writeHead(status, status === 200 ? {} : { connection: 'close' });
  response.end();
}

function header(request: IncomingMessage, name: string): string | undefined {
  const value = request.headers[name];
  return typeof value === 'string' ? value : undefined;
}

function isForm(request: IncomingMessage): boolean {
  return header(request, 'content-type') === 'application/x-www-form-urlencoded';
}

/** The platform asks now and then, unsigned, whether the address has a valid certificate. */
function isCertificateCheck(request: IncomingMessage, rawBody: Buffer): boolean {
  return (
    isForm(request) && /^(?:token=[^&]*&)?ssl_check=1(?:&token=[^&]*)?$/.test(rawBody.toString('latin1'))
  );
}

/** What the request holds: JSON, or a form, or a form with JSON as its `payload`. Undefined: not readable. */
function contentOf(request: IncomingMessage, rawBody: Buffer): unknown {
  const text = rawBody.toString('utf8');
  const form = isForm(request) ? new URLSearchParams(text) : undefined;
  const [json, ...others] = form?.getAll('payload') ?? [text];
  if (others.length > 0) return undefined;
  if (json === undefined) return Object.fromEntries(form ?? []);
  try {
    return JSON.parse(json);
  } catch {
    return undefined;
  }
}
