/** Requests from workspaces without the bot, and requests while nobody knows whether the bot is there. */
import type { Receiver, ReceiverEvent } from '@slack/bolt';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { interactiveClient } from '../../../src/slack/sending/web-clients.ts';
import { createSlackApp } from '../../../src/slack/slack-app.ts';
import { notInstalledMessage } from '../../../src/slack/views/trouble-views.ts';
import type { ConnectedWorkspace, Workspaces } from '../../../src/slack/workspaces/workspaces.ts';
import { fakeStore } from '../../support/fake-store.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import { logCatcher } from '../support/log-catcher.ts';
import { CHANNEL_ID, MIRA_ID, WORKSPACE_ID } from '../support/samples.ts';
import { callsOf, spyUseCases } from '../support/spy-use-cases.ts';
import { TEST_BOT_TOKEN } from '../support/test-workspace.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => {
  platform.reset();
  vi.useRealTimers();
});
afterAll(() => platform.close());

const INSTALL_URL = 'https://loadline.example.org/slack/install';

function botWith(find: Workspaces['find']) {
  const log = logCatcher();
  const useCases = spyUseCases();
  const events: string[] = [];
  const handed: { app?: Parameters<Receiver['init']>[0] } = {};
  const receiver: Receiver = {
    init: (app) => {
      handed.app = app;
    },
    start: async () => undefined,
    stop: async () => undefined,
  };
  createSlackApp({
    config: { transport: { mode: 'http', signingSecret: 'unused-in-this-test' }, port: 0 },
    workspaces: { find, tokenIsVoid: async () => 'kept' },
    distribution: {
      notInstalled: notInstalledMessage(INSTALL_URL),
      pages: async () => false,
      removals: { wasRemoved: async () => undefined, tokenIsVoid: async () => 'kept' },
    },
    deps: {
      store: fakeStore({ rememberEvent: async (key) => events.push(key) > 0 }),
      clock: { now: () => new Date('2026-11-04T09:20:00Z') },
      directory: {
        profile: () => Promise.reject(new Error('not expected here')),
        channelMembers: () => Promise.reject(new Error('not expected here')),
        notInChannel: () => Promise.reject(new Error('not expected here')),
        channel: () => Promise.reject(new Error('not expected here')),
      },
    },
    useCases,
    logger: log.logger,
    receiver,
  });
  return {
    useCases,
    log,
    events,
    push: async (body: object): Promise<unknown[]> => {
      const acks: unknown[] = [];
      const event: ReceiverEvent = {
        body: body as ReceiverEvent['body'],
        ack: async (answer?: unknown) => void acks.push(answer),
      };
      await handed.app?.processEvent(event);
      return acks;
    },
  };
}

const command = {
  command: '/loadline',
  text: 'cards',
  team_id: WORKSPACE_ID,
  user_id: MIRA_ID,
  channel_id: CHANNEL_ID,
  trigger_id: 'trigger-1',
};
const button = {
  type: 'block_actions',
  user: { id: MIRA_ID },
  team: { id: WORKSPACE_ID },
  trigger_id: 'trigger-2',
  response_url: platform.responseUrl,
  actions: [{ type: 'button', action_id: 'show-help', block_id: 'b' }],
};
const form = {
  type: 'view_submission',
  user: { id: MIRA_ID },
  team: { id: WORKSPACE_ID },
  trigger_id: 'trigger-3',
  view: { id: 'V1', callback_id: 'close-form', private_metadata: '{}' },
};
const event = {
  type: 'event_callback',
  team_id: WORKSPACE_ID,
  event_id: 'Ev1',
  event: { type: 'message', channel: 'D1', channel_type: 'im', user: MIRA_ID, ts: '1.1', text: 'cards' },
};

const NOT_INSTALLED = expect.stringContaining('Loadline isn’t installed in this workspace');

