/** One person who asks for more than anybody would: refused in words, without any work, and nothing typed is lost. */

import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { COMMANDS } from '../../../src/slack/commands/commands.ts';
import { askedFor } from '../../../src/slack/door/fair-share.ts';
import { ACTIONS } from '../../../src/slack/ids.ts';
import { DROP_FIELDS } from '../../../src/slack/views/cards/card-forms.ts';
import { type BotUnderTest, botUnderTest } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import { MIRA_ID, OLE_ID, WORKSPACE_ID } from '../support/samples.ts';
import { callsOf } from '../support/spy-use-cases.ts';

const PER_MINUTE = 10;
const WORDS = 'That was too much at once, so it wasn’t done.';

const platform = new FakePlatform();
let bot: BotUnderTest;
beforeAll(() => platform.listen());
beforeEach(async () => {
  vi.useFakeTimers({ toFake: ['performance'] });
  bot = botUnderTest(platform, { requestsPerMinute: PER_MINUTE });
  for (let i = 0; i < PER_MINUTE; i += 1) await bot.command('help');
  await bot.app.idle();
  platform.reset();
  for (const useCase of Object.values(bot.useCases)) vi.mocked(useCase).mockClear();
});
afterEach(() => {
  vi.useRealTimers();
  platform.reset();
});
afterAll(() => platform.close());

const form = { id: 'V1', callback_id: 'drop-form', private_metadata: '{"sprintId":"sprint-1"}' };

describe('beyond their share, a person', () => {
  it('who types the command reads how long to wait, and nothing is done', async () => {
    const acks = await bot.command('cards');
    expect(acks).toMatchObject([{ response_type: 'ephemeral', text: expect.stringContaining(WORDS) }]);
    expect(JSON.stringify(acks)).toContain('Try again in 6 seconds.');
    expect(callsOf(bot.useCases)).toEqual([]);
  });

  it('who sends a form off keeps it, with the reason beside a field', async () => {
    const blocks = [{ type: 'input', block_id: DROP_FIELDS.reason }];
    const acks = await bot.submit({ ...form, blocks });
    expect(acks).toEqual([
      { response_action: 'errors', errors: { [DROP_FIELDS.reason]: `${WORDS} Try again in 6 seconds.` } },
    ]);
    expect(callsOf(bot.useCases)).toEqual([]);
  });

  it('who sends off a form without fields reads it in its place', async () => {
    const acks = await bot.submit({ ...form, blocks: [] });
    expect(acks).toMatchObject([{ response_action: 'update', view: { title: { text: 'Not done' } } }]);
  });

  it('who presses buttons is told once, not once for each press', async () => {
    for (let i = 0; i < 5; i += 1) expect(await bot.press(ACTIONS.showHelp, '{}')).toEqual([undefined]);
    expect(platform.calls.map(({ method, args }) => [method, args.text])).toEqual([
      ['chat.postEphemeral', `${WORDS}\nTry again in 6 seconds.`],
    ]);
    expect(platform.responses).toEqual([]);
  });

  it('who writes messages is told once', async () => {
    for (let i = 0; i < 5; i += 1) await bot.say('3');
    expect(platform.calls).toHaveLength(1);
    expect(callsOf(bot.useCases)).toEqual([]);
  });

  it('is heard again after the time that was named, and others are heard all along', async () => {
    await bot.command('cards', { user_id: OLE_ID });
    await bot.app.idle();
    expect(callsOf(bot.useCases)).toHaveLength(1);
    vi.advanceTimersByTime(6_000);
    await bot.command('cards');
    await bot.app.idle();
    expect(callsOf(bot.useCases)).toHaveLength(2);
  });

  it('is counted as refused, and named nowhere in the log', async () => {
    await bot.command('cards');
    expect(bot.log.text()).toContain('Somebody asks for more than their share.');
    expect(bot.log.text()).not.toContain(MIRA_ID);
  });
});

describe('what a request costs', () => {
  const command = (text: string) => ({
    command: '/loadline',
    text,
    team_id: WORKSPACE_ID,
    user_id: MIRA_ID,
    channel_id: 'C1',
    trigger_id: '1.2',
  });
  const message = (more: object) => ({
    type: 'event_callback',
    team_id: WORKSPACE_ID,
    event_id: 'Ev',
    event: {
      type: 'message',
      channel: 'D1',
      channel_type: 'im',
      user: MIRA_ID,
      ts: '1.2',
      text: '3',
      ...more,
    },
  });

  it('is more for what draws a chart or reads or writes files', () => {
    const heavy = COMMANDS.map(({ word }) => word).filter((word) => askedFor(command(word))?.cost === 5);
    expect(heavy).toEqual(
      expect.arrayContaining(['status', 'range', 'odds', 'forecast', 'history', 'export', 'import']),
    );
    expect(askedFor(command('cards'))?.cost).toBe(1);
    expect(askedFor(message({ text: 'history' }))?.cost).toBe(5);
  });

  it('is nothing for what bots write, and for what is said where nobody is answered', () => {
    expect(askedFor(message({}))).toEqual({ userId: MIRA_ID, cost: 1 });
    expect(askedFor(message({ bot_id: 'B0' }))).toBeUndefined();
    expect(askedFor(message({ user: undefined }))).toBeUndefined();
    expect(askedFor(message({ channel_type: 'channel' }))).toBeUndefined();
  });
});

it('without a limit, a person may ask for as much as they like', async () => {
  const free = botUnderTest(platform, { requestsPerMinute: 0 });
  for (let i = 0; i < 200; i += 1) await free.command('help');
  await free.app.idle();
  expect(platform.responses).toHaveLength(200);
});
