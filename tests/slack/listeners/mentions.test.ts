/** Words to the bot in channels and threads, where it is mentioned. */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { askedFor } from '../../../src/slack/door/fair-share.ts';
import { ACTIONS, openFormAction } from '../../../src/slack/ids.ts';
import { type BotUnderTest, botUnderTest } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import { CHANNEL_ID, DIRECT_ID, MIRA_ID, OLE_ID, WORKSPACE_ID } from '../support/samples.ts';
import { callsOf } from '../support/spy-use-cases.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => platform.reset());
afterAll(() => platform.close());

const BOT = '<@U0BOT>';
const THREAD = '1762160400.000100';
const here = { channelId: CHANNEL_ID, isDirect: false };

const event = (text: string, more: object = {}, eventId = 'Ev-1') => ({
  type: 'event_callback',
  team_id: WORKSPACE_ID,
  event_id: eventId,
  event: {
    type: 'app_mention',
    channel: CHANNEL_ID,
    user: MIRA_ID,
    ts: '1762248000.000100',
    event_ts: '1762248000.000100',
    text,
    ...more,
  },
});

async function mention(text: string, more: object = {}): Promise<BotUnderTest> {
  const bot = botUnderTest(platform);
  await bot.push(event(text, more));
  await bot.app.idle();
  return bot;
}

const told = () => platform.callsTo('chat.postEphemeral');

