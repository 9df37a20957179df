/**
 * Sends signed requests to the app and waits for its answer, three seconds at most.
 * docs.slack.dev/interactivity/handling-user-interaction, docs.slack.dev/apis/events-api
 */
import { createHmac } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import type { JsonObject } from './page-state.ts';
import type { Stage } from './stage.ts';

const ACK_LIMIT_MS = 3_000;
/** How often an event follows where the app sends it on; everything else doesn't. */
const EVENT_REDIRECTS = 2;
const EVENT_RETRY_DELAYS_MS = [0, 60_000, 300_000];

/** `body` is what the app answered: parsed JSON, a text, or undefined when it was empty. */
export type Reply =
  | { ok: true; body: unknown }
  | {
      ok: false;
      reason: string;
      retryReason: string;
      /** The app asked not to be sent this event again. */
      isFinal?: boolean;
    };

export class BotLink {
  readonly #stage: Stage;
  readonly #stopped = new AbortController();
  readonly #retries = new Set<Promise<void>>();
  #botUrl: string | undefined;

  constructor(stage: Stage) {
    this.#stage = stage;
  }

  connect(botUrl: string): void {
    this.#botUrl = botUrl;
  }

  /** A slash command: its fields as a form. */
  sendCommand(fields: Record<string, string>): Promise<Reply> {
    return this.#send(new URLSearchParams(fields).toString(), 'application/x-www-form-urlencoded', {});
  }

  /** A click, a submitted or a closed form: JSON in the form field `payload`. */
  sendInteraction(payload: JsonObject): Promise<Reply> {
    const body = new URLSearchParams({ payload: JSON.stringify(payload) }).toString();
    return this.#send(body, 'application/x-www-form-urlencoded', {});
  }

  /**
   * An event. When it fails it is sent again, with the same id, as often as the platform would; waits that are
   * longer than nothing go on in the background.
   */
  async sendEvent(envelope: JsonObject): Promise<Reply> {
    let reply = await this.#sendEvent(envelope, {});
    const delaysMs = this.#stage.options.eventRetryDelaysMs ?? EVENT_RETRY_DELAYS_MS;
    for (const [index, delayMs] of delaysMs.entries()) {
      if (reply.ok || reply.isFinal) break;
      if (delayMs > 0) {
        this.#inBackground(this.#retryLater(envelope, delaysMs, index, reply.retryReason));
        break;
      }
      reply = await this.#sendEvent(envelope, retryHeaders(index + 1, reply.retryReason));
    }
    return reply;
  }

  /** As `sendEvent`, without anybody waiting for it. */
  announce(envelope: JsonObject): void {
    if (this.#botUrl) this.#inBackground(this.sendEvent(envelope).then(() => {}));
  }

  /** Asks the address to prove that an app listens there: it must send the challenge back. */
  async verify(): Promise<Reply> {
    const challenge = crypto.randomUUID();
    const reply = await this.#sendJson({ type: 'url_verification', challenge, token: 'stand-in' }, {});
    if (!reply.ok) return reply;
    const answered = typeof reply.body === 'string' ? reply.body : (reply.body as JsonObject)?.challenge;
    if (answered === challenge) return reply;
    return { ok: false, reason: 'the app did not send the challenge back', retryReason: 'http_error' };
  }

  /** Ends waiting retries. */
  async stop(): Promise<void> {
    this.#stopped.abort();
    await Promise.all(this.#retries);
  }

  #inBackground(work: Promise<void>): void {
    this.#retries.add(work);
    void work.finally(() => this.#retries.delete(work));
  }

  async #retryLater(
    envelope: JsonObject,
    delaysMs: readonly number[],
    from: number,
    why: string,
  ): Promise<void> {
    let retryReason = why;
    for (const [index, delayMs] of delaysMs.entries()) {
      if (index < from) continue;
      try {
        await wait(delayMs, undefined, { signal: this.#stopped.signal, ref: false });
      } catch {
        return; // stopped
      }
      const reply = await this.#sendEvent(envelope, retryHeaders(index + 1, retryReason));
      if (reply.ok || reply.isFinal) return;
      retryReason = reply.retryReason;
    }
  }

  #sendJson(body: JsonObject, headers: Record<string, string>): Promise<Reply> {
    return this.#send(JSON.stringify(body), 'application/json', headers);
  }

  /** Events take any answer of success, all else exactly 200. */
  #sendEvent(envelope: JsonObject, headers: Record<string, string>): Promise<Reply> {
    const isTaken = (status: number) => status >= 200 && status < 300;
    return this.#send(JSON.stringify(envelope), 'application/json', headers, isTaken, EVENT_REDIRECTS);
  }

  async #send(
    body: string,
    contentType: string,
    extra: Record<string, string>,
    isTaken = (status: number): boolean => status === 200,
    redirects = 0,
  ): Promise<Reply> {
    if (!this.#botUrl) return { ok: false, reason: 'no app is connected', retryReason: 'connection_failed' };
    const limitMs = this.#stage.options.ackLimitMs ?? ACK_LIMIT_MS;
    const timestamp = Math.floor(this.#stage.realNowMs() / 1000);
    const headers = {
      'content-type': contentType,
      'x-slack-request-timestamp': String(timestamp),
      'x-slack-signature': requestSignature(this.#stage.options.signingSecret, timestamp, body),
      ...extra,
    };
    try {
      const signal = AbortSignal.timeout(limitMs);
      const response = await post(this.#botUrl, { method: 'POST', headers, body, signal }, redirects);
      const text = await response.text();
      if (!isTaken(response.status)) {
        return {
          ok: false,
          reason: `the app answered with status ${response.status}`,
          retryReason: 'http_error',
          isFinal: response.headers.get('x-slack-no-retry') === '1',
        };
      }
      return { ok: true, body: parsed(text, response.headers.get('content-type')) };
    } catch (error) {
      const late = error instanceof DOMException && error.name === 'TimeoutError';
      return late
        ? { ok: false, reason: 'the app did not answer in time', retryReason: 'http_timeout' }
        : { ok: false, reason: 'the app can not be reached', retryReason: 'connection_failed' };
    }
  }
}

/** @param redirects how many are followed at most */
async function post(url: string, request: RequestInit, redirects: number): Promise<Response> {
  const response = await fetch(url, { ...request, redirect: 'manual' });
  const next = response.headers.get('location');
  if (response.status < 300 || response.status > 399 || next === null || redirects === 0) return response;
  await response.body?.cancel();
  return post(new URL(next, url).href, request, redirects - 1);
}

function retryHeaders(attempt: number, reason: string): Record<string, string> {
  return { 'x-slack-retry-num': String(attempt), 'x-slack-retry-reason': reason };
}

function parsed(text: string, contentType: string | null): unknown {
  if (text.trim() === '') return undefined;
  if (!contentType?.includes('json')) return text;
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return text;
  }
}

/**
 * Signs a request to the app the way the platform does (docs.slack.dev/authentication/verifying-requests-from-slack).
 * @param timestampSeconds whole seconds since 1970
 * @param body the raw body, byte for byte as it is sent
 * @returns the value of `X-Slack-Signature`
 */
export function requestSignature(signingSecret: string, timestampSeconds: number, body: string): string {
  return `v0=${createHmac('sha256', signingSecret).update(`v0:${timestampSeconds}:${body}`).digest('hex')}`;
}
