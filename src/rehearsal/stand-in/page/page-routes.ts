/**
 * The page API under `/page/`: what the web page of the rehearsal asks and does, as JSON, and the page's files.
 */
import type { EventEmitter } from 'node:events';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { z } from 'zod';
import { pictureType } from '../file-shelf.ts';
import { FORM_FILE_BYTES_MAX } from '../form-inputs.ts';
import { attachmentHeaders, BodyTooLarge, readBody, sendJson } from '../http-exchange.ts';
import type { InputValues, JsonObject } from '../page-state.ts';
import type { PersonClicks } from '../person-clicks.ts';
import type { PersonForms } from '../person-forms.ts';
import type { PersonTalk } from '../person-talk.ts';
import { pageState, type ReadMarks, readableFile } from '../seen.ts';
import type { Stage } from '../stage.ts';
import { PAGE_HEADERS, servePageFile } from './page-files.ts';

const BODY_BYTES_MAX = 1_000_000;
const DEFAULT_PAGE_DIR = new URL('../../page/', import.meta.url);

const id = z.string().min(1).max(255);
const inputValue = z.union([z.string(), z.null(), z.array(z.string())]);
const inputValues = z.record(z.string(), z.record(z.string(), inputValue));
const typed = z.object({ as: id, channel: id, text: z.string().max(40_000) });
const onMessage = z.object({ as: id, channel: id, ts: id, callbackId: id });
const said = typed.extend({ threadTs: id.optional() });
const place = z.object({ as: id, channel: id });
const clicked = z.object({
  as: id,
  channel: id.optional(),
  ts: id.optional(),
  viewId: id.optional(),
  blockId: id.optional(),
  actionId: id,
  value: z.string().optional(),
});
const formed = z.object({ as: id, viewId: id, state: inputValues.optional() });
const changed = formed.extend({ blockId: id, state: inputValues });
const PICK_FILE = 'POST /page/pick-file';
const picked = z.object({ as: id, name: z.string().min(1).max(255) });
const opened = z.object({ as: id, tab: z.enum(['home', 'messages']).default('home') });
const shortcutChosen = z.object({ as: id, callbackId: id });
/** A page that opens for the first time knows nobody yet. */
const viewer = z.object({ as: id.optional() });

type Route = (input: JsonObject) => Promise<unknown> | unknown;

export interface PageParts {
  stage: Stage;
  marks: ReadMarks;
  talk: PersonTalk;
  clicks: PersonClicks;
  forms: PersonForms;
  emitter: EventEmitter;
}

export class PageRoutes {
  readonly #parts: PageParts;
  readonly #changes: PageChanges;
  readonly #routes: Record<string, Route>;

  constructor(parts: PageParts) {
    this.#parts = parts;
    this.#changes = new PageChanges(parts.emitter);
    this.#routes = { ...this.#ownRoutes(), ...parts.stage.options.routes };
  }

  stop(): void {
    this.#changes.stop();
  }

  async serve(request: IncomingMessage, response: ServerResponse, path: string): Promise<void> {
    const strange = strangeRequest(request, this.#parts.stage.url);
    if (strange) return send(response, 403, { error: strange });
    if (request.method === 'GET' && path === '/page/changes') return this.#changes.serve(request, response);
    if (request.method === 'GET' && path.startsWith('/page/file/'))
      return this.#file(response, path.slice(11));
    if (request.method === 'GET' && path.startsWith('/page/download/'))
      return this.#download(request, response, path.slice(15));
    const key = `${request.method} ${path}`;
    if (key === PICK_FILE) return this.#answer(response, () => this.#pick(request));
    const route = Object.hasOwn(this.#routes, key) ? this.#routes[key] : undefined;
    if (route) return this.#answer(response, async () => route(await inputOf(request)));
    const pageDir = this.#parts.stage.options.pageDir ?? DEFAULT_PAGE_DIR;
    if (
      request.method === 'GET' &&
      !path.startsWith('/page/') &&
      (await servePageFile(path, pageDir, response))
    )
      return;
    send(response, 404, { error: 'There is nothing here.' });
  }

  #ownRoutes(): Record<string, Route> {
    const { stage, marks, talk, clicks, forms } = this.#parts;
    return {
      'GET /page/state': (input) =>
        pageState(stage, viewer.parse(input).as ?? stage.workspace.anyone().id, marks),
      'POST /page/read': (input) => {
        const { as, channel } = place.parse(input);
        const conversation = stage.workspace.placeOf(as, channel);
        const last = conversation && stage.log.of(conversation.id, as).at(-1);
        if (last) marks.read(as, last.channelId, last.ts);
        return { ok: true };
      },
      'POST /page/command': (input) => {
        const { as, channel, text } = typed.parse(input);
        return talk.command(as, channel, text);
      },
      'POST /page/say': (input) => {
        const { as, channel, text, threadTs } = said.parse(input);
        return talk.say(as, channel, text, threadTs);
      },
      'POST /page/message-shortcut': (input) => {
        const { as, channel, ts, callbackId } = onMessage.parse(input);
        return talk.messageShortcut(as, channel, ts, callbackId);
      },
      'POST /page/click': (input) => {
        const { as, channel, ts, viewId, actionId, blockId, value } = clicked.parse(input);
        const where = viewId === undefined ? { channel: channel ?? '', ts: ts ?? '' } : { viewId };
        return clicks.click(as, where, actionId, {
          ...(blockId === undefined ? {} : { blockId }),
          ...(value === undefined ? {} : { value }),
        });
      },
      'POST /page/submit': (input) => {
        const { as, viewId, state } = formed.parse(input);
        return forms.submit(as, viewId, (state ?? {}) as InputValues);
      },
      'POST /page/change': (input) => {
        const { as, viewId, blockId, state } = changed.parse(input);
        return forms.change(as, viewId, blockId, state as InputValues);
      },
      'POST /page/close': (input) => {
        const { as, viewId } = formed.parse(input);
        return forms.close(as, viewId);
      },
      'POST /page/home': (input) => {
        const { as, tab } = opened.parse(input);
        return talk.openHome(as, tab);
      },
      'POST /page/shortcut': (input) => {
        const { as, callbackId } = shortcutChosen.parse(input);
        return talk.shortcut(as, callbackId);
      },
    };
  }

  async #answer(response: ServerResponse, work: () => Promise<unknown>): Promise<void> {
    try {
      send(response, 200, await work());
    } catch (error) {
      if (error instanceof BodyTooLarge) return send(response, 413, { error: 'That is too long.' });
      const said =
        error instanceof z.ZodError ? z.prettifyError(error) : error instanceof Error ? error.message : error;
      send(response, 400, { error: String(said) });
    }
  }

