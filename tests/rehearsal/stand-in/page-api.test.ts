/** The page API: what the rehearsal's web page may ask and do, and who is turned away. */
import { request } from 'node:http';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { JsonObject, PageState } from '../../../src/rehearsal/stand-in/page-state.ts';
import { PNG, plain, type Scene, startScene, uploadPicture } from './fixture.ts';

let scene: Scene;
const routed: JsonObject[] = [];
beforeEach(async () => {
  routed.length = 0;
  const routes = {
    'POST /page/forward': (body: JsonObject) => {
      routed.push(body);
      if (body.by === 'never') throw new Error('Time does not do that.');
      return { now: 'later' };
    },
  };
  const fixturePage = new URL('./page-fixture/', import.meta.url);
  scene = await startScene({ routes, pageDir: fixturePage }, (app) => {
    app.command('/loadline', async ({ ack, command, client }) => {
      const element = { type: 'plain_text_input', action_id: 'a' } as const;
      const label = { type: 'plain_text', text: 'Goal' } as const;
      const blocks = [{ type: 'input', block_id: 'b', label, element } as const];
      const view = { type: 'modal', callback_id: 'f', title: label, submit: label, blocks } as const;
      await client.views.open({ trigger_id: command.trigger_id, view: view as never });
      await ack();
    });
    app.view('f', ({ ack, view }) =>
      ack({ response_action: 'errors', errors: { b: `No ${view.state.values.b?.a?.value}.` } }),
    );
    app.action('go', async ({ ack, respond }) => {
      await ack();
      await respond('clicked');
    });
  });
});
afterEach(() => scene.stop());

async function post(path: string, body: JsonObject): Promise<[number, JsonObject]> {
  const headers = { 'content-type': 'application/json' };
  const response = await fetch(`${scene.standIn.url}${path}`, {
    method: 'POST',
    headers,
    body: JSON.stringify(body),
  });
  return [response.status, (await response.json()) as JsonObject];
}
async function state(as = 'U1ANA0000'): Promise<PageState> {
  return (await (await fetch(`${scene.standIn.url}/page/state?as=${as}`)).json()) as PageState;
}

/** A request with headers that `fetch` would not let one set. */
function raw(path: string, headers: Record<string, string>, method = 'GET'): Promise<number> {
  const { hostname, port } = new URL(scene.standIn.url);
  return new Promise((resolve, reject) => {
    request({ hostname, port, path, method, headers }, (response) => {
      response.resume();
      resolve(response.statusCode ?? 0);
    })
      .on('error', reject)
      .end();
  });
}

describe('what one person sees', () => {
  test('themselves, the people, their places and their messages', async () => {
    await scene.standIn.say('U2BEN0000', 'C1TEAM0000', 'hello');
    const seen = await state();
    expect(seen).toMatchObject({
      now: '2026-11-02T09:00:00.000Z',
      me: { id: 'U1ANA0000', realName: 'Ana Duarte', timeZone: 'Europe/Lisbon' },
      view: null,
      home: null,
    });
    expect(seen.users.map((one) => one.id)).toEqual(['U1ANA0000', 'U2BEN0000', 'U3CLEO0000', 'U0LOADLINE']);
    expect(seen.channels.find((one) => one.kind === 'dm')).toMatchObject({
      id: 'D1ANA0000',
      name: 'Loadline',
    });
    expect(seen.messages.C1TEAM0000).toMatchObject([{ user: 'U2BEN0000', text: 'hello', ephemeral: false }]);
    expect(Object.keys((await state('U3CLEO0000')).messages).sort()).toEqual([
      'C4SECRET0000',
      'C5CABIN0000',
      'D3CLEO0000',
    ]);
  });

  test('places have unread messages of others until they are read', async () => {
    const unread = async () => (await state()).channels.find((one) => one.id === 'C1TEAM0000')?.unread;
    await scene.standIn.say('U2BEN0000', 'C1TEAM0000', 'a');
    await scene.standIn.say('U1ANA0000', 'C1TEAM0000', 'b');
    expect(await unread()).toBe(1);
    expect(await post('/page/read', { as: 'U1ANA0000', channel: 'C1TEAM0000' })).toEqual([200, { ok: true }]);
    expect(await unread()).toBe(0);
    await scene.standIn.say('U2BEN0000', 'C1TEAM0000', 'c');
    expect(await unread()).toBe(1);
  });

  test('a page that does not say who it is starts as the first person', async () => {
    const response = await fetch(`${scene.standIn.url}/page/state`);
    expect(((await response.json()) as PageState).me.id).toBe('U1ANA0000');
  });

  test('nobody is nobody', async () => {
    const response = await fetch(`${scene.standIn.url}/page/state?as=U404`);
    expect([response.status, await response.json()]).toEqual([400, { error: 'nobody here has the id U404' }]);
  });
});

