import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { Store, Transaction } from '../../../src/app/ports/store.ts';
import { writtenOnce } from '../../../src/app/written-once.ts';
import { encodeValue } from '../../../src/slack/button-values.ts';
import { ACTIONS } from '../../../src/slack/ids.ts';
import { type BotUnderTest, botUnderTest, NOW, sentForm } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import { CHANNEL_ID, DIRECT_ID, MIRA_ID, recorded, WORKSPACE_ID } from '../support/samples.ts';
import { callsOf } from '../support/spy-use-cases.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => platform.reset());
afterAll(() => platform.close());

const day = encodeValue({ sprintId: 'sprint-1', day: '2026-11-04' });
const ON_HOME = { channel: undefined, response_url: undefined, view: { id: 'V9', type: 'home' } };

const opened = (tab: string) => ({
  type: 'event_callback',
  team_id: WORKSPACE_ID,
  event_id: `Ev-${tab}`,
  event: { type: 'app_home_opened', user: MIRA_ID, tab },
});

const published = () => platform.callsTo('views.publish');

/** What a use case does that writes something. */
async function write(): Promise<void> {
  const transaction: Store['transaction'] = (work) =>
    work({
      write: { prompts: { insert: async () => [] } },
      events: { remember: async () => true },
    } as unknown as Transaction);
  const store = writtenOnce({ transaction } as Store, { now: () => NOW });
  await store.transaction((tx) => tx.write.prompts.insert([]));
}

/** A bot whose use cases for answers write, as the real ones do. */
function writingBot(): BotUnderTest {
  const bot = botUnderTest(platform);
  const { prompt } = recorded as Extract<typeof recorded, { kind: 'recorded' }>;
  bot.useCases.recordAnswers.mockImplementation(async () => write().then(() => recorded));
  bot.useCases.answerInWords.mockImplementation(async () => write().then(() => recorded));
  bot.useCases.recordUnchanged.mockImplementation(async () => write().then(() => prompt));
  return bot;
}

const answerForm = (replyTo: string | undefined) =>
  sentForm({
    callback_id: 'answer-form',
    private_metadata: JSON.stringify({ sprintId: 'sprint-1', day: '2026-11-04', replyTo }),
    blocks: [],
  });

describe('the home page', () => {
  it('shows all the teams of the person who opens it', async () => {
    const bot = botUnderTest(platform);
    await bot.push(opened('home'));
    expect(callsOf(bot.useCases)).toEqual([['openHomePage']]);
    expect(published()).toMatchObject([{ user_id: MIRA_ID, view: { type: 'home' } }]);
  });

  it('is not made for the messages tab', async () => {
    const bot = botUnderTest(platform);
    await bot.push(opened('messages'));
    expect(published()).toEqual([]);
  });

  it('shows a code when it can not be made', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.openHomePage.mockRejectedValue(new Error('the database is gone'));
    await bot.push(opened('home'));
    const logged = bot.log.entries().find(({ errorId }) => errorId !== undefined);
    expect(JSON.stringify(published()[0]?.view)).toContain(String(logged?.errorId));
  });
});

describe('after something was done, the home page of the person', () => {
  it.each([
    ['an answer by a button', (bot: BotUnderTest) => bot.press(ACTIONS.recordUnchanged, day)],
    ['an answer in words', (bot: BotUnderTest) => bot.say('3')],
    ['an answer by the command', (bot: BotUnderTest) => bot.command('answer 3: 2')],
    ['an answer in a form', (bot: BotUnderTest) => bot.submit(answerForm(DIRECT_ID))],
  ])('is published again: %s', async (_what, act) => {
    const bot = writingBot();
    await act(bot);
    await bot.app.idle();
    expect(published()).toMatchObject([{ user_id: MIRA_ID, view: { type: 'home' } }]);
  });

  it('is left alone when nothing was written', async () => {
    const bot = botUnderTest(platform);
    await bot.command('status');
    await bot.press(ACTIONS.openAnswerForm, day);
    await bot.app.idle();
    expect(bot.useCases.refreshHomePage).not.toHaveBeenCalled();
    expect(published()).toEqual([]);
  });

  it('is not published for somebody who has never opened it', async () => {
    const bot = writingBot();
    bot.useCases.refreshHomePage.mockResolvedValue(undefined);
    await bot.say('3');
    await bot.app.idle();
    expect(published()).toEqual([]);
  });

  it('harms nothing when the platform refuses it', async () => {
    const bot = writingBot();
    platform.refuse('views.publish', 'not_enabled');
    await bot.press(ACTIONS.recordUnchanged, day);
    await bot.app.idle();
    expect(platform.responses).toMatchObject([{ replace_original: true }]);
    expect(platform.callsTo('chat.postMessage')).toEqual([]);
    expect(bot.log.text()).toContain('A home page was not brought up to date.');
  });

  it('comes after the reply, which does not wait for it', async () => {
    const bot = writingBot();
    let publish = (): void => {};
    platform.answer('views.publish', () => new Promise((resolve) => (publish = () => resolve({}))));
    await bot.press(ACTIONS.recordUnchanged, day);
    expect(platform.responses).toHaveLength(1);
    await expect.poll(() => published().length).toBe(1);
    publish();
    expect(await bot.app.idle()).toBe(true);
  });
});