  /** The bytes of one file, as they are; who picked it and its name are in the address. */
  async #pick(request: IncomingMessage): Promise<unknown> {
    const { as, name } = picked.parse(queryOf(request));
    const bytes = await readBody(request, FORM_FILE_BYTES_MAX);
    return this.#parts.forms.pickFile(as, name, bytes);
  }

  /** Always as a file to save: what people upload must not run as a page of the rehearsal. */
  #download(request: IncomingMessage, response: ServerResponse, fileId: string): void {
    const as = viewer.safeParse(queryOf(request)).data?.as;
    const file = as === undefined ? undefined : readableFile(this.#parts.stage, as, fileId);
    const type = { 'content-type': 'application/octet-stream' };
    if (file?.bytes)
      response.writeHead(200, { ...PAGE_HEADERS, ...type, ...attachmentHeaders(file.name) }).end(file.bytes);
    else send(response, 404, { error: 'There is no such file.' });
  }

  #file(response: ServerResponse, fileId: string): void {
    const bytes = this.#parts.stage.files.get(fileId)?.bytes;
    const picture = bytes && pictureType(bytes);
    if (bytes && picture)
      response.writeHead(200, { ...PAGE_HEADERS, 'content-type': picture.mime }).end(bytes);
    else send(response, 404, { error: 'There is no such picture.' });
  }
}

async function inputOf(request: IncomingMessage): Promise<JsonObject> {
  if (request.method === 'GET') return queryOf(request);
  const body = await readBody(request, BODY_BYTES_MAX);
  const parsed: unknown = JSON.parse(body.toString('utf8') || '{}');
  if (typeof parsed !== 'object' || parsed === null || Array.isArray(parsed))
    throw new Error('Send a JSON object.');
  return parsed as JsonObject;
}

function queryOf(request: IncomingMessage): JsonObject {
  return Object.fromEntries(new URL(request.url ?? '/', 'http://stand-in').searchParams);
}

function send(response: ServerResponse, status: number, body: unknown): void {
  sendJson(response, status, body ?? { ok: true }, PAGE_HEADERS);
}

/**
 * Server-sent events for the page: one `change` whenever something visible changed. Carries no content; the page
 * asks for the state again.
 */
class PageChanges {
  readonly #open = new Set<ServerResponse>();
  #waiting = false;

  constructor(emitter: EventEmitter) {
    emitter.on('change', () => this.#announce());
  }

  serve(request: IncomingMessage, response: ServerResponse): void {
    response.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-store' });
    response.write('retry: 1000\n\n');
    this.#open.add(response);
    request.on('close', () => this.#open.delete(response));
  }

  stop(): void {
    for (const response of this.#open) response.end();
    this.#open.clear();
  }

  /** Many changes in one turn of the event loop are reported once. */
  #announce(): void {
    if (this.#waiting) return;
    this.#waiting = true;
    setImmediate(() => {
      this.#waiting = false;
      for (const response of this.#open) response.write('event: change\ndata: {}\n\n');
    });
  }
}

/**
 * What is wrong with a request; undefined when it may be answered. Only the rehearsal's own page may use the page API:
 * other web sites open in the same browser, and names that someone points at this machine, are turned away.
 */
function strangeRequest(request: IncomingMessage, standInUrl: string): string | undefined {
  const { port } = new URL(standInUrl);
  const hosts = [`127.0.0.1:${port}`, `localhost:${port}`];
  const { host, origin } = request.headers;
  if (!host || !hosts.includes(host)) return 'Open the rehearsal by its own address.';
  if (origin !== undefined && origin !== `http://${host}`) return 'Other sites may not use the rehearsal.';
  const site = request.headers['sec-fetch-site'];
  const top = request.headers['sec-fetch-dest'] === 'document' && request.method === 'GET';
  if (site !== undefined && !['same-origin', 'none'].includes(String(site)) && !top) {
    return 'Other sites may not use the rehearsal.';
  }
  const type = request.headers['content-type'] ?? '';
  // A cross-site form can send neither, so a post of another type does not come from the page.
  const ownType = type.startsWith('application/json') || type === 'application/octet-stream';
  return request.method === 'POST' && !ownType ? 'Send JSON.' : undefined;
}
