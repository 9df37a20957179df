import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/app/refusal.ts';
import type { TeamOverview } from '../../../src/app/watching/overview.ts';
import { ACTIONS } from '../../../src/slack/ids.ts';
import { botUnderTest } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import { DIRECT_ID, grown, MIRA_ID, recordedInPrompt, team, WORKSPACE_ID } from '../support/samples.ts';
import { callsOf } from '../support/spy-use-cases.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => platform.reset());
afterAll(() => platform.close());

const direct = { channelId: DIRECT_ID, isDirect: true };
const TUGBOATS = { channelId: 'C0TUG', isDirect: false };
const NORTH = { channelId: 'C0NORTH', isDirect: false };

describe('direct messages', () => {
  it('are answers in words, by whom the platform says', async () => {
    const bot = botUnderTest(platform);
    await bot.say('2: 3 worked 1');
    expect(bot.useCases.answerInWords.mock.calls).toEqual([
      [
        { workspaceId: WORKSPACE_ID, userId: MIRA_ID },
        { text: '2: 3 worked 1', place: direct },
      ],
    ]);
    expect(platform.callsTo('chat.postMessage')[0]).toMatchObject({ channel: DIRECT_ID });
  });

  it('are confirmed by the day’s prompt alone, when there is one', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.answerInWords.mockResolvedValue(recordedInPrompt);
    await bot.say('3');
    expect(platform.callsTo('chat.postMessage')).toEqual([]);
  });

  it.each([
    ['with empty fields about bots, threads and kinds', { bot_id: '', subtype: '', thread_ts: '' }],
    ['with a file', { subtype: 'file_share' }],
    ['in a thread, shown to the whole conversation too', { subtype: 'thread_broadcast' }],
  ])('%s are answered as well', async (_what, more) => {
    const bot = botUnderTest(platform);
    await bot.say('3', more);
    expect(callsOf(bot.useCases)).toEqual([['answerInWords', { text: '3', place: direct }]]);
  });

  it('in the thread of a prompt say which prompt, and are answered in the thread', async () => {
    const bot = botUnderTest(platform);
    await bot.say('3', { thread_ts: '1762160400.000100' });
    expect(callsOf(bot.useCases)).toEqual([
      ['answerInWords', { text: '3', place: direct, threadTs: '1762160400.000100' }],
    ]);
    expect(platform.callsTo('chat.postMessage')[0]).toMatchObject({ thread_ts: '1762160400.000100' });
  });

  it('hold the name of whom they mention', async () => {
    const bot = botUnderTest(platform);
    platform.answer('users.info', { user: { id: 'U0ANA', name: 'ana', real_name: 'Ana Sol' } });
    await bot.say('2: 3 blocked: waiting for <@U0ANA>');
    expect(callsOf(bot.useCases)).toEqual([
      ['answerInWords', { text: '2: 3 blocked: waiting for @Ana Sol', place: direct }],
    ]);
  });

  it('ask why a card grew, with buttons', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.answerInWords.mockResolvedValue(grown);
    await bot.say('6');
    const sent = JSON.stringify(platform.callsTo('chat.postMessage')[0]?.blocks);
    expect(sent).toContain(ACTIONS.growthAllSurprise);
    expect(sent).toContain(ACTIONS.growthAllDrift);
    expect(sent).toContain(ACTIONS.growthSomeOfEach);
  });

  it.each([
    ['status', 'sprintStatus'],
    ['Cards', 'listCards'],
    ['/loadline cards', 'listCards'],
    ['take 3', 'takeCards'],
  ])('may be a word of the command: %s', async (text, useCase) => {
    const bot = botUnderTest(platform);
    await bot.say(text);
    expect(callsOf(bot.useCases).map(([name]) => name)).toContain(useCase);
    expect(bot.useCases.answerInWords).not.toHaveBeenCalled();
  });

  it('are an answer where the word of a command calls a card of theirs, and the rest is said of it', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.answersForCard.mockResolvedValue(true);
    await bot.say('cancel 2');
    expect(bot.useCases.answerInWords.mock.lastCall?.slice(1)).toEqual([{ text: 'cancel 2', place: direct }]);
    expect(bot.useCases.cancelSprint).not.toHaveBeenCalled();
    await bot.say('/loadline take 2');
    expect(bot.useCases.takeCards).toHaveBeenCalledOnce();
  });

  it('are a command where it can’t be found out what they are called', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.answersForCard.mockRejectedValue(new Refusal('no-sprint-running', {}));
    await bot.say('take 3');
    expect(bot.useCases.takeCards).toHaveBeenCalledOnce();
  });

  it('show the buttons where the command would open a form, which words can not', async () => {
    const bot = botUnderTest(platform);
    await bot.say('plan');
    expect(callsOf(bot.useCases)).toEqual([['overview', direct]]);
    expect(platform.callsTo('chat.postMessage')).toHaveLength(1);
  });

  it('that are refused are told why', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.answerInWords.mockRejectedValue(
      new Refusal('unclear-words', {
        problems: [{ code: 'not-points', typed: 'lots' }],
        example: { cardCount: 2, reference: '1', title: 'Tide table', leftPoints: 5 },
      }),
    );
    await bot.say('lots');
    const { text } = platform.callsTo('chat.postMessage')[0] ?? {};
    expect(text).toContain('“lots” isn’t an amount of points.');
    expect(text).toContain('For “Tide table” with 4 points left, write “1: 4”; if it’s finished, “1 done”.');
  });

  it.each([
    ['stauts', '/loadline status'],
    ['rnage', '/loadline range'],
    ['cardz 40', '/loadline cards'],
  ])('name the nearest command when they are nearly one: %s', async (text, near) => {
    const bot = botUnderTest(platform);
    bot.useCases.answerInWords.mockRejectedValue(
      new Refusal('no-cards-of-yours', { sprintName: 'Harbour 12' }),
    );
    await bot.say(text);
    expect(platform.callsTo('chat.postMessage')[0]?.text).toContain(near);
  });

  it('that ask for something lead to its command, also where a card is named', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.answerInWords.mockRejectedValue(
      new Refusal('unclear-words', {
        problems: [{ code: 'not-an-answer', typed: 'can I take the tide card?' }],
        example: { cardCount: 2, reference: '1', title: 'Tide table', leftPoints: 5 },
      }),
    );
    await bot.say('can I take the tide card?');
    expect(platform.callsTo('chat.postMessage')[0]?.text).toContain('Did you mean /loadline take?');
  });

  it.each([
    ['I’m on holiday from 9 to 12 Nov', undefined, 'Did you mean /loadline off?'],
    ['on holiday from 9 to 12 Nov, tide is done by then', 1, 'Not recorded.'],
  ])('of days off, with the numbers of days, lead to them: %s', async (text, position, told) => {
    const bot = botUnderTest(platform);
    const problem = { code: 'not-an-answer', typed: text } as const;
    bot.useCases.answerInWords.mockRejectedValue(
      new Refusal('unclear-words', {
        problems: [position === undefined ? problem : { ...problem, position }],
        example: { cardCount: 2, reference: '1', title: 'Tide table', leftPoints: 5 },
      }),
    );
    await bot.say(text);
    const words = String(platform.callsTo('chat.postMessage')[0]?.text);
    expect(words).toContain(told);
    expect(words.includes('Did you mean')).toBe(position === undefined);
  });

  it.each(['hello there', 'what is it', '3 worked lots', 'why'])(
    'name none when they are near none: %s',
    async (text) => {
      const bot = botUnderTest(platform);
      bot.useCases.answerInWords.mockRejectedValue(
        new Refusal('no-cards-of-yours', { sprintName: 'Harbour 12' }),
      );
      await bot.say(text);
      expect(platform.callsTo('chat.postMessage')[0]?.text).not.toContain('Did you mean');
    },
  );

  it.each([
    ['hand over my cards to ines', 'Did you mean /loadline give?'],
    ['how much should we commit to next time?', 'Did you mean /loadline range?'],
    ['can I still change my answer?', 'Did you mean /loadline answer?'],
    ['when is the whole thing over?', '/loadline help lists them.'],
  ])(
    'that are about no card are told so, with the command that was perhaps meant: %s',
    async (text, hint) => {
      const bot = botUnderTest(platform);
      bot.useCases.answerInWords.mockRejectedValue(new Refusal('not-about-cards', { example: undefined }));
      await bot.say(text);
      expect(platform.callsTo('chat.postMessage')[0]?.text).toContain(hint);
    },
  );

  it('that ask something lead to a command also where nobody could answer for a card', async () => {
    const bot = botUnderTest(platform);
    const refusals = [
      new Refusal('not-a-member', { teamName: 'Tugboats', isProductOwner: true }),
      new Refusal('no-sprint-running', {}),
    ];
    for (const refusal of refusals) {
      bot.useCases.answerInWords.mockRejectedValue(refusal);
      await bot.say('when do we finish the harbour lights?');
    }
    for (const { text } of platform.callsTo('chat.postMessage'))
      expect(text).toContain('Did you mean /loadline forecast?');
    bot.useCases.answerInWords.mockRejectedValue(refusals[1]);
    await bot.say('finish 41 with 3 left');
    expect(platform.callsTo('chat.postMessage').at(-1)?.text).toContain('No sprint is running.');
  });

  it.each([
    ['price done', 'sprint-over'],
    ['all cards are done, out of my hands', 'sprint-over'],
    ['away today', 'sprint-over'],
    ['41 stuck', 'sprint-over'],
    ['tide is blocked', 'unclear-words'],
  ] as const)('that are an answer are told why they can’t be taken: %s', async (text, code) => {
    const bot = botUnderTest(platform);
    bot.useCases.answerInWords.mockRejectedValue(
      code === 'sprint-over'
        ? new Refusal(code, { sprintName: 'Harbour 12', state: 'closed' })
        : new Refusal(code, {
            problems: [{ code: 'blocked-on-what' }],
            example: { cardCount: 2, reference: '1', title: 'Tide table', leftPoints: 5 },
          }),
    );
    await bot.say(text);
    const told = platform.callsTo('chat.postMessage')[0]?.text;
    expect(told).toContain(code === 'sprint-over' ? 'Harbour 12 is closed' : 'what the card is waiting for');
    expect(told).not.toContain('Did you mean');
  });

  it('of thanks are answered, and nothing is recorded', async () => {
    const bot = botUnderTest(platform);
    await bot.say('Thanks a lot!');
    expect(platform.callsTo('chat.postMessage')[0]?.text).toBe('You’re welcome.');
    expect(callsOf(bot.useCases)).toEqual([]);
  });

  it.each([
    [
      'the mail is down',
      'Recorded, but without “the mail is down”. To leave a note for the team, write it behind `note:`.',
    ],
    ['I’m off tomorrow', 'Recorded, but without “I’m off tomorrow”. Did you mean `/loadline off`?'],
    ['what next?', 'Recorded, but without “what next?”. Did you mean `/loadline range`?'],
  ])('that hold more than an answer are told what isn’t kept: %s', async (words, told) => {
    const bot = botUnderTest(platform);
    bot.useCases.answerInWords.mockResolvedValue({ ...recordedInPrompt, leftOut: [words] });
    await bot.say(`3, ${words}`);
    expect(JSON.stringify(platform.callsTo('chat.postMessage')[0]?.blocks)).toContain(told);
  });

  it.each([
    ['status Tugboats', 'sprintStatus', [TUGBOATS]],
    ['status tugboats north', 'sprintStatus', [NORTH]],
    ['cards Tugboats', 'listCards', [TUGBOATS]],
    ['drop Tugboats: 3 not needed', 'dropCard', [{ place: TUGBOATS, reference: '3', reason: 'not needed' }]],
    ['value 1200 Tugboats', 'recordValueLine', [{ place: TUGBOATS, line: '1200' }]],
    ['take 4 in Tugboats', 'takeCards', [{ place: TUGBOATS, words: '4' }]],
    ['cards of Tugboats', 'listCards', [TUGBOATS]],
  ])('of somebody on several teams may name the one that is meant: %s', async (text, useCase, input) => {
    const bot = botUnderTest(platform);
    const [known] = (await bot.useCases.overview({} as never, direct)).teams as [TeamOverview];
    const teams = [
      { ...known, team: { ...team, name: 'Tugboats', channelId: TUGBOATS.channelId } },
      { ...known, team: { ...team, name: 'Tugboats North', channelId: NORTH.channelId } },
    ];
    bot.useCases.overview.mockResolvedValue({ teams, canSetUpHere: false });
    const teamNames = teams.map(({ team: { name } }) => name);
    const spied = bot.useCases[useCase as 'listCards'];
    spied.mockRejectedValueOnce(new Refusal('several-teams', { teamNames }));
    await bot.say(text);
    expect(spied.mock.lastCall?.slice(1)).toEqual(input);
  });

  it('of somebody on several teams that name none of them are told how to', async () => {
    const bot = botUnderTest(platform);
    const teamNames = ['Tugboats', 'Pilots'];
    bot.useCases.listCards.mockRejectedValue(new Refusal('several-teams', { teamNames }));
    await bot.say('cards');
    expect(platform.callsTo('chat.postMessage')[0]?.text).toContain('as in /loadline status Tugboats');
  });

  it('are commands of a product owner who writes directly', async () => {
    const bot = botUnderTest(platform);
    await bot.say('value Harbour 12: 1200');
    expect(bot.useCases.recordValueLine.mock.calls.map(([, input]) => input)).toEqual([
      { place: { channelId: DIRECT_ID, isDirect: true }, line: 'Harbour 12: 1200' },
    ]);
    // From words alone no form opens: the buttons that can are shown.
    await bot.say('baseline');
    expect(callsOf(bot.useCases).map(([name]) => name)).toContain('overview');
    expect(JSON.stringify(platform.callsTo('chat.postMessage').at(-1))).toContain('open-baseline-form');
  });

  it.each([
    ['of the bot itself', { user: 'U0BOT', bot_id: 'B0BOT' }],
    ['of another bot', { bot_id: 'B0OTHER' }],
    ['of a bot without a person', { user: undefined, bot_id: 'B0OTHER', subtype: 'bot_message' }],
    ['that were changed', { subtype: 'message_changed', message: { text: '3' } }],
    ['that were deleted', { subtype: 'message_deleted' }],
    ['in a channel', { channel: 'C0PIER', channel_type: 'channel' }],
    ['in a private channel', { channel: 'C0PIER', channel_type: 'group' }],
    ['without words', { text: undefined }],
    ['of spaces only', { text: '  ' }],
  ])('%s are passed over', async (_what, more) => {
    const bot = botUnderTest(platform);
    await bot.say('3', more);
    expect(callsOf(bot.useCases)).toEqual([]);
    expect(platform.calls).toEqual([]);
  });

  const edit = { subtype: 'message_changed', user: undefined, text: undefined };
  const by = (user: string, text: string) => ({ user, text, edited: { user, ts: '2.1' } });

  it('that a person edits change nothing, and the person hears so', async () => {
    const bot = botUnderTest(platform);
    await bot.say('', { ...edit, message: by(MIRA_ID, '4'), previous_message: by(MIRA_ID, '3') });
    expect(callsOf(bot.useCases)).toEqual([]);
    expect(platform.callsTo('chat.postMessage').map(({ text }) => text)).toEqual([
      expect.stringContaining('changed nothing'),
    ]);
  });

  it.each([
    ['the bot', by('U0BOT', '4'), by('U0BOT', '3')],
    ['another bot', { ...by(MIRA_ID, '4'), bot_id: 'B0OTHER' }, by(MIRA_ID, '3')],
    ['nobody, as when the platform finds out a language', by(MIRA_ID, '3'), by(MIRA_ID, '3')],
    ['nobody, as when a link is shown', { user: MIRA_ID, text: '4' }, { user: MIRA_ID, text: '3' }],
  ])('that %s changes are passed over', async (_who, message, previous) => {
    const bot = botUnderTest(platform);
    await bot.say('', { ...edit, message, previous_message: previous });
    expect(platform.calls).toEqual([]);
  });

  const deletion = { subtype: 'message_deleted', user: undefined, text: undefined, ts: '90000.1' };

  it('that a person deletes take nothing back, and the person hears so', async () => {
    const bot = botUnderTest(platform);
    await bot.say('', { ...deletion, deleted_ts: '5000.1', previous_message: { user: MIRA_ID, text: '3' } });
    expect(callsOf(bot.useCases)).toEqual([]);
    expect(platform.callsTo('chat.postMessage').map(({ text }) => text)).toEqual([
      expect.stringContaining('takes nothing back'),
    ]);
  });

  it.each([
    ['of the bot', '5000.1', { user: 'U0BOT', text: '3', bot_id: 'B0BOT' }],
    ['of more than a day ago', '3000.1', { user: MIRA_ID, text: '3' }],
    ['of nobody that is named', '5000.1', undefined],
  ])('%s that are deleted are passed over', async (_whose, deleted_ts, previous_message) => {
    const bot = botUnderTest(platform);
    await bot.say('', { ...deletion, deleted_ts, previous_message });
    expect(platform.calls).toEqual([]);
  });

  it('delivered again are answered once', async () => {
    const bot = botUnderTest(platform);
    const event = {
      type: 'event_callback',
      team_id: WORKSPACE_ID,
      event_id: 'Ev-same',
      event: { type: 'message', channel: DIRECT_ID, channel_type: 'im', user: MIRA_ID, ts: '1.1', text: '3' },
    };
    await bot.push(event);
    expect(await bot.push(event)).toHaveLength(1);
    expect(bot.useCases.answerInWords).toHaveBeenCalledTimes(1);
  });
});