describe('a mention', () => {
  it.each([
    [`${BOT} cards`, 'listCards'],
    [`  ${BOT}: Cards`, 'listCards'],
    [`<@U0BOT|loadline>, take 3`, 'takeCards'],
    [`${BOT} ${BOT} status`, 'sprintStatus'],
    [`${BOT} /loadline cards`, 'listCards'],
    [`cards ${BOT}`, 'listCards'],
    [`${BOT}`, 'overview'],
    [`${BOT} 41: 3`, 'answerInWords'],
  ])('asks as the command does: %s', async (text, useCase) => {
    const bot = await mention(text);
    expect(callsOf(bot.useCases)[0]?.[0]).toBe(useCase);
    expect(bot.useCases[useCase as 'listCards'].mock.calls[0]?.[0]).toEqual({
      workspaceId: WORKSPACE_ID,
      userId: MIRA_ID,
    });
    expect(bot.useCases[useCase as 'listCards'].mock.calls[0]?.[1]).toMatchObject(
      { takeCards: { place: here, words: '3' }, answerInWords: { place: here, text: '41: 3' } }[useCase] ??
        here,
    );
  });

  it('that says thanks is answered, and asks for nothing', async () => {
    const bot = await mention(`${BOT} thanks!`);
    expect(callsOf(bot.useCases)).toEqual([]);
    expect(told()).toMatchObject([{ text: 'You’re welcome.' }]);
  });

  it('in a channel is answered there, to the person who asked alone', async () => {
    await mention(`${BOT} cards`);
    expect(told()).toMatchObject([{ channel: CHANNEL_ID, user: MIRA_ID }]);
    expect(told()[0]).not.toHaveProperty('thread_ts');
    expect(platform.callsTo('chat.postMessage')).toEqual([]);
  });

  it('in a thread is answered in the thread', async () => {
    await mention(`${BOT} cards`, { thread_ts: THREAD });
    expect(told()).toMatchObject([{ channel: CHANNEL_ID, user: MIRA_ID, thread_ts: THREAD }]);
  });

  it('is answered directly when the place can’t be reached', async () => {
    platform.refuse('chat.postEphemeral', 'user_not_in_channel');
    await mention(`${BOT} cards`);
    expect(platform.callsTo('chat.postMessage')).toMatchObject([{ channel: MIRA_ID }]);
  });

  it('with an unknown word is told the nearest one', async () => {
    await mention(`${BOT} statsu`);
    expect(told()[0]?.text).toContain('status');
  });

  it.each([
    ['pull', openFormAction('pull'), { channelId: CHANNEL_ID }],
    ['plan', openFormAction('plan'), { channelId: CHANNEL_ID }],
    ['setup', openFormAction('setup'), { channelId: CHANNEL_ID }],
    ['answer', ACTIONS.openAnswerForm, { sprintId: 'sprint-1', day: '2026-11-04' }],
  ])('with a word that has a form gets a button that opens it: %s', async (word, actionId, value) => {
    await mention(`${BOT} ${word}`);
    const blocks = told()[0]?.blocks as { type: string; elements?: { action_id: string; value: string }[] }[];
    const button = blocks.find(({ type }) => type === 'actions')?.elements?.[0];
    expect(button?.action_id).toBe(actionId);
    expect(JSON.parse(button?.value ?? '')).toEqual(value);
    expect(platform.callsTo('views.open')).toEqual([]);
  });

  it('in a shared channel acts in the bot’s own workspace, as a command does', async () => {
    const bot = await mention(`${BOT} cards`, { user: OLE_ID, user_team: 'T0OTHERS', team: 'T0OTHERS' });
    expect(bot.useCases.listCards.mock.calls[0]?.[0]).toEqual({ workspaceId: WORKSPACE_ID, userId: OLE_ID });
  });

  it('delivered again is answered once', async () => {
    const bot = botUnderTest(platform);
    await bot.push(event(`${BOT} take 3`, {}, 'Ev-same'));
    await bot.push(event(`${BOT} take 3`, {}, 'Ev-same'));
    await bot.app.idle();
    expect(bot.useCases.takeCards).toHaveBeenCalledTimes(1);
    expect(told()).toHaveLength(1);
  });

  it.each([
    ['that only speaks of it', `I like what ${BOT} says`, {}],
    ['of the bot itself', `${BOT} cards`, { user: 'U0BOT', bot_id: 'B0BOT' }],
    ['by another bot', `${BOT} cards`, { bot_id: 'B0OTHER' }],
    ['by nobody', `${BOT} cards`, { user: undefined, subtype: 'bot_message' }],
    ['in a changed message', `${BOT} cards`, { edited: { user: MIRA_ID, ts: '1762248060.000000' } }],
    ['in a notice', `${BOT} cards`, { subtype: 'channel_topic' }],
    ['without words', undefined, {}],
  ])('%s is passed over', async (_what, text, more) => {
    const bot = await mention(text as string, more);
    expect(callsOf(bot.useCases)).toEqual([]);
    expect(platform.calls).toEqual([]);
  });

  it('counts for a person’s share as its command does', () => {
    expect(askedFor(event(`${BOT} status`))).toEqual(askedFor({ ...slash, text: 'status' }));
    expect(askedFor(event(`${BOT} cards`))).toEqual(askedFor({ ...slash, text: 'cards' }));
    expect(askedFor(event(`${BOT} status`, { bot_id: 'B0OTHER' }))).toBeUndefined();
  });

  it('beyond a person’s share is told so in its thread', async () => {
    const bot = botUnderTest(platform, { requestsPerMinute: 1 });
    await bot.push(event(`${BOT} cards`, {}, 'Ev-1'));
    await bot.push(event(`${BOT} cards`, { thread_ts: THREAD }, 'Ev-2'));
    await bot.app.idle();
    expect(told().at(-1)).toMatchObject({
      thread_ts: THREAD,
      text: expect.stringContaining('too much at once'),
    });
  });

  it('may come first in a direct message too', async () => {
    const bot = botUnderTest(platform);
    await bot.say(`${BOT} cards`);
    await bot.say(BOT);
    expect(callsOf(bot.useCases).map(([name]) => name)).toEqual(['listCards', 'overview']);
    expect(platform.callsTo('chat.postMessage')).toMatchObject([
      { channel: DIRECT_ID },
      { channel: DIRECT_ID },
    ]);
  });
});

const slash = {
  command: '/loadline',
  team_id: WORKSPACE_ID,
  user_id: MIRA_ID,
  channel_id: CHANNEL_ID,
  trigger_id: 'trigger-1',
};

describe('a button of an answer in a thread', () => {
  it('answers in the thread too, which a response address can’t', async () => {
    const bot = botUnderTest(platform);
    await bot.press(ACTIONS.showCards, JSON.stringify({ channelId: CHANNEL_ID }), {
      channel: { id: CHANNEL_ID },
      container: { type: 'message', message_ts: '1762248000.000200', thread_ts: THREAD, is_ephemeral: true },
    });
    await bot.app.idle();
    expect(told()).toMatchObject([{ channel: CHANNEL_ID, thread_ts: THREAD }]);
    expect(platform.responses).toEqual([]);
  });
});
