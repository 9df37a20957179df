/** The chat side with a real Bolt app: a fake receiver pushes requests in, spies are the use cases. */
import type { App, Receiver, ReceiverEvent } from '@slack/bolt';
import type { Store } from '../../../src/app/ports/store.ts';
import { interactiveClient } from '../../../src/slack/sending/web-clients.ts';
import { createSlackApp, type SlackApp, type SlackAppOptions } from '../../../src/slack/slack-app.ts';
import { createDirectory } from '../../../src/slack/workspaces/directory.ts';
import { eventMemory, fakeStore } from '../../support/fake-store.ts';
import type { FakePlatform } from './fake-platform.ts';
import { logCatcher } from './log-catcher.ts';
import { CHANNEL_ID, DIRECT_ID, MIRA_ID, WORKSPACE_ID } from './samples.ts';
import { type SpyUseCases, spyUseCases } from './spy-use-cases.ts';
import { TEST_BOT_TOKEN, testWorkspace } from './test-workspace.ts';

const BOT_TOKEN = TEST_BOT_TOKEN;
export const NOW = new Date('2026-11-04T09:20:00Z');

class FakeReceiver implements Receiver {
  #app: App | undefined;

  init(app: App): void {
    this.#app = app;
  }

  async start(): Promise<void> {}
  async stop(): Promise<void> {}

  /** @returns what the request was acknowledged with, in order; a request that nobody acknowledged gives `[]` */
  async push(body: object, onAck = (): void => {}): Promise<unknown[]> {
    const acks: unknown[] = [];
    const event: ReceiverEvent = {
      body: body as ReceiverEvent['body'],
      ack: async (answer?: unknown) => {
        acks.push(answer);
        onAck();
      },
    };
    await this.#app?.processEvent(event);
    return acks;
  }
}

export interface BotUnderTest {
  readonly useCases: SpyUseCases;
  readonly log: ReturnType<typeof logCatcher>;
  readonly app: SlackApp;
  push(body: object): Promise<unknown[]>;
  command(text: string, more?: object): Promise<unknown[]>;
  press(actionId: string, value: string | undefined, more?: object): Promise<unknown[]>;
  submit(view: object, more?: object, onAck?: () => void): Promise<unknown[]>;
  say(text: string, more?: object): Promise<unknown[]>;
}

let counter = 0;
function unique(prefix: string): string {
  counter += 1;
  return `${prefix}${counter}`;
}

export function botUnderTest(
  platform: FakePlatform,
  options: Partial<Pick<SlackAppOptions, 'answerDue' | 'meter'>> & {
    logLevel?: 'info' | 'trace';
    requestsPerMinute?: number;
    store?: Store;
  } = {},
): BotUnderTest {
  const receiver = new FakeReceiver();
  const useCases = spyUseCases();
  const log = logCatcher(options.logLevel);
  const client = interactiveClient({ botToken: BOT_TOKEN, logger: log.logger });
  const workspaces = testWorkspace(client, WORKSPACE_ID);
  const app = createSlackApp({
    config: {
      transport: { mode: 'http', signingSecret: 'unused-in-this-test' },
      port: 0,
      requestsPerMinute: options.requestsPerMinute ?? 0,
    },
    workspaces,
    deps: {
      store: options.store ?? fakeStore(eventMemory()),
      clock: { now: () => NOW },
      directory: createDirectory({ workspaces, nowMs: () => NOW.getTime() }),
    },
    useCases,
    logger: log.logger,
    receiver,
    meter: options.meter,
    // Never due unless a test says so.
    answerDue: options.answerDue ?? (() => new Promise<void>(() => {})),
  });
  const person = { user: { id: MIRA_ID }, team: { id: WORKSPACE_ID } };
  const push = (body: object, onAck?: () => void) => receiver.push(body, onAck);
  return {
    useCases,
    log,
    app,
    push,
    command: (text, more) =>
      push({
        command: '/loadline',
        text,
        team_id: WORKSPACE_ID,
        user_id: MIRA_ID,
        channel_id: CHANNEL_ID,
        trigger_id: unique('trigger-'),
        response_url: platform.responseUrl,
        ...more,
      }),
    press: (actionId, value, more) =>
      push({
        type: 'block_actions',
        ...person,
        trigger_id: unique('trigger-'),
        channel: { id: DIRECT_ID },
        response_url: platform.responseUrl,
        actions: [
          { type: 'button', action_id: actionId, block_id: 'b', ...(value === undefined ? {} : { value }) },
        ],
        ...more,
      }),
    submit: (view, more, onAck) =>
      push({ type: 'view_submission', ...person, trigger_id: unique('trigger-'), view, ...more }, onAck),
    say: (text, more) =>
      push({
        type: 'event_callback',
        team_id: WORKSPACE_ID,
        event_id: unique('Ev'),
        event: {
          type: 'message',
          channel: DIRECT_ID,
          channel_type: 'im',
          user: MIRA_ID,
          ts: '1762248000.000100',
          text,
          ...more,
        },
      }),
  };
}

/** A form as the platform sends it back: the view as it was shown, with what is in its fields now. */
export function sentForm(view: object, entered: Record<string, object> = {}): object {
  const shown = view as { blocks: { type: string; block_id?: string; element?: Record<string, unknown> }[] };
  const values = shown.blocks
    .filter((block) => block.type === 'input' && block.block_id !== undefined)
    .map((block) => [
      block.block_id,
      { value: entered[block.block_id as string] ?? initialOf(block.element) },
    ]);
  return { id: 'V1', hash: 'h', ...view, state: { values: Object.fromEntries(values) } };
}

const INITIAL_NAMES = {
  initial_value: 'value',
  initial_time: 'selected_time',
  initial_date: 'selected_date',
  initial_option: 'selected_option',
  initial_options: 'selected_options',
  initial_users: 'selected_users',
};

/** An input that nobody touched holds what it began with. */
function initialOf(element: Record<string, unknown> = {}): object {
  const pairs = Object.entries(INITIAL_NAMES).flatMap(([initial, name]) =>
    element[initial] === undefined ? [] : [[name, element[initial]]],
  );
  return { type: element.type, ...Object.fromEntries(pairs) };
}
