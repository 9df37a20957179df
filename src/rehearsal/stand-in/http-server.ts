/**
 * The stand-in's one HTTP server, on 127.0.0.1: Web API, uploads, response URLs, private files, and the page.
 * Must not hold rules of the platform: it only passes requests on.
 */
import { once } from 'node:events';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { answerCall } from './api/answer-call.ts';
import { fileKind } from './file-shelf.ts';
import { attachmentHeaders, BodyTooLarge, readBody, sendJson } from './http-exchange.ts';
import { type PageParts, PageRoutes } from './page/page-routes.ts';
import type { RateLimits } from './rate-limits.ts';
import { answerResponseUrl } from './response-posts.ts';

const CALL_BYTES_MAX = 4_000_000;
const FILE_BYTES_MAX = 20_000_000;
const SIGN_IN_PAGE =
  '<!doctype html><html lang="en"><title>Sign in</title><p>Please sign in to see this file.</p></html>';

interface ServerParts extends PageParts {
  limits: RateLimits;
}

export class HttpServer {
  readonly #parts: ServerParts;
  readonly #page: PageRoutes;
  readonly #server: Server;

  constructor(parts: ServerParts) {
    this.#parts = parts;
    this.#page = new PageRoutes(parts);
    this.#server = createServer((request, response) => void this.#serve(request, response));
  }

  /** @returns the address, `http://127.0.0.1:PORT` */
  async listen(port: number): Promise<string> {
    this.#server.listen(port, '127.0.0.1');
    await once(this.#server, 'listening');
    return `http://127.0.0.1:${(this.#server.address() as AddressInfo).port}`;
  }

  async stop(): Promise<void> {
    this.#page.stop();
    const closed = once(this.#server, 'close');
    this.#server.close();
    this.#server.closeAllConnections();
    await closed;
  }

  async #serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    try {
      const { pathname, search } = new URL(`http://stand-in${request.url ?? '/'}`);
      const path = pathname.replaceAll(/\/{2,}/g, '/');
      const [, area, first = '', second = ''] = path.split('/');
      const posted = request.method === 'POST';
      if (area === 'api') await this.#call(request, response, first, search);
      else if (posted && area === 'upload') await this.#upload(request, response, first, second);
      else if (posted && area === 'respond') {
        const answer = answerResponseUrl(first, await readBody(request, CALL_BYTES_MAX), this.#parts.stage);
        sendJson(response, answer.status, answer.body);
      } else if (request.method === 'GET' && area === 'files') this.#file(request, response, first);
      else await this.#page.serve(request, response, path);
    } catch (error) {
      if (response.headersSent) response.destroy();
      else if (error instanceof BodyTooLarge)
        sendJson(response, 413, { ok: false, error: 'request_too_large' });
      else
        sendJson(response, 500, { ok: false, error: error instanceof Error ? error.message : String(error) });
    }
  }

  async #call(
    request: IncomingMessage,
    response: ServerResponse,
    method: string,
    query: string,
  ): Promise<void> {
    const { 'content-type': contentType, authorization } = request.headers;
    const body = await readBody(request, CALL_BYTES_MAX);
    const call = { method, query, contentType, authorization, body };
    const answer = await answerCall(call, this.#parts.stage, this.#parts.limits);
    if (answer === 'drop') request.socket.destroy();
    else sendJson(response, answer.status, answer.body, answer.headers);
  }

  /** Takes the bytes as they are, or as the one file of a multipart form; clients do either. */
  async #upload(
    request: IncomingMessage,
    response: ServerResponse,
    id: string,
    ticket: string,
  ): Promise<void> {
    const body = await readBody(request, FILE_BYTES_MAX);
    const type = request.headers['content-type'] ?? '';
    const bytes = type.startsWith('multipart/form-data') ? await formFile(body, type) : body;
    const taken = bytes !== undefined && this.#parts.stage.files.fill(id, ticket, bytes);
    response.writeHead(taken ? 200 : 400, { 'content-type': 'text/plain' });
    response.end(taken ? `OK - ${bytes.length}` : 'upload refused');
  }

  /** Without a token that may read files there is no error: a page to sign in comes instead, as on the platform. */
  #file(request: IncomingMessage, response: ServerResponse, id: string): void {
    const { stage } = this.#parts;
    const file = stage.files.get(id);
    const knownToken = request.headers.authorization === `Bearer ${stage.options.botToken}`;
    if (!knownToken || !stage.scopes.has('files:read')) {
      response.writeHead(200, { 'content-type': 'text/html; charset=utf-8' }).end(SIGN_IN_PAGE);
    } else if (file?.bytes && file.isComplete) {
      const type = fileKind(file).mime;
      const headers = { 'content-type': type, ...attachmentHeaders(file.name) };
      response.writeHead(200, headers).end(file.bytes);
    } else sendJson(response, 404, { ok: false, error: 'file_not_found' });
  }
}

async function formFile(body: Buffer, contentType: string): Promise<Buffer | undefined> {
  const headers = { 'content-type': contentType };
  const form = await new Response(new Uint8Array(body), { headers }).formData();
  const file = [...form.values()].find((value) => typeof value !== 'string');
  return file && Buffer.from(await file.arrayBuffer());
}
