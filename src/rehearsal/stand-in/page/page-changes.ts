/**
 * Server-sent events for the page: one `change` whenever something visible changed. Carries no content; the page
 * asks for the state again.
 */
import type { EventEmitter } from 'node:events';
import type { IncomingMessage, ServerResponse } from 'node:http';

export class PageChanges {
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
