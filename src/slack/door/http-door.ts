/**
 * The door for HTTP: lets in the platform's signed requests and nothing else, and answers the health
 * routes. Every refused request is turned away here, before any of the bot's work begins: too large,
 * unsigned, forged, too old, from the future, or not what the platform sends.
 */
import { once } from 'node:events';
import {
  createServer,
  type IncomingMessage,
  type RequestListener,
  type Server,
  type ServerResponse,
} from 'node:http';
import { type App, HTTPReceiver, type Receiver } from '@slack/bolt';
import type { Logger } from '../../logger.ts';
import { withNewReference } from '../../reference.ts';
import { boltLogger } from '../bolt-logger.ts';
import type { PageRoutes } from '../workspaces/install-pages.ts';
import { HTTP_LIMITS, type HttpLimits } from './http-limits.ts';
import { readInSlices } from './in-slices.ts';
import { isFromPlatform, isHeard, saysEventsAreHeldBack } from './incoming.ts';
import { judgeHeaders, judgeSignature } from './judge-signature.ts';
import { listen } from './listen.ts';
import { readBody, type UnreadBody } from './read-body.ts';
import { answerHealth, type Readiness } from './readiness.ts';
import { contentOf, isForm, isKnownType } from './request-content.ts';
import type { RequestMeter } from './request-scope.ts';
import { SenderNetworks } from './sender-network.ts';
import { type Visitor, Visitors, type WhyGone } from './visitors.ts';

export const EVENTS_PATH = '/slack/events';

/** The longest body of the only request that comes unsigned; with it, three short fields at most. */
const CERTIFICATE_CHECK_BYTES = 512;
/** A sender whose request is not complete by then is cut off when the door closes. */
const CLOSING_LIMIT_MS = 5_000;

/** Under a flood, one line says how many connections were closed. */
const FLOOD_LOGGED_EVERY_MS = 10_000;

interface HttpDoorOptions {
  /** Undefined in socket mode: only the health routes are answered. */
  readonly signingSecret: string | undefined;
  readonly port: number;
  /** The address of this machine that is listened on; undefined: all of them. */
  readonly host?: string | undefined;
  /** Undefined: the health routes are answered elsewhere. */
  readonly readiness: Readiness | undefined;
  readonly nowMs: () => number;
  readonly logger: Logger;
  readonly meter?: Pick<RequestMeter, 'turnedAway'> | undefined;
  /** Pages for browsers, in both modes. */
  readonly pages?: PageRoutes | undefined;
  /** Addresses and networks whose word about a sender's address counts. */
  readonly trustedProxies?: readonly string[] | undefined;
  /** For tests, which can't wait as long or send as much. */
  readonly limits?: HttpLimits;
}

export class HttpDoor implements Receiver {
  readonly #options: HttpDoorOptions;
  readonly #limits: HttpLimits;
  readonly #networks: SenderNetworks;
  readonly #visitors: Visitors;
  readonly #bolt: HTTPReceiver;
  readonly #server: Server;