describe('what one person does', () => {
  test('a command opens a form, whose errors come back by field and whose input stays', async () => {
    const command = { as: 'U1ANA0000', channel: 'C1TEAM0000', text: '/loadline plan' };
    expect(await post('/page/command', command)).toEqual([200, { ok: true }]);
    const viewId = (await state()).view?.id;
    const [, outcome] = await post('/page/submit', { as: 'U1ANA0000', viewId, state: { b: { a: 'rest' } } });
    expect(outcome).toMatchObject({ ok: false, fieldErrors: { b: 'No rest.' } });
    const after = await state();
    expect(after.view?.id).toBe(viewId);
    expect(after.view?.state.values).toMatchObject({ b: { a: { value: 'rest' } } });
    expect(await post('/page/close', { as: 'U1ANA0000', viewId })).toEqual([200, { ok: true }]);
    expect((await state()).view).toBeNull();
  });

  test('a message is said and a button clicked', async () => {
    expect((await post('/page/say', { as: 'U1ANA0000', channel: 'dm', text: 'hi' }))[1]).toEqual({
      ok: true,
    });
    const blocks = [
      { type: 'actions', block_id: 'b', elements: [{ type: 'button', action_id: 'go', text: plain('Go') }] },
    ];
    const { ts } = await scene.client.chat.postMessage({
      channel: 'C1TEAM0000',
      text: 'a',
      blocks: blocks as never,
    });
    const heard = new Promise<void>(
      (resolve) =>
        void scene.standIn.on(
          'change',
          () => scene.standIn.messagesOf('U1ANA0000', 'C1TEAM0000').length > 1 && resolve(),
        ),
    );
    const click = { as: 'U1ANA0000', channel: 'C1TEAM0000', ts, blockId: 'b', actionId: 'go' };
    expect((await post('/page/click', click))[1]).toEqual({ ok: true });
    await heard;
    expect((await state()).messages.C1TEAM0000?.at(-1)).toMatchObject({ text: 'clicked', ephemeral: true });
  });

  test('a request of the wrong form is refused in words', async () => {
    const [status, answer] = await post('/page/say', { as: 'U1ANA0000' });
    expect([status, String(answer.error)]).toEqual([400, expect.stringContaining('channel')]);
  });

  test("the host's own routes are there, and their errors reach the page", async () => {
    expect(await post('/page/forward', { by: 'day' })).toEqual([200, { now: 'later' }]);
    expect(await post('/page/forward', { by: 'never' })).toEqual([400, { error: 'Time does not do that.' }]);
    expect(routed).toEqual([{ by: 'day' }, { by: 'never' }]);
  });
});

test('everybody who listens for changes is told of one', async () => {
  const response = await fetch(`${scene.standIn.url}/page/changes`);
  expect(response.headers.get('content-type')).toBe('text/event-stream');
  const reader = (response.body as ReadableStream<Uint8Array>).getReader();
  await scene.standIn.say('U1ANA0000', 'C1TEAM0000', 'hello');
  let heard = '';
  while (!heard.includes('event: change')) heard += new TextDecoder().decode((await reader.read()).value);
  expect(heard).toContain('event: change\ndata: {}\n\n');
  await reader.cancel();
});

describe('files', () => {
  test('pictures of messages can be seen, other files not', async () => {
    const id = await uploadPicture(scene.client);
    const response = await fetch(`${scene.standIn.url}/page/file/${id}`);
    expect(response.headers.get('content-type')).toBe('image/png');
    expect(Buffer.from(await response.arrayBuffer()).equals(PNG)).toBe(true);
    expect((await fetch(`${scene.standIn.url}/page/file/F404`)).status).toBe(404);
  });

  test('the page comes with a strict policy, and TypeScript as JavaScript', async () => {
    const page = await fetch(`${scene.standIn.url}/`);
    expect(page.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(page.headers.get('content-security-policy')).toContain("script-src 'self'");
    const script = await fetch(`${scene.standIn.url}/main.ts`);
    expect(script.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
    expect((await script.text()).replaceAll(/\s+/g, ' ')).toContain('export const left = 3;');
  });

  test.each([
    '/../page-api.test.ts',
    '/..%2fpage-api.test.ts',
    '/%2e%2e/page-api.test.ts',
    '//etc/passwd',
    '/tsconfig.json',
    '/.hidden.ts',
    '/missing.ts',
    '/page/missing.ts',
  ])('%s is not served', async (path) => {
    expect(await raw(path, { host: new URL(scene.standIn.url).host })).toBe(404);
  });
});

describe('strangers', () => {
  const own = () => ({ host: new URL(scene.standIn.url).host });
  const json = { 'content-type': 'application/json' };

  test('the page itself is let in', async () => {
    const { url } = scene.standIn;
    expect(
      await raw('/page/state?as=U1ANA0000', { ...own(), origin: url, 'sec-fetch-site': 'same-origin' }),
    ).toBe(200);
    expect(await raw('/', { ...own(), 'sec-fetch-site': 'cross-site', 'sec-fetch-dest': 'document' })).toBe(
      200,
    );
  });

  test.each<[string, Record<string, string>, string]>([
    ['a name that was pointed at this machine', { host: 'evil.example' }, 'GET'],
    ['another site', { origin: 'https://evil.example' }, 'GET'],
    ['another site that hides its name', { 'sec-fetch-site': 'cross-site' }, 'GET'],
    ['a frame that hides its name', { origin: 'null', ...json }, 'POST'],
    ['a form of another site', { 'content-type': 'application/x-www-form-urlencoded' }, 'POST'],
  ])('%s is turned away', async (_who, headers, method) => {
    const path = method === 'GET' ? '/page/state?as=U1ANA0000' : '/page/say';
    expect(await raw(path, { ...own(), ...headers }, method)).toBe(403);
  });
});
