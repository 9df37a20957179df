import { createHmac } from 'node:crypto';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { Transport } from '../../src/config.ts';
import { EVENTS_PATH } from '../../src/slack/door/http-door.ts';
import { interactiveClient } from '../../src/slack/sending/web-clients.ts';
import { createSlackApp, type PlatformStartError } from '../../src/slack/slack-app.ts';
import { say } from '../../src/words/say.ts';
import { eventMemory, fakeStore } from '../support/fake-store.ts';
import { FakePlatform } from './support/fake-platform.ts';
import { fakeSocketServer } from './support/fake-socket-server.ts';
import { logCatcher } from './support/log-catcher.ts';
import { CHANNEL_ID, heading, MIRA_ID, summary, WORKSPACE_ID } from './support/samples.ts';
import { spyUseCases } from './support/spy-use-cases.ts';
import { TEST_BOT_TOKEN, testWorkspace } from './support/test-workspace.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => platform.reset());
afterAll(() => platform.close());

const SECRET = 'a-signing-secret-for-tests-only';
const NOW = new Date('2026-11-04T09:20:00Z');

function appUnderTest(transport: Transport, healthPort?: number) {
  const useCases = spyUseCases();
  const log = logCatcher();
  const app = createSlackApp({
    config: { transport, port: 0, healthPort },
    workspaces: testWorkspace(
      interactiveClient({ botToken: TEST_BOT_TOKEN, logger: log.logger }),
      WORKSPACE_ID,
    ),
    deps: {
      store: fakeStore(eventMemory()),
      clock: { now: () => NOW },
      directory: {
        profile: () => Promise.reject(new Error('not expected here')),
        channelMembers: () => Promise.reject(new Error('not expected here')),
        notInChannel: () => Promise.reject(new Error('not expected here')),
        channel: () => Promise.reject(new Error('not expected here')),
      },
    },
    useCases,
    logger: log.logger,
    nowMs: () => NOW.getTime(),
  });
  return { app, useCases, log };
}

const command = {
  command: '/loadline',
  text: 'cards',
  team_id: WORKSPACE_ID,
  user_id: MIRA_ID,
  channel_id: CHANNEL_ID,
  trigger_id: 'trigger-1',
  response_url: platform.responseUrl,
};

function knock(port: number): Promise<Response> {
  const body = new URLSearchParams(command).toString();
  const timestamp = String(NOW.getTime() / 1000);
  const hash = createHmac('sha256', SECRET).update(`v0:${timestamp}:${body}`).digest('hex');
  return fetch(`http://127.0.0.1:${port}${EVENTS_PATH}`, {
    method: 'POST',
    headers: {
      'content-type': 'application/x-www-form-urlencoded',
      'x-slack-request-timestamp': timestamp,
      'x-slack-signature': `v0=${hash}`,
    },
    body,
  });
}

describe('a stop', () => {
  it('lets the work in hand finish, and takes no new request', async () => {
    const { app, useCases } = appUnderTest({ mode: 'http', signingSecret: SECRET });
    const { port } = await app.start();
    const begun = Promise.withResolvers<void>();
    const mayEnd = Promise.withResolvers<void>();
    useCases.listCards.mockImplementation(async () => {
      begun.resolve();
      await mayEnd.promise;
      return { heading, cards: [], summary, planChanges: [], isOnTeam: true };
    });
    expect((await knock(port)).status).toBe(200);
    await begun.promise;
    const stopped = app.stop();
    await expect(knock(port)).rejects.toThrow('fetch failed');
    expect(platform.responses).toEqual([]);
    mayEnd.resolve();
    expect(await stopped).toBe(true);
    expect(platform.responses).toHaveLength(1);
  });

  it('may come before the start, and twice', async () => {
    const { app } = appUnderTest({ mode: 'http', signingSecret: SECRET });
    expect(await app.stop()).toBe(true);
    expect(await app.stop()).toBe(true);
  });
});

describe('health on a port of its own', () => {
  it('is answered there only, until the stop is over', async () => {
    const { app } = appUnderTest({ mode: 'http', signingSecret: SECRET }, 0);
    const { port, healthPort } = await app.start();
    expect(healthPort).not.toBe(port);
    expect((await fetch(`http://127.0.0.1:${port}/healthz`)).status).toBe(404);
    for (const path of ['/healthz', '/readyz']) {
      expect((await fetch(`http://127.0.0.1:${healthPort}${path}`)).status).toBe(200);
    }
    expect((await fetch(`http://127.0.0.1:${healthPort}${EVENTS_PATH}`)).status).toBe(404);
    await app.stop();
    await expect(fetch(`http://127.0.0.1:${healthPort}/healthz`)).rejects.toThrow('fetch failed');
  });
});