  constructor(options: HttpDoorOptions) {
    this.#options = options;
    this.#limits = options.limits ?? HTTP_LIMITS;
    this.#networks = new SenderNetworks(options.trustedProxies ?? []);
    this.#visitors = new Visitors(this.#limits, this.#closed());
    // The signature is verified here, future timestamps included; verifying it twice would use two clocks.
    this.#bolt = new HTTPReceiver({
      signingSecret: '',
      signatureVerification: false,
      endpoints: EVENTS_PATH,
      logger: boltLogger(options.logger),
      // What the library itself stumbles over is no work of ours that failed: that ends elsewhere.
      processEventErrorHandler: async ({ error, response }) => {
        options.logger.warn({ err: error }, 'A request could not be understood.');
        if (!response.headersSent) this.#turnAway(response, 400, 'malformed');
        return true;
      },
    });
    this.#server = limitedServer(this.#limits, (request, response) => {
      withNewReference(() =>
        this.#answer(request, response).catch((error: unknown) => {
          options.logger.error({ err: error }, 'A request could not be answered.');
          if (!response.headersSent) answerAndClose(response, 500);
        }),
      );
    });
    this.#server.on('connection', (socket) => {
      this.#visitors.enter(socket, this.#networks.ofConnection(socket.remoteAddress ?? ''));
      readInSlices(socket, () => this.#visitors.find(socket)?.isWelcome === true);
    });
  }

  init(app: App): void {
    this.#bolt.init(app);
  }

  /** @returns the port that is listened on. */
  async start(): Promise<number> {
    return listen(this.#server, this.#options.port, this.#options.host);
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
    const visitor = this.#visitors.find(request.socket);
    // It had to make room before its request was read.
    if (visitor === undefined) return;
    if (!this.#visitors.asks(visitor, this.#networks.ofRequest(request))) return;
    response.once('close', () => this.#visitors.isAnswered(visitor, response));
    const isEvents = request.method === 'POST' && request.url?.split('?')[0] === EVENTS_PATH;
    if (!isEvents || this.#options.signingSecret === undefined)
      return this.#answerAnybody(visitor, request, response);
    const headers = {
      timestamp: header(request, 'x-slack-request-timestamp'),
      signature: header(request, 'x-slack-signature'),
      nowMs: this.#options.nowMs(),
    };
    const plausible = judgeHeaders(headers);
    const isCheck = mayBeCertificateCheck(request);
    if (plausible !== 'plausible' && !isCheck) return this.#turnAway(response, 401, plausible);
    const type = header(request, 'content-type');
    if (!isKnownType(type)) return this.#turnAway(response, 415, 'malformed');
    const limitBytes = isCheck ? CERTIFICATE_CHECK_BYTES : this.#limits.bodyBytes;
    const rawBody = await readBody(request, limitBytes, this.#visitors.roomFor(visitor));
    // That it is cut off is counted already.
    if (visitor.hadToGo) return;
    if (rawBody === 'in crumbs') this.#visitors.bar(visitor.network);
    if (typeof rawBody === 'string') return this.#turnAway(response, UNREAD_STATUS[rawBody], rawBody);
    if (isCheck && isCertificateCheck(rawBody)) return answerAndClose(response, 200);
    const verdict = judgeSignature({ ...headers, signingSecret: this.#options.signingSecret, rawBody });
    if (verdict !== 'genuine') return this.#turnAway(response, 401, verdict);
    this.#visitors.isGenuine(visitor, response);
    const content = contentOf(type, rawBody);
    if (!isFromPlatform(content)) return this.#turnAway(response, 400, 'malformed');
    if (saysEventsAreHeldBack(content)) {
      this.#options.logger.warn('The platform holds events back, as there are too many.');
      return acknowledge(response);
    }
    if (!isHeard(content)) return acknowledge(response);
    this.#bolt.requestListener(asJson(request, content), response);
  }

  /** Health and pages. Each takes a connection: who asks over and over has to open one each time. */
  async #answerAnybody(visitor: Visitor, request: IncomingMessage, response: ServerResponse): Promise<void> {
    response.setHeader('connection', 'close');
    const { readiness, pages } = this.#options;
    if (readiness && (await answerHealth(request, response, readiness))) {
      visitor.isWelcome = true;
      return;
    }
    if (await pages?.(request, response)) return;
    answerAndClose(response, 404);
  }

  #turnAway(response: ServerResponse, status: number, reason: string): void {
    this.#options.meter?.turnedAway(reason.replaceAll(' ', '-'));
    const level = reason === 'cut off' ? 'debug' : 'warn';
    this.#options.logger[level]({ reason, status }, 'A request was turned away.');
    answerAndClose(response, status);
  }

  /** Counts connections that had to make room, and logs them without flooding the log in turn. */
  #closed(): (why: WhyGone) => void {
    const { meter, logger, nowMs } = this.#options;
    const untold = new Map<WhyGone, { count: number; loggedMs: number }>();
    return (why) => {
      meter?.turnedAway(why.replaceAll(' ', '-'));
      const { count, loggedMs } = untold.get(why) ?? { count: 0, loggedMs: Number.NEGATIVE_INFINITY };
      const isDue = nowMs() - loggedMs >= FLOOD_LOGGED_EVERY_MS;
      if (isDue) logger.warn({ reason: why, count: count + 1 }, 'Connections were closed to make room.');
      untold.set(why, isDue ? { count: 0, loggedMs: nowMs() } : { count: count + 1, loggedMs });
    };
  }
}

/** 429: the sender may come again; 400 is heard by nobody, since the sender is gone. */
const UNREAD_STATUS: Readonly<Record<UnreadBody, number>> = {
  'too large': 413,
  'in crumbs': 400,
  'no room': 429,
  'cut off': 400,
};

function limitedServer(limits: HttpLimits, listener: RequestListener): Server {
  const server = createServer(
    {
      headersTimeout: limits.headersMs,
      requestTimeout: limits.requestMs,
      keepAliveTimeout: limits.idleMs,
      connectionsCheckingInterval: limits.checkEveryMs,
      maxHeaderSize: limits.headerBytes,
    },
    listener,
  );
  server.maxHeadersCount = limits.headerCount;
  return server;
}

function acknowledge(response: ServerResponse): void {
  response.writeHead(200, { 'content-length': 0 });
  response.end();
}

/** What is left of a refused body is not read, and who isn't the platform has asked enough. */
function answerAndClose(response: ServerResponse, status: number): void {
  response.writeHead(status, { connection: 'close', 'content-length': 0 });
  response.end();
}

function header(request: IncomingMessage, name: string): string | undefined {
  const value = request.headers[name];
  return typeof value === 'string' ? value : undefined;
}

/** Asked of the headers alone: a short form that says how long it is. */
function mayBeCertificateCheck(request: IncomingMessage): boolean {
  const lengthBytes = Number(request.headers['content-length'] ?? Number.NaN);
  return isForm(header(request, 'content-type')) && lengthBytes <= CERTIFICATE_CHECK_BYTES;
}

/** The platform asks now and then, unsigned, whether the address has a valid certificate. */
function isCertificateCheck(rawBody: Buffer): boolean {
  return /^(?:token=[^&]*&)?ssl_check=1(?:&token=[^&]*)?$/.test(rawBody.toString('latin1'));
}

/** Hands on what was judged, not the bytes that it was read from: another reader might read them differently. */
function asJson(request: IncomingMessage, content: unknown): IncomingMessage {
  request.headers['content-type'] = 'application/json';
  return Object.assign(request, { rawBody: Buffer.from(JSON.stringify(content)), url: EVENTS_PATH });
}
