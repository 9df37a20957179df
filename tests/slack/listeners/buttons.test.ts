import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/app/refusal.ts';
import { encodeAnswers, encodeValue } from '../../../src/slack/button-values.ts';
import { BUTTONS } from '../../../src/slack/commands/commands.ts';
import { ACTIONS } from '../../../src/slack/ids.ts';
import { fakeStore } from '../../support/fake-store.ts';
import { botUnderTest } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import { CHANNEL_ID, DIRECT_ID, grown, MIRA_ID, recordedInPrompt, status } from '../support/samples.ts';
import { callsOf } from '../support/spy-use-cases.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => platform.reset());
afterAll(() => platform.close());

const sprint = encodeValue({ sprintId: 'sprint-1' });
const day = encodeValue({ sprintId: 'sprint-1', day: '2026-11-04' });
const place = encodeValue({ channelId: CHANNEL_ID });
const here = { channelId: CHANNEL_ID, isDirect: false };
const typed = { cardId: 'card-1', worked: '', left: '6', surprise: '3', note: '' };
const answers = encodeAnswers({ sprintId: 'sprint-1', day: '2026-11-04', answers: [typed] }) as string;
const cardDay = encodeValue({ sprintId: 'sprint-1', day: '2026-11-03', card: '3' });
const dayInput = { sprintId: 'sprint-1', day: '2026-11-04' };

/** What each button leads to, and what the person sees: a form, a message, or a message in place of the old one. */
const trial = JSON.stringify({ experimentId: 'e1' });
const ROUTES: [action: string, value: string, useCase: string, input: unknown, seen: string][] = [
  [ACTIONS.openAnswerForm, day, 'answerForm', dayInput, 'answer-form'],
  [ACTIONS.openAnswerForm, sprint, 'answerForm', { sprintId: 'sprint-1' }, 'answer-form'],
  [ACTIONS.recordUnchanged, day, 'recordUnchanged', dayInput, 'in place'],
  [ACTIONS.recordAway, day, 'recordAway', dayInput, 'in place'],
  // Of another day than the spy's, whose prompt says as much.
  [ACTIONS.cardMoving, cardDay, 'unblockCard', { sprintId: 'sprint-1', reference: '3' }, 'told'],
  [ACTIONS.growthAllSurprise, answers, 'recordAnswers', { ...dayInput, answers: [typed] }, 'in place'],
  [ACTIONS.growthAllDrift, answers, 'recordAnswers', { ...dayInput, answers: [typed] }, 'in place'],
  [ACTIONS.growthSomeOfEach, day, 'answerForm', dayInput, 'answer-form'],
  ['open-setup-form', place, 'setupForm', here, 'setup-form'],
  ['open-measures-form', place, 'measuresForm', here, 'measures-form'],
  ['open-plan-form', place, 'planForm', here, 'plan-form'],
  ['open-pull-form', place, 'pullForm', here, 'pull-form'],
  ['open-drop-form', place, 'listCards', here, 'drop-form'],
  ['open-close-form', place, 'sprintToEnd', { place: here, how: 'close' }, 'close-form'],
  ['open-cancel-form', place, 'sprintToEnd', { place: here, how: 'cancel' }, 'cancel-form'],
  [ACTIONS.askWhatIf, sprint, 'whatIfForm', { sprintId: 'sprint-1' }, 'what-if-form'],
  [ACTIONS.explainGoal, sprint, 'goalForm', { sprintId: 'sprint-1' }, 'goal-form'],
  ['open-goal-form', place, 'goalForm', { place: here }, 'goal-form'],
  ['open-try-form', place, 'tryForm', { place: here }, 'try-form'],
  [
    ACTIONS.tryText,
    JSON.stringify({ ...JSON.parse(place), text: 'x' }),
    'tryForm',
    { place: here },
    'try-form',
  ],
  [ACTIONS.keepExperiment, trial, 'endExperiment', { experimentId: 'e1', outcome: 'keep' }, 'in place'],
  [ACTIONS.changeExperiment, trial, 'tryForm', { experimentId: 'e1' }, 'try-form'],
  [ACTIONS.dropExperiment, trial, 'endExperiment', { experimentId: 'e1', outcome: 'drop' }, 'in place'],
  [ACTIONS.tryThis, sprint, 'tryForm', { sprintId: 'sprint-1' }, 'try-form'],
  [ACTIONS.showRetro, place, 'retroSheet', { place: here, sprintName: '' }, 'told'],
  [ACTIONS.retroOfSprint, sprint, 'retroSheet', { sprintId: 'sprint-1' }, 'told'],
  [ACTIONS.shareRetro, sprint, 'shareRetro', { sprintId: 'sprint-1' }, 'told'],
  [ACTIONS.showExperiments, place, 'listExperiments', here, 'told'],
  ['open-value-form', place, 'valueForm', { place: here }, 'value-form'],
  [ACTIONS.recordValue, sprint, 'valueForm', { sprintId: 'sprint-1' }, 'value-form'],
  ['open-baseline-form', place, 'baselineForm', here, 'baseline-form'],
  ['open-import-form', place, 'importForm', here, 'import-form'],
  [ACTIONS.exportSprints, place, 'exportSprints', here, 'told'],
  [ACTIONS.showCards, place, 'listCards', here, 'told'],
  [ACTIONS.openEraseForm, 'me', 'privacyOverview', undefined, 'erase-form'],
  [ACTIONS.showPrivacy, 'me', 'privacyOverview', undefined, 'told'],
  [ACTIONS.sendMyCopy, 'me', 'personalCopy', undefined, 'told'],
  [ACTIONS.shareStatus, sprint, 'shareStatus', { sprintId: 'sprint-1' }, 'told'],
  [ACTIONS.reopenLastSprint, place, 'reopenSprint', { place: here }, 'told'],
  [ACTIONS.reopenSprint, sprint, 'reopenSprint', { sprintId: 'sprint-1' }, 'told'],
];

