/** The platform's Web API as far as unit tests need it: records calls, answers as told. Unknown calls fail. */
import { HttpResponse, http, passthrough } from 'msw';
import { setupServer } from 'msw/node';

interface ApiCall {
  readonly method: string;
  /** Arguments; JSON in them is parsed. */
  readonly args: Record<string, unknown>;
  readonly token: string | null;
}

type Answer = object | ((args: Record<string, unknown>) => object | Response | Promise<object | Response>);

const RESPONSE_URL = 'https://hooks.slack.com/answer';

export class FakePlatform {
  readonly calls: ApiCall[] = [];
  /** What was sent to a response URL. */
  readonly responses: Record<string, unknown>[] = [];
  readonly uploads: Uint8Array[] = [];
  readonly responseUrl = RESPONSE_URL;
  /** Whether the response URL still takes answers. */
  responseUrlServes = true;
  readonly #answers = new Map<string, Answer>();
  readonly #server = setupServer(
    http.post('https://slack.com/api/:method', async ({ request, params }) => {
      const form = new URLSearchParams(await request.text());
      const args = Object.fromEntries([...form].map(([name, value]) => [name, parsed(value)]));
      const method = String(params.method);
      this.calls.push({ method, args, token: request.headers.get('authorization') });
      const answer = this.#answers.get(method) ?? { ok: false, error: 'unknown_method' };
      const given = typeof answer === 'function' ? await answer(args) : answer;
      return given instanceof Response ? given : HttpResponse.json({ ok: true, ...given });
    }),
    http.post(RESPONSE_URL, async ({ request }) => {
      if (!this.responseUrlServes) return new HttpResponse(null, { status: 404 });
      this.responses.push((await request.json()) as Record<string, unknown>);
      return HttpResponse.json({ ok: true });
    }),
    http.post('https://files.slack.example/upload/F1', async ({ request }) => {
      this.uploads.push(new Uint8Array(await request.arrayBuffer()));
      return new HttpResponse('OK');
    }),
    // The bot's own door, to which tests knock.
    http.all('http://127.0.0.1:*', () => passthrough()),
    http.all('http://127.0.0.1:*/*', () => passthrough()),
  );

  constructor() {
    this.reset();
  }

  /** Sets the answer of a method from now on; `{ok: true}` is added. */
  answer(method: string, answer: Answer): void {
    this.#answers.set(method, answer);
  }

  refuse(method: string, error: string): void {
    this.#answers.set(method, { ok: false, error });
  }

  callsTo(method: string): Record<string, unknown>[] {
    return this.calls.filter((call) => call.method === method).map(({ args }) => args);
  }

  listen(): void {
    this.#server.listen({ onUnhandledFrame: 'error' });
  }

  close(): void {
    this.#server.close();
  }

  reset(): void {
    this.calls.length = 0;
    this.responses.length = 0;
    this.uploads.length = 0;
    this.responseUrlServes = true;
    this.#answers.clear();
    this.answer('chat.postMessage', ({ channel }) => ({
      channel: `D-of-${channel}`,
      ts: '1762160400.000100',
    }));
    this.answer('chat.postEphemeral', { message_ts: '1762160400.000200' });
    this.answer('chat.update', {});
    this.answer('views.open', { view: { id: 'V1' } });
    this.answer('views.update', { view: { id: 'V1' } });
    this.answer('views.publish', { view: { id: 'V1' } });
    this.answer('files.getUploadURLExternal', {
      upload_url: 'https://files.slack.example/upload/F1',
      file_id: 'F1',
    });
    this.answer('files.completeUploadExternal', { files: [{ id: 'F1' }] });
    this.answer('conversations.open', ({ users }) => ({ channel: { id: `D-of-${users}` } }));
    this.answer('files.info', { file: { id: 'F1', mimetype: 'image/png' } });
  }
}

function parsed(value: string): unknown {
  return /^[[{]/.test(value) ? JSON.parse(value) : value;
}
