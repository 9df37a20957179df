import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/app/refusal.ts';
import { COMMANDS } from '../../../src/slack/commands/commands.ts';
import { messageFiles } from '../../../src/words/language.ts';
import { botUnderTest } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import { CARD_TITLE, CHANNEL_ID, DIRECT_ID, MIRA_ID, team, WORKSPACE_ID } from '../support/samples.ts';
import { callsOf } from '../support/spy-use-cases.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => platform.reset());
afterAll(() => platform.close());

const here = { channelId: CHANNEL_ID, isDirect: false };

/** What each word leads to: the use case with its input, and the form that opens, if any. */
const ROUTES: [typed: string, useCase: string, input: unknown[], form?: string][] = [
  ['answer', 'answerForm', [{ place: here }], 'answer-form'],
  ['answer today', 'answerForm', [{ place: here }], 'answer-form'],
  ['answer 2026-11-03', 'answerForm', [{ place: here, day: '2026-11-03' }], 'answer-form'],
  ['answer yesterday', 'answerForm', [{ place: here, day: 'yesterday' }], 'answer-form'],
  ['answer 3 Nov', 'answerForm', [{ place: here, day: '3 Nov' }], 'answer-form'],
  ['cards', 'listCards', [here]],
  ['cards 40', 'listCards', [here]],
  ['pull', 'pullForm', [here], 'pull-form'],
  ['pull Repair it, 3, <@U0OLE|ole>', 'pullCards', [{ place: here, text: 'Repair it, 3, <@U0OLE>' }]],
  ['pull Nuts &amp; bolts, 0,5', 'pullCards', [{ place: here, text: 'Nuts & bolts, 0,5' }]],
  ['take 3', 'takeCards', [{ place: here, words: '3' }]],
  ['give 3 <@U0ANA>', 'giveCards', [{ place: here, words: '3 <@U0ANA>' }]],
  ['release 3', 'releaseCards', [{ place: here, words: '3' }]],
  ['assign 3 @ana', 'assignCards', [{ place: here, words: '3 @ana' }]],
  ['guest <@U0ANA>', 'addGuests', [{ place: here, words: '<@U0ANA>' }]],
  ['guest remove <@U0ANA>', 'removeGuests', [{ place: here, words: '<@U0ANA>' }]],
  ['off', 'daysOffForm', [here], 'days-off-form'],
  ['works', 'daysOffForm', [here], 'days-off-form'],
  ['off team 24 Dec', 'sayDaysOff', [{ place: here, words: 'team 24 Dec' }]],
  ['works mon-thu', 'sayWeekdays', [{ place: here, words: 'mon-thu' }]],
  ['undrop 3', 'undropCard', [{ place: here, reference: '3' }]],
  ['drop', 'listCards', [here], 'drop-form'],
  ['drop card 3: 2 are enough', 'dropCard', [{ place: here, reference: '3', reason: '2 are enough' }]],
  ['drop 3, no longer wanted', 'dropCard', [{ place: here, reference: '3', reason: 'no longer wanted' }]],
  [
    'drop LP-7 no longer wanted',
    'dropCard',
    [{ place: here, reference: 'LP-7', reason: 'no longer wanted' }],
  ],
  [
    'blocked 3 waiting for the key',
    'blockCard',
    [{ place: here, reference: '3', on: 'waiting for the key' }],
  ],
  ['moving 3', 'unblockCard', [{ place: here, reference: '3' }]],
  ['reopen', 'reopenSprint', [{ place: here }]],
  ['reopen 3', 'reopenCard', [{ place: here, reference: '3' }]],
  ['plan', 'planForm', [here], 'plan-form'],
  ['close', 'sprintToEnd', [{ place: here, how: 'close' }], 'close-form'],
  ['cancel', 'sprintToEnd', [{ place: here, how: 'cancel' }], 'cancel-form'],
  ['goal', 'goalForm', [{ place: here }], 'goal-form'],
  ['goal no, not yet', 'recordGoal', [{ place: here, line: 'no, not yet' }]],
  ['try', 'tryForm', [{ place: here }], 'try-form'],
  ['try Split cards of 8', 'tryForm', [{ place: here }], 'try-form'],
  ['experiments', 'listExperiments', [here]],
  ['retro', 'retroSheet', [{ place: here, sprintName: '' }]],
  ['retro Harbour 12', 'retroSheet', [{ place: here, sprintName: 'Harbour 12' }]],
  ['experiments drop 2', 'endExperiment', [{ place: here, reference: '2', outcome: 'drop' }]],
  ['value', 'valueForm', [{ place: here }], 'value-form'],
  ['value 1,200', 'recordValueLine', [{ place: here, line: '1,200' }]],
  ['value Harbour 12: 1200', 'recordValueLine', [{ place: here, line: 'Harbour 12: 1200' }]],
  ['baseline', 'baselineForm', [here], 'baseline-form'],
  ['baseline First', 'nameBaseline', [{ place: here, sprint: 'first' }]],
  ['baseline Harbour 3', 'nameBaseline', [{ place: here, sprint: { sprintName: 'Harbour 3' } }]],
  ['import', 'importForm', [here], 'import-form'],
  ['export', 'exportSprints', [here]],
  ['setup', 'setupForm', [here], 'setup-form'],
  ['setup measures', 'measuresForm', [here], 'measures-form'],
  ['Setup   Measures', 'measuresForm', [here], 'measures-form'],
  ['privacy', 'privacyOverview', []],
  ['', 'overview', [here]],
];