describe('in a workspace without the bot', () => {
  const bot = () => botWith(async () => undefined);

  it('a command is answered to its caller only, with the address of the installation', async () => {
    const { push, useCases, events } = bot();
    const [answer, ...others] = await push(command);
    expect(answer).toMatchObject({ response_type: 'ephemeral', text: NOT_INSTALLED });
    expect(JSON.stringify(answer)).toContain(INSTALL_URL);
    expect(others).toEqual([]);
    expect([callsOf(useCases), events, platform.calls]).toEqual([[], [], []]);
  });

  it('a button is answered through its own address', async () => {
    const { push, useCases } = bot();
    expect(await push(button)).toEqual([undefined]);
    expect(platform.responses).toMatchObject([{ response_type: 'ephemeral', text: NOT_INSTALLED }]);
    expect([callsOf(useCases), platform.calls]).toEqual([[], []]);
  });

  it('a button whose address takes no answer ends quietly', async () => {
    platform.responseUrlServes = false;
    const { push, log } = bot();
    expect(await push(button)).toEqual([undefined]);
    expect(log.text()).toContain('Nobody could be told.');
  });

  it('a form says so in its place', async () => {
    const [answer] = await bot().push(form);
    expect(answer).toMatchObject({ response_action: 'update', view: { type: 'modal' } });
    expect(JSON.stringify(answer)).toContain('Loadline isn’t installed in this workspace');
  });

  it('words are passed over', async () => {
    const { push, useCases, events } = bot();
    expect(await push(event)).toEqual([undefined]);
    expect([callsOf(useCases), events, platform.calls]).toEqual([[], [], []]);
  });
});

describe('while the database does not say whether the bot is there', () => {
  it('people are told that nothing was recorded, with a code for the operator', async () => {
    const { push, log } = botWith(() => Promise.reject(new Error('no connection')));
    const [toCommand] = await push(command);
    const [toForm] = await push(form);
    expect(toCommand).toMatchObject({
      response_type: 'ephemeral',
      text: expect.stringMatching(/went wrong/),
    });
    expect(JSON.stringify(toForm)).toMatch(/went wrong/);
    expect(log.text()).toContain('no connection');
  });

  it('the answer goes out in time anyway', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const { push } = botWith(() => new Promise(() => {}));
    const answered = push(command);
    await vi.advanceTimersByTimeAsync(2_000);
    expect(await answered).toMatchObject([{ text: expect.stringMatching(/went wrong/) }]);
  });
});

describe('in a workspace with the bot', () => {
  const log = logCatcher();
  const client = interactiveClient({ botToken: TEST_BOT_TOKEN, logger: log.logger });
  const workspace: ConnectedWorkspace = {
    workspaceId: WORKSPACE_ID,
    botUserId: 'U0BOT',
    botToken: TEST_BOT_TOKEN,
    interactive: client,
    bulk: client,
  };
  const find: Workspaces['find'] = async (id) => (id === WORKSPACE_ID ? workspace : undefined);

  it('a request is marked as its workspace’s own, so that none of another counts as its repetition', async () => {
    const { push, events } = botWith(find);
    await push(command);
    expect(events).toEqual([`${WORKSPACE_ID} trigger:trigger-1`]);
  });

  // Source of the shape: github.com/slackapi/bolt-js/issues/1614 and 1615, answered by maintainers.
  it('a form from a person of another workspace, in a shared channel, is of the workspace that has the bot', async () => {
    const { push, useCases } = botWith(find);
    const view = {
      ...form.view,
      app_installed_team_id: WORKSPACE_ID,
      private_metadata: JSON.stringify({ sprintId: 'sprint-1' }),
    };
    await push({ ...form, team: { id: 'T0OTHER' }, user: { id: 'U0EXTERN', team_id: 'T0OTHER' }, view });
    expect(useCases.closeSprint.mock.calls).toEqual([
      [{ workspaceId: WORKSPACE_ID, userId: 'U0EXTERN' }, { sprintId: 'sprint-1' }],
    ]);
  });

  it('what the bot says itself is passed over', async () => {
    const { push, useCases, events } = botWith(find);
    await push({ ...event, event: { ...event.event, user: 'U0BOT' } });
    expect([callsOf(useCases), events]).toEqual([[], []]);
  });

  it.each([
    ['that names two workspaces', { ...button, team_id: 'T0OTHER' }],
    ['that names none', { ...button, team: null }],
    ['that names one as something else than a text', { ...button, team: { id: { $ne: '' } } }],
  ])('a request %s is nobody’s', async (_what, body) => {
    const { push, useCases } = botWith(find);
    await push(body);
    expect([callsOf(useCases), platform.calls]).toEqual([[], []]);
    expect(platform.responses).toMatchObject([{ text: NOT_INSTALLED }]);
  });
});
