/**
 * Answers `/metrics` on a port of its own, so that it need not be where the platform's requests come in. On
 * this machine only, or to who has the token: it never serves others by mistake.
 */
import { createHash, timingSafeEqual } from 'node:crypto';
import { once } from 'node:events';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Registry } from 'prom-client';
import { keepNewest } from '../newest-connections.ts';
import { isLoopback } from '../setting-rules.ts';

/** Undefined token: anybody who can reach the address may read, so the address must be this machine's own. */
interface MetricsServerOptions {
  readonly host: string;
  readonly port: number;
  readonly token: string | undefined;
  readonly register: Registry;
  readonly onError: (error: unknown) => void;
}

export interface MetricsServer {
  readonly port: number;
  stop(): Promise<void>;
}

const REQUEST_TIMEOUT_MS = 10_000;

/** @throws Error when the address is open to others and there is no token; or the port can't be had. */
export async function startMetricsServer(options: MetricsServerOptions): Promise<MetricsServer> {
  const { host, port, token, onError } = options;
  if (token === undefined && !isLoopback(host)) {
    throw new Error(`Metrics on ${host} need a token.`);
  }
  const server = createServer(
    { requestTimeout: REQUEST_TIMEOUT_MS, headersTimeout: REQUEST_TIMEOUT_MS },
    (request, response) => {
      answer(request, response, options).catch((error: unknown) => {
        onError(error);
        if (!response.headersSent) end(response, 500);
      });
    },
  );
  keepNewest(server);
  server.listen(port, host);
  await once(server, 'listening');
  return {
    port: (server.address() as AddressInfo).port,
    async stop() {
      const closed = once(server, 'close');
      server.close();
      server.closeAllConnections();
      await closed;
    },
  };
}

async function answer(
  request: IncomingMessage,
  response: ServerResponse,
  { token, register }: MetricsServerOptions,
): Promise<void> {
  if (request.url?.split('?')[0] !== '/metrics') return end(response, 404);
  if (token !== undefined && !isToken(request.headers.authorization, token)) {
    response.setHeader('www-authenticate', 'Bearer');
    return end(response, 401);
  }
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.setHeader('allow', 'GET, HEAD');
    return end(response, 405);
  }
  const text = await register.metrics();
  response.writeHead(200, { 'content-type': register.contentType, 'cache-control': 'no-store' });
  response.end(text);
}

/** Compares hashes, which are equally long: the time taken says nothing about the token. */
function isToken(authorization: string | undefined, token: string): boolean {
  const [, given] = /^Bearer +(\S+)$/i.exec(authorization ?? '') ?? [];
  if (given === undefined) return false;
  const hash = (text: string): Buffer => createHash('sha256').update(text).digest();
  return timingSafeEqual(hash(given), hash(token));
}

function end(response: ServerResponse, status: number): void {
  response.writeHead(status, { connection: 'close' });
  response.end();
}