describe('buttons', () => {
  it.each(ROUTES)('%s (%s) leads to %s', async (action, value, useCase, input, seen) => {
    const bot = botUnderTest(platform);
    expect(await bot.press(action, value)).toEqual([undefined]);
    expect(callsOf(bot.useCases)).toEqual([input === undefined ? [useCase] : [useCase, input]]);
    const forms = platform
      .callsTo('views.open')
      .map(({ view }) => (view as { callback_id: string }).callback_id);
    const messages = platform.responses.map((response) => (response.replace_original ? 'in place' : 'told'));
    expect([...forms, ...messages]).toEqual([seen]);
  });

  it('opens no form to erase somebody of whom nothing is stored', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.privacyOverview.mockResolvedValue({ kinds: [], teams: [] });
    await bot.press(ACTIONS.openEraseForm, 'me');
    expect(platform.callsTo('views.open')).toEqual([]);
    expect(platform.responses[0]?.text).toContain('Nothing is stored about you here');
  });

  it('sends a copy to the person who presses, in their direct messages', async () => {
    const bot = botUnderTest(platform);
    await bot.press(ACTIONS.sendMyCopy, JSON.stringify({ userId: 'U0OLE' }));
    expect(bot.useCases.personalCopy.mock.calls[0]?.[0]).toMatchObject({ userId: MIRA_ID });
    expect(platform.callsTo('conversations.open')[0]).toMatchObject({ users: MIRA_ID });
    expect(platform.callsTo('files.completeUploadExternal')).toHaveLength(1);
  });

  it('sends the page of a retrospective to the person who presses, even when a chart can’t be drawn', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.statusChart.mockRejectedValue(new Error('no font'));
    await bot.press(ACTIONS.printRetro, sprint);
    expect(bot.useCases.retroSheet.mock.calls[0]?.[1]).toEqual({ sprintId: 'sprint-1' });
    expect(platform.callsTo('conversations.open')[0]).toMatchObject({ users: MIRA_ID });
    expect(platform.callsTo('files.getUploadURLExternal')[0]).toMatchObject({
      filename: expect.stringMatching(/^retrospective-.*\.html$/),
    });
    expect(platform.callsTo('files.completeUploadExternal')).toHaveLength(1);
    expect(platform.responses.at(-1)?.text).toContain('The page is in your direct messages');
  });

  it.each([
    [ACTIONS.goalYes, 'yes'],
    [ACTIONS.goalPartly, 'partly'],
    [ACTIONS.goalNo, 'no'],
  ])(
    '%s records the answer in one click; the question itself says what was recorded',
    async (action, met) => {
      const bot = botUnderTest(platform);
      await bot.press(action, sprint);
      expect(callsOf(bot.useCases)).toEqual([['recordGoal', { sprintId: 'sprint-1', met, note: '' }]]);
      expect(platform.responses).toEqual([]);
    },
  );

  it('has a handler for every button', () => {
    expect([...BUTTONS.keys()]).toEqual(expect.arrayContaining(Object.values(ACTIONS)));
  });

  it('shows status and help', async () => {
    const bot = botUnderTest(platform);
    await bot.press(ACTIONS.showStatus, place);
    await bot.press(ACTIONS.showHelp, place);
    expect(callsOf(bot.useCases)).toEqual([
      ['overview', { channelId: DIRECT_ID, isDirect: true }],
      ['sprintStatus', here],
      ['statusBurndown', status],
    ]);
    expect(platform.responses.at(-1)?.text).toContain('What you’ll use most');
    await bot.press(ACTIONS.showAllCommands, 'all');
    expect(platform.responses.at(-1)?.text).toContain('setup measures');
  });

  it('why a card grew leave the day’s prompt to confirm the answer', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.recordAnswers.mockResolvedValue(recordedInPrompt);
    await bot.press(ACTIONS.growthAllDrift, answers);
    expect(platform.responses).toMatchObject([
      { replace_original: true, text: 'Recorded. Today’s message above shows your answers.' },
    ]);
  });

  it('“some of each” records nothing and asks in the form with what was typed', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.recordAnswers.mockResolvedValue(grown);
    await bot.press(ACTIONS.growthSomeOfEach, answers);
    const [{ view }] = platform.callsTo('views.open') as [{ view: { blocks: { block_id?: string }[] } }];
    expect(view.blocks.map(({ block_id }) => block_id)).toContain('surprise:card-1');
    expect(platform.responses).toEqual([]);
  });

  it('asks again when the explained answers no longer explain the growth', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.recordAnswers.mockResolvedValue(grown);
    await bot.press(ACTIONS.growthAllDrift, answers);
    expect(platform.responses[0]).toMatchObject({ replace_original: true });
    expect(JSON.stringify(platform.responses[0]?.blocks)).toContain(ACTIONS.growthSomeOfEach);
  });

  it('remembers the thread in which the form was asked for', async () => {
    const bot = botUnderTest(platform);
    const inThread = { channel: { id: 'C0QUAY' }, container: { thread_ts: '4.4' } };
    await bot.press('open-pull-form', place, inThread);
    const [{ view }] = platform.callsTo('views.open') as [{ view: { private_metadata: string } }];
    expect(JSON.parse(view.private_metadata)).toMatchObject({ replyTo: 'C0QUAY:4.4' });
  });

  it('remembers where the form was asked for, so that the reply finds its way', async () => {
    const bot = botUnderTest(platform);
    await bot.press('open-pull-form', place);
    const [{ view }] = platform.callsTo('views.open') as [{ view: { private_metadata: string } }];
    expect(JSON.parse(view.private_metadata)).toEqual({ sprintId: 'sprint-1', replyTo: DIRECT_ID });
  });

  it('answers a button of the home page by direct message', async () => {
    const bot = botUnderTest(platform);
    const home = { channel: undefined, response_url: undefined, view: { id: 'V9', type: 'home' } };
    await bot.press(ACTIONS.showCards, place, home);
    expect(platform.callsTo('chat.postMessage')[0]).toMatchObject({ channel: MIRA_ID });
  });

  it.each([
    ['no value', ACTIONS.openAnswerForm, undefined],
    ['a value that is no JSON', ACTIONS.openAnswerForm, 'sprint-1'],
    ['a value of another shape', ACTIONS.showCards, sprint],
    ['an id of another type', ACTIONS.shareStatus, '{"sprintId":{"$ne":""}}'],
    ['a day that is none', ACTIONS.recordAway, '{"sprintId":"sprint-1","day":"today"}'],
    ['no day where one is needed', ACTIONS.recordUnchanged, sprint],
    [
      'answers without rows',
      ACTIONS.growthAllDrift,
      '{"sprintId":"sprint-1","day":"2026-11-04","answers":[]}',
    ],
    ['an unknown button', 'constructor', place],
    ['an unknown button', 'long-gone', place],
  ])('refuses %s clearly and does nothing', async (_what, action, value) => {
    const bot = botUnderTest(platform);
    await bot.press(action, value);
    expect(callsOf(bot.useCases)).toEqual([]);
    expect(platform.responses.map(({ response_type }) => response_type)).toEqual(['ephemeral']);
    expect(platform.responses[0]?.text).toContain('/loadline');
    expect(bot.log.entries().some(({ level }) => level === 'error')).toBe(false);
  });

  it('leaves the post alone when the press is refused', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.recordUnchanged.mockRejectedValue(new Refusal('sprint-changed', {}));
    await bot.press(ACTIONS.recordUnchanged, day);
    expect(platform.responses).toEqual([expect.objectContaining({ replace_original: false })]);
  });

  it('does a repeated press once', async () => {
    const bot = botUnderTest(platform);
    await bot.press(ACTIONS.recordAway, day, { trigger_id: 'same' });
    await bot.press(ACTIONS.recordAway, day, { trigger_id: 'same' });
    expect(bot.useCases.recordAway).toHaveBeenCalledTimes(1);
  });

  it.each([
    ['nothing was recorded', 'comes back', [new Error('connection lost'), true]],
    [
      'it is not certain whether this was recorded',
      'has had the press',
      [new Error('connection lost'), false],
    ],
    ['it is not certain whether this was recorded', 'stays away', [new Error('lost'), new Error('lost')]],
  ])('tells that %s when the database goes away and %s', async (words, _what, answers) => {
    const rememberEvent = async () => {
      const answer = answers.shift();
      if (typeof answer !== 'boolean') throw answer;
      return answer;
    };
    const bot = botUnderTest(platform, { store: fakeStore({ rememberEvent }) });
    await bot.press(ACTIONS.recordAway, day);
    expect(callsOf(bot.useCases)).toEqual([]);
    expect(JSON.stringify(platform.responses)).toContain(words);
  });

  it('only acknowledges a choice made in an open form', async () => {
    const bot = botUnderTest(platform);
    expect(await bot.press('value', undefined, { view: { id: 'V1', type: 'modal' } })).toEqual([undefined]);
    expect(platform.calls).toEqual([]);
    expect(platform.responses).toEqual([]);
  });
});