describe('when a sprint begins or ends', () => {
  it('publishes the pages of several people, whatever becomes of one of them', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.refreshHomePage.mockRejectedValueOnce(new Error('the database is gone'));
    const people = ['U0ANA', MIRA_ID].map((userId) => ({ workspaceId: WORKSPACE_ID, userId }));
    await bot.app.refreshHomes([...people, { workspaceId: 'T0OTHER', userId: 'U0BEN' }]);
    expect(published()).toMatchObject([{ user_id: MIRA_ID }]);
  });
});

describe('a button of the home page', () => {
  it('is answered by the page, which is published once', async () => {
    const bot = writingBot();
    await bot.press(ACTIONS.recordUnchanged, day, ON_HOME);
    await bot.app.idle();
    expect(published()).toHaveLength(1);
    expect(platform.callsTo('chat.postMessage')).toEqual([]);
  });

  it('is answered by direct message when the page can not be published', async () => {
    const bot = writingBot();
    platform.refuse('views.publish', 'internal_error');
    await bot.press(ACTIONS.recordUnchanged, day, ON_HOME);
    await bot.app.idle();
    expect(platform.callsTo('chat.postMessage')).toMatchObject([{ channel: MIRA_ID }]);
  });

  it('shows all buttons of a team in place, and the help when the page can not be published', async () => {
    const bot = botUnderTest(platform);
    const place = encodeValue({ channelId: CHANNEL_ID });
    await bot.press(ACTIONS.showMore, place, ON_HOME);
    expect(JSON.stringify(published()[0]?.view)).toContain('Team and times');
    platform.refuse('views.publish', 'internal_error');
    await bot.press(ACTIONS.showMore, place, ON_HOME);
    expect(platform.callsTo('chat.postMessage')).toMatchObject([{ channel: MIRA_ID }]);
  });

  it('sends the burndown by direct message', async () => {
    const bot = botUnderTest(platform);
    await bot.press(ACTIONS.showBurndown, encodeValue({ sprintId: 'sprint-1' }), ON_HOME);
    expect(platform.callsTo('chat.postMessage')).toMatchObject([
      { channel: MIRA_ID, blocks: [{ type: 'image', alt_text: expect.stringContaining('Burndown') }] },
    ]);
  });

  it('opens a form of which the page shows what came', async () => {
    const bot = writingBot();
    await bot.press(ACTIONS.openAnswerForm, day, ON_HOME);
    const [{ view }] = platform.callsTo('views.open') as [{ view: { private_metadata: string } }];
    const { replyTo } = JSON.parse(view.private_metadata);
    await bot.submit(answerForm(replyTo));
    await bot.app.idle();
    expect(published()).toHaveLength(1);
    expect(platform.callsTo('chat.postMessage')).toEqual([]);
  });

  it('opens a form whose answer comes by direct message when the page can not be published', async () => {
    const bot = writingBot();
    platform.refuse('views.publish', 'internal_error');
    await bot.submit(answerForm('home'));
    await bot.app.idle();
    expect(platform.callsTo('chat.postMessage')).toMatchObject([{ channel: MIRA_ID }]);
    expect(platform.callsTo('chat.postEphemeral')).toEqual([]);
  });
});

describe('the welcome', () => {
  it('comes when somebody opens the direct messages, and not when the page is opened', async () => {
    const bot = botUnderTest(platform);
    await bot.push(opened('home'));
    expect(platform.callsTo('chat.postMessage')).toEqual([]);
    await bot.push(opened('messages'));
    const [welcome] = platform.callsTo('chat.postMessage');
    expect(welcome).toMatchObject({ channel: MIRA_ID, text: expect.stringContaining('Pier crew') });
  });

  it('says to somebody without a team how to begin', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.beginWelcome.mockResolvedValue({ teamNames: [], isAsked: false });
    await bot.push(opened('messages'));
    expect(platform.callsTo('chat.postMessage')[0]?.text).toContain('/loadline setup');
  });

  it('does not come again', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.beginWelcome.mockResolvedValue(undefined);
    await bot.push(opened('messages'));
    expect(platform.calls).toEqual([]);
  });

  it('is taken back when it could not be sent', async () => {
    const bot = botUnderTest(platform);
    platform.refuse('chat.postMessage', 'messages_tab_disabled');
    await bot.push(opened('messages'));
    expect(callsOf(bot.useCases)).toEqual([['beginWelcome'], ['takeBackWelcome']]);
  });
});