describe('socket mode', () => {
  it('hears requests over the socket, answers health beside it, and no requests by HTTP', async () => {
    const socket = await fakeSocketServer();
    platform.answer('apps.connections.open', { url: socket.url });
    const { app, useCases, log } = appUnderTest({ mode: 'socket', appToken: 'xapp-0000-test-only' });
    const { port } = await app.start();
    expect((await fetch(`http://127.0.0.1:${port}/readyz`)).status).toBe(200);
    expect((await knock(port)).status).toBe(404);

    const envelope = { envelope_id: 'e-1', type: 'slash_commands', accepts_response_payload: true };
    expect(await socket.send({ ...envelope, payload: command })).toEqual({ envelope_id: 'e-1', payload: {} });
    await app.idle();
    expect(platform.responses).toHaveLength(1);
    expect(useCases.listCards).toHaveBeenCalledTimes(1);
    expect(platform.calls.find(({ method }) => method === 'apps.connections.open')?.token).toBe(
      'Bearer xapp-0000-test-only',
    );

    expect(await app.stop()).toBe(true);
    await socket.stop();
    expect(log.text()).not.toMatch(/xapp-|xoxb-/);
  });

  it('takes null for absent, and acknowledges what nobody listens for', async () => {
    const socket = await fakeSocketServer();
    platform.answer('apps.connections.open', { url: socket.url });
    const { app, useCases, log } = appUnderTest({ mode: 'socket', appToken: 'xapp-0000-test-only' });
    await app.start();
    const said = {
      type: 'message',
      channel: 'D0MIRA',
      channel_type: 'im',
      user: MIRA_ID,
      ts: '1.1',
      text: 'cards',
    };
    const event = { ...said, bot_id: null, subtype: null, thread_ts: null };
    const envelope = {
      type: 'event_callback',
      team_id: WORKSPACE_ID,
      event_id: 'Ev-1',
      authorizations: null,
    };
    expect(
      await socket.send({ envelope_id: 'e-1', type: 'events_api', payload: { ...envelope, event } }),
    ).toMatchObject({ envelope_id: 'e-1' });
    await app.idle();
    expect(useCases.listCards).toHaveBeenCalledTimes(1);
    const unknown = { type: 'message_of_tomorrow', user: { id: MIRA_ID }, team: { id: WORKSPACE_ID } };
    expect(await socket.send({ envelope_id: 'e-2', type: 'interactive', payload: unknown })).toMatchObject({
      envelope_id: 'e-2',
    });
    await app.stop();
    await socket.stop();
    expect(log.text()).not.toMatch(/"level":"(warn|error)"/);
  });

  it.each(['warning', 'refresh_requested'])(
    'opens another socket when the platform renews it (%s), and loses nothing that was asked',
    async (reason) => {
      const socket = await fakeSocketServer();
      platform.answer('apps.connections.open', { url: socket.url });
      const { app, useCases } = appUnderTest({ mode: 'socket', appToken: 'xapp-0000-test-only' });
      await app.start();
      const [begun, mayEnd] = [Promise.withResolvers<void>(), Promise.withResolvers<void>()];
      useCases.listCards.mockImplementationOnce(async () => {
        begun.resolve();
        await mayEnd.promise;
        return { heading, cards: [], summary, planChanges: [], isOnTeam: true };
      });
      const envelope = { type: 'slash_commands', accepts_response_payload: true };
      await socket.send({ ...envelope, envelope_id: 'e-1', payload: command });
      await begun.promise;
      const opened = socket.opened();
      void socket.send({ type: 'disconnect', reason, debug_info: { host: 'applink-10' } });
      await opened;
      mayEnd.resolve();
      await app.idle();
      expect(platform.responses).toHaveLength(1);
      const again = { ...command, trigger_id: 'trigger-2' };
      expect(await socket.send({ ...envelope, envelope_id: 'e-2', payload: again })).toEqual({
        envelope_id: 'e-2',
        payload: {},
      });
      await app.idle();
      expect(platform.responses).toHaveLength(2);
      await app.stop();
      await socket.stop();
    },
  );

  const TOO_MANY = { type: 'disconnect', reason: 'too_many_websockets', debug_info: { host: 'applink-10' } };

  it('is refused at the start where ten processes have a socket already, and says so', async () => {
    const socket = await fakeSocketServer(TOO_MANY);
    platform.answer('apps.connections.open', { url: socket.url });
    const { app } = appUnderTest({ mode: 'socket', appToken: 'xapp-0000-test-only' });
    const thrown = await app.start().then(
      () => undefined,
      (error: unknown) => error as PlatformStartError,
    );
    expect(thrown?.problem).toEqual({ code: 'sockets-taken' });
    expect(say('start-sockets-taken')).toMatch(/Ten processes.*Stop one.*LOADLINE_MODE=http/);
    await socket.stop();
  });

  it('says in the log that its socket was closed because there are too many, and not when people type that', async () => {
    const socket = await fakeSocketServer();
    platform.answer('apps.connections.open', { url: socket.url });
    const { app, log } = appUnderTest({ mode: 'socket', appToken: 'xapp-0000-test-only' });
    await app.start();
    const envelope = { envelope_id: 'e-1', type: 'slash_commands', accepts_response_payload: true };
    await socket.send({ ...envelope, payload: { ...command, text: 'too_many_websockets' } });
    expect(log.text()).not.toContain('ten processes');
    const closed = socket.closed();
    socket.send(TOO_MANY);
    await closed;
    expect(log.text()).toMatch(/"level":"error".*ten processes of the app/);
    await app.stop();
    await socket.stop();
  });
});