/** What messages tell people to type after the command, to the letter; those that depend on an argument are left out. */
function namedCommands(): string[] {
  const texts = [...messageFiles('en-GB').values()];
  const named = texts.flatMap((text) => [...text.matchAll(/`\/loadline ([^`{]*)`/g)]);
  return [...new Set(named.map(([, words]) => words as string))];
}

describe('the slash command', () => {
  it.each(ROUTES)('`%s` leads to %s', async (typed, useCase, input, form) => {
    const bot = botUnderTest(platform);
    await bot.command(typed);
    expect(callsOf(bot.useCases)).toEqual([[useCase, ...input]]);
    const opened = platform
      .callsTo('views.open')
      .map(({ view }) => (view as { callback_id: string }).callback_id);
    expect(opened).toEqual(form === undefined ? [] : [form]);
    // Somebody who asked is always answered: by a form, or by a message that only they see.
    expect(platform.responses.map((response) => response.response_type)).toEqual(
      form === undefined ? ['ephemeral'] : [],
    );
  });

  it.each([
    ['blocked 3 waiting for <@U0ANA|ana>', { place: here, reference: '3', on: 'waiting for @Ana Sol' }],
    ['drop 3 as <@U0ANA> asked', { place: here, reference: '3', reason: 'as @Ana Sol asked' }],
    ['answer 3: 2 note: ask <@U0GONE>', { text: '3: 2 note: ask a colleague' }],
  ])('keeps of a mention in “%s” the name, for the id says nothing to who reads it', async (typed, input) => {
    const bot = botUnderTest(platform);
    platform.answer('users.info', ({ user }) =>
      user === 'U0ANA'
        ? { user: { id: 'U0ANA', name: 'ana', profile: { display_name: 'Ana Sol' } } }
        : { ok: false, error: 'user_not_visible' },
    );
    await bot.command(typed);
    expect(callsOf(bot.useCases)).toEqual([[expect.any(String), expect.objectContaining(input)]]);
  });

  it('knows every word of the command table, and everything that messages say to type', async () => {
    const named = namedCommands();
    expect(named).toContain('off 24 Dec to 2 Jan');
    for (const typed of new Set([...COMMANDS.map(({ word }) => word), ...named])) {
      const bot = botUnderTest(platform);
      await bot.command(typed);
      expect(bot.log.text(), typed).not.toContain('unknown');
      expect(bot.log.text(), typed).not.toContain('Something went wrong');
    }
  });

  it('answers to no address that is not the platform’s, and does the work all the same', async () => {
    const bot = botUnderTest(platform);
    let asked = 0;
    const other = createServer((_request, response) => {
      asked += 1;
      response.end('{}');
    });
    await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
    const { port } = other.address() as AddressInfo;
    await bot.command('close', { response_url: `http://127.0.0.1:${port}/hook` });
    await bot.command('undrop 3', { response_url: `http://127.0.0.1:${port}/hook` });
    other.close();
    expect(asked).toBe(0);
    expect(callsOf(bot.useCases).map(([name]) => name)).toContain('undropCard');
  });

  it('offers to set a team up in a channel that has none', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.overview.mockResolvedValue({ teams: [], canSetUpHere: true });
    await bot.command('');
    const said = JSON.stringify(platform.responses);
    expect(said).toContain('open-setup-form');
    expect(said).toContain(CHANNEL_ID);
  });

  it('acknowledges once and with nothing, before the work', async () => {
    const bot = botUnderTest(platform);
    expect(await bot.command('status')).toEqual([undefined]);
  });

  it.each(['off holidays DE-BY', 'off team holidays of DE-BY', 'off public holidays in DE-BY'])(
    '`%s` shows a country’s holidays for the team, and saves none of them yet',
    async (typed) => {
      const bot = botUnderTest(platform);
      await bot.command(typed);
      const wanted = { teamId: team.id, whose: 'team', source: { holidaysOf: 'DE-BY' }, takesFree: false };
      expect(callsOf(bot.useCases)).toEqual([
        ['daysOffForm', here],
        ['importDaysOff', { ...wanted, seen: undefined }],
      ]);
      expect(platform.callsTo('views.open')).toMatchObject([
        { view: { callback_id: 'days-off-preview-form' } },
      ]);
    },
  );

  it('takes person and workspace from the signed payload only', async () => {
    const bot = botUnderTest(platform);
    await bot.command('cards');
    expect(bot.useCases.listCards.mock.calls[0]?.[0]).toEqual({ workspaceId: WORKSPACE_ID, userId: MIRA_ID });
  });

  it('shows the words of the status first, and then its chart, uploaded privately', async () => {
    const bot = botUnderTest(platform);
    await bot.command('status');
    expect(platform.uploads).toHaveLength(1);
    expect(platform.callsTo('files.completeUploadExternal')[0]).not.toHaveProperty('channel_id');
    const [words, chart] = platform.responses as {
      blocks: { type: string; slack_file?: { id: string } }[];
    }[];
    expect(words?.blocks.some(({ type }) => type === 'image')).toBe(false);
    expect(chart?.blocks).toMatchObject([{ type: 'image', slack_file: { id: 'F1' } }]);
  });

  it('shows the status once when the request comes twice, with any result of the second reading', async () => {
    const bot = botUnderTest(platform);
    const trigger = { trigger_id: 'twice-1' };
    await bot.command('status', trigger);
    const told = platform.responses.length;
    bot.useCases.sprintStatus.mockRejectedValue(new Refusal('no-sprint-running', {}));
    await bot.command('status', trigger);
    expect(platform.responses).toHaveLength(told);
    expect(bot.log.text()).toContain('A repeated request was passed over.');
  });

  it('says why there is no status', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.sprintStatus.mockRejectedValue(new Refusal('no-sprint-running', {}));
    await bot.command('status');
    expect(platform.responses.map(({ text }) => text)).toEqual([
      expect.stringContaining('No sprint is running'),
    ]);
  });

  it('shows the status without a chart when it can not be uploaded', async () => {
    platform.refuse('files.getUploadURLExternal', 'missing_scope');
    const bot = botUnderTest(platform);
    await bot.command('status');
    expect(platform.responses).toHaveLength(1);
    const [response] = platform.responses as [{ text: string; blocks: { type: string }[] }];
    expect(response.blocks.some(({ type }) => type === 'image')).toBe(false);
    expect(response.text).toContain('Harbour 12');
  });

  it('names the nearest word after a mistyped one', async () => {
    const bot = botUnderTest(platform);
    await bot.command('sttaus');
    expect(platform.responses[0]?.text).toContain('status');
    expect(callsOf(bot.useCases)).toEqual([]);
  });

  it.each([
    ['answer 4/11', 'answer yesterday'],
    ['answer 04/11', 'answer yesterday'],
    ['cards all', 'cards 40'],
    ['blocked', 'blocked 3 waiting for'],
    ['moving', 'moving 3'],
    ['drop 3, 4', 'one card at a time'],
    ['drop 3 and 4', 'one card at a time'],
    ['blocked 3 4', 'one card at a time'],
    ['end sprint', '/loadline close'],
  ])('refuses `%s` and shows how it is written', async (typed, example) => {
    const bot = botUnderTest(platform);
    await bot.command(typed);
    expect(callsOf(bot.useCases)).toEqual([]);
    expect(platform.responses[0]?.text).toContain(example);
  });

  it.each(['2 done', 'LP-7 2', 'done', 'same', '2.5', 'soon'])('takes `answer %s` as words', async (text) => {
    const bot = botUnderTest(platform);
    await bot.command(`answer ${text}`);
    expect(callsOf(bot.useCases)).toEqual([['answerInWords', { text, place: here, numbering: 'sprint' }]]);
  });

  it('sends a refusal with its remedy, to the caller only', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.listCards.mockRejectedValue(new Refusal('no-team-here', {}));
    await bot.command('cards');
    expect(platform.responses).toHaveLength(1);
    expect(platform.responses[0]).toMatchObject({ response_type: 'ephemeral' });
    expect(platform.responses[0]?.text).toContain('/loadline setup');
  });

  it('gives a code for what nobody foresaw, and logs the error under it', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.listCards.mockRejectedValue(new TypeError('card is undefined'));
    await bot.command('cards');
    const logged = bot.log.entries().find(({ errorId }) => errorId !== undefined);
    expect(logged).toMatchObject({ level: 'error', during: 'command cards', err: { kind: 'TypeError' } });
    expect(platform.responses[0]?.text).toContain(String(logged?.errorId));
    expect(platform.responses[0]?.text).not.toContain('undefined');
  });

  it('says that it took too long when the platform refuses the form', async () => {
    platform.refuse('views.open', 'expired_trigger_id');
    const bot = botUnderTest(platform);
    await bot.command('plan');
    expect(platform.responses[0]?.text).toContain('too long');
  });

  it('says for how long to wait when the platform asks for a pause', async () => {
    platform.answer('views.open', () => new Response('', { status: 429, headers: { 'retry-after': '7' } }));
    const bot = botUnderTest(platform);
    await bot.command('plan');
    expect(platform.responses[0]?.text).toContain('7 seconds');
  });

  it('answers directly when the response address does not serve any more', async () => {
    platform.responseUrlServes = false;
    const bot = botUnderTest(platform);
    await bot.command('cards');
    expect(platform.callsTo('chat.postEphemeral')[0]).toMatchObject({ channel: CHANNEL_ID, user: MIRA_ID });
  });

  it('answers by direct message where the bot is not in the channel', async () => {
    platform.responseUrlServes = false;
    platform.refuse('chat.postEphemeral', 'not_in_channel');
    const bot = botUnderTest(platform);
    await bot.command('cards');
    expect(platform.callsTo('chat.postMessage')[0]).toMatchObject({ channel: MIRA_ID });
  });

  it('means the person’s own team in direct messages', async () => {
    const bot = botUnderTest(platform);
    await bot.command('cards', { channel_id: DIRECT_ID });
    expect(callsOf(bot.useCases)).toEqual([['listCards', { channelId: DIRECT_ID, isDirect: true }]]);
  });

  it('does a repeated request once', async () => {
    const bot = botUnderTest(platform);
    await bot.command('pull Repair it, 3', { trigger_id: 'same' });
    const acks = await bot.command('pull Repair it, 3', { trigger_id: 'same' });
    expect(acks).toHaveLength(1);
    expect(bot.useCases.pullCards).toHaveBeenCalledTimes(1);
  });

  it('does nothing for another workspace', async () => {
    const bot = botUnderTest(platform);
    expect(await bot.command('cards', { team_id: 'T0OTHER' })).toHaveLength(1);
    expect(callsOf(bot.useCases)).toEqual([]);
  });

  it('logs no card title and no words of people at info level', async () => {
    const bot = botUnderTest(platform);
    await bot.command(`pull ${CARD_TITLE}, 3`);
    await bot.command('cards');
    await bot.command(`nonsense ${CARD_TITLE}`);
    expect(bot.log.entries().map(({ during }) => during)).toContain('command pull');
    expect(bot.log.text()).not.toContain(CARD_TITLE);
    expect(bot.log.text()).not.toContain('nonsense');
  });
});
