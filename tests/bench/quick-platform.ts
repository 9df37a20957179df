/**
 * A platform that takes everything and answers at once, so that the time of a bench is the bot's own. It checks nothing
 * and limits nothing: benches that need a strict platform take the rehearsal's stand-in.
 */
import { EventEmitter, once } from 'node:events';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { text } from 'node:stream/consumers';
import { NEEDED_SCOPES } from '../../src/slack/workspaces/manifest-needs.ts';

export const WORKSPACE_ID = 'T0BENCH';

export interface QuickPlatform {
  readonly url: string;
  /** An address for the answer to one request. */
  responseUrl(key: string): string;
  /**
   * When the next such thing has arrived whole, on the clock of `performance.now()`. Ask before causing it.
   *
   * @param what `respond KEY`, `chat.postMessage CHANNEL` or `chat.update CHANNEL`
   * @throws Error when it has not come for half a minute
   */
  arrival(what: string, longestMs?: number): Promise<Arrival>;
  /** Hears of everything that arrives, in the words of `arrival`. */
  onArrival(listener: (what: string, arrival: Arrival) => void): void;
  /** Keeps a file that people can give with forms. @returns its address */
  keepFile(name: string, content: Buffer): string;
  stop(): Promise<void>;
}

export interface Arrival {
  readonly atMs: number;
  readonly body: string;
}

const LONGEST_WAIT_MS = 30_000;

const IDENTITY = {
  team_id: WORKSPACE_ID,
  team: 'Bench',
  user_id: 'U0BOT',
  bot_id: 'B0BOT',
  app_id: 'A0BENCH',
};

export async function startQuickPlatform(): Promise<QuickPlatform> {
  const waiting = new EventEmitter().setMaxListeners(0);
  const files = new Map<string, Buffer>();
  let url = '';
  let count = 0;

  function arrived(what: string, body: string): void {
    const arrival: Arrival = { atMs: performance.now(), body };
    waiting.emit(what, arrival);
    waiting.emit('anything', what, arrival);
  }

  function answerTo(method: string, fields: URLSearchParams): object {
    count += 1;
    const channel = fields.get('channel') ?? '';
    switch (method) {
      case 'auth.test':
        return IDENTITY;
      case 'chat.postMessage':
        return { channel: channel.replace(/^U/, 'D'), ts: `1790000000.${String(count).padStart(6, '0')}` };
      case 'files.getUploadURLExternal':
        return { upload_url: `${url}/upload/${count}`, file_id: `F${count}` };
      case 'files.info':
        return { file: { id: fields.get('file'), mimetype: 'image/png' } };
      case 'users.info':
        return { user: { id: fields.get('user'), name: 'somebody', tz: 'Etc/UTC' } };
      default:
        return { channel, ts: fields.get('ts') ?? `1790000000.${String(count).padStart(6, '0')}` };
    }
  }

  async function serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const body = await text(request);
    const [, area = '', name = ''] = (request.url ?? '').split('/');
    if (area === 'respond') arrived(`respond ${name}`, body);
    if (area !== 'api') {
      response.end(area === 'files' ? files.get(name) : 'ok');
      return;
    }
    const fields = new URLSearchParams(body);
    response.setHeader('content-type', 'application/json');
    response.setHeader('x-oauth-scopes', Object.keys(NEEDED_SCOPES).join(','));
    response.end(JSON.stringify({ ok: true, ...answerTo(name, fields) }));
    arrived(`${name} ${fields.get('channel') ?? ''}`, body);
  }

  const server = createServer((request, response) => {
    serve(request, response).catch(() => response.destroy());
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  return {
    url,
    onArrival: (listener) => void waiting.on('anything', listener),
    keepFile(name, content) {
      files.set(name, content);
      return `${url}/files/${name}`;
    },
    responseUrl: (key) => `${url}/respond/${key}`,
    async arrival(what, longestMs = LONGEST_WAIT_MS) {
      const signal = AbortSignal.timeout(longestMs);
      const [arrival] = await once(waiting, what, { signal }).catch((cause: unknown) => {
        throw new Error(`The platform waited in vain for ${what}.`, { cause });
      });
      return arrival as Arrival;
    },
    async stop() {
      const closed = once(server, 'close');
      server.close();
      server.closeAllConnections();
      await closed;
    },
  };
}
