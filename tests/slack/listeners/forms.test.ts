import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { PulledCards } from '../../../src/app/cards/pull-cards.ts';
import type { InputProblem } from '../../../src/app/input-problem.ts';
import { Refusal } from '../../../src/app/refusal.ts';
import { AlreadyWritten } from '../../../src/app/written-once.ts';
import { FORMS } from '../../../src/slack/commands/commands.ts';
import { answerFormView } from '../../../src/slack/views/answering/answer-form.ts';
import { baselineFormView } from '../../../src/slack/views/baseline-views.ts';
import { dropFormView, pullFormView } from '../../../src/slack/views/cards/card-forms.ts';
import { tryFormView } from '../../../src/slack/views/experiment-views.ts';
import { goalFormView } from '../../../src/slack/views/goal-views.ts';
import { planFormView } from '../../../src/slack/views/planning/plan-forms.ts';
import { planPreviewView } from '../../../src/slack/views/planning/plan-preview.ts';
import { eraseFormView } from '../../../src/slack/views/privacy-message.ts';
import { cancelFormView, closeFormView } from '../../../src/slack/views/sprint-change-views.ts';
import { measuresFormView, setupFormView } from '../../../src/slack/views/team/team-forms.ts';
import { valueFormView } from '../../../src/slack/views/value-views.ts';
import { eventMemory, fakeStore } from '../../support/fake-store.ts';
import { botUnderTest, sentForm } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import * as sample from '../support/samples.ts';
import { callsOf } from '../support/spy-use-cases.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => platform.reset());
afterAll(() => platform.close());

const { heading, team, cards, summary, CHANNEL_ID, MIRA_ID, OLE_ID } = sample;
const list = { heading, cards, summary };
const text = (value: string) => ({ type: 'plain_text_input', value });

const setup = setupFormView(
  {
    existing: false,
    channelId: CHANNEL_ID,
    name: 'Pier crew',
    timeZone: 'Europe/Lisbon',
    promptAt: '09:15',
    workingDays: [1, 2, 3, 4, 5],
    memberIds: [MIRA_ID, OLE_ID],
    facilitatorIds: [MIRA_ID],
    productOwnerId: OLE_ID,
    isShared: false,
    acceptsShared: false,
  },
  CHANNEL_ID,
);
const plan = planFormView({ team, draft: sample.planInput, leftOver: 0 }, CHANNEL_ID);
const preview = planPreviewView(sample.preview, CHANNEL_ID);
const answer = answerFormView(sample.answerForm, undefined, CHANNEL_ID);
const pull = pullFormView(
  {
    heading,
    load: sample.status.load,
    check: sample.pullInCheck,
    workingDaysLeft: 8,
  },
  CHANNEL_ID,
);

describe('forms sent off', () => {
  it('has a handler for every form, under the id that forms on people’s screens have', () => {
    expect([...FORMS.keys()].sort()).toEqual([
      'answer-form',
      'baseline-form',
      'cancel-form',
      'card-file-form',
      'choose-sprint-form',
      'close-form',
      'days-off-form',
      'days-off-preview-form',
      'digest-form',
      'drop-form',
      'edit-card-form',
      'edit-sprint-form',
      'end-form',
      'erase-form',
      'forecast-form',
      'goal-form',
      'import-form',
      'keep-form',
      'leave-form',
      'measures-form',
      'own-prompt-form',
      'plan-form',
      'plan-preview-form',
      'pull-form',
      'pull-team-form',
      'range-form',
      'remove-import-confirm-form',
      'remove-import-form',
      'setup-form',
      'try-form',
      'value-form',
      'values-preview-form',
      'what-if-form',
    ]);
  });

  it('set up a team with what is in the fields', async () => {
    const bot = botUnderTest(platform);
    expect(await bot.submit(sentForm(setup, { name: text('Quay crew') }))).toEqual([undefined]);
    expect(bot.useCases.setUpTeam.mock.calls[0]?.[1]).toEqual({
      channelId: CHANNEL_ID,
      name: 'Quay crew',
      timeZone: 'Europe/Lisbon',
      promptAt: '09:15',
      workingDays: [1, 2, 3, 4, 5],
      memberIds: [MIRA_ID, OLE_ID],
      facilitatorIds: [MIRA_ID],
      productOwnerId: OLE_ID,
      acceptsShared: false,
    });
  });

  it('change the measures, thresholds as typed', async () => {
    const bot = botUnderTest(platform);
    const form = sentForm(measuresFormView(team), { keptShareAtLeast: text('75'), scale: text('1, 2, 4') });
    await bot.submit(form);
    expect(bot.useCases.setMeasures.mock.calls[0]?.[1]).toEqual({
      teamId: 'team-1',
      closesAt: '17:00',
      reminderAfterMinutes: '180',
      scale: '1, 2, 4',
      retentionMonths: '',
      weeklyLine: 'no',
      valueAfterDays: '',
      surpriseInVerdict: 'yes',
      carriedOver: 'left',
      thresholds: {
        keptShareAtLeast: '75',
        surpriseRatioAtMost: '20',
        pullInRatioAtMost: '20',
        planShareAtLeast: '80',
        estimateAccuracyAtLeast: '80',
        estimateAccuracyAtMost: '95',
        velocityGrowthFirstMark: '',
        velocityGrowthLongRangeMark: '',
      },
    });
  });

  it('erase the person who sent the form off, and nobody whom it might name', async () => {
    const bot = botUnderTest(platform);
    const form = sentForm(eraseFormView(CHANNEL_ID));
    expect(await bot.submit(form)).toEqual([undefined]);
    expect(bot.useCases.erasePerson.mock.calls).toEqual([
      [{ workspaceId: sample.WORKSPACE_ID, userId: MIRA_ID }, { removeMessages: false }],
    ]);
    expect(platform.callsTo('chat.postEphemeral')[0]?.text).toContain('You are erased: 24 records');
    const ticked = { type: 'checkboxes', selected_options: [{ value: 'remove' }] };
    await bot.submit(sentForm(eraseFormView(CHANNEL_ID), { messages: ticked }));
    expect(bot.useCases.erasePerson.mock.calls.at(-1)?.[1]).toEqual({ removeMessages: true });
    await bot.submit({ ...form, private_metadata: JSON.stringify({ userId: OLE_ID }) });
    expect(bot.useCases.erasePerson).toHaveBeenCalledTimes(2);
  });

  it('say why nobody was erased', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.erasePerson.mockRejectedValue(new Refusal('nothing-stored', {}));
    const [answer] = await bot.submit(sentForm(eraseFormView(CHANNEL_ID)));
    expect(JSON.stringify(answer)).toContain('Nothing is stored about you here');
  });

  it('record whether the sprint goal was met, with a sentence', async () => {
    const bot = botUnderTest(platform);
    const outcome = { met: 'no', note: '', saidBy: MIRA_ID, saidAt: new Date(0) } as const;
    const form = goalFormView({ heading: sample.heading, outcome }, CHANNEL_ID);
    await bot.submit(sentForm(form, { note: text('Two of three piers') }));
    expect(callsOf(bot.useCases)).toEqual([
      ['recordGoal', { sprintId: 'sprint-1', met: 'no', note: 'Two of three piers' }],
    ]);
    expect(platform.callsTo('chat.postEphemeral')[0]?.text).toContain('the goal was met');
  });

  it('answer in the thread in which they were opened', async () => {
    const bot = botUnderTest(platform);
    const outcome = { met: 'no', note: '', saidBy: MIRA_ID, saidAt: new Date(0) } as const;
    const form = goalFormView({ heading: sample.heading, outcome }, `${CHANNEL_ID}:4.4`);
    await bot.submit(sentForm(form, { note: text('') }));
    expect(platform.callsTo('chat.postEphemeral')).toMatchObject([{ channel: CHANNEL_ID, thread_ts: '4.4' }]);
  });

  it('keep what the team tries, with the number that it should move', async () => {
    const bot = botUnderTest(platform);
    const suggested = { text: 'Split cards of 8', ratio: 'surpriseRatio', direction: 'down' } as const;
    const form = tryFormView({ team, verdict: undefined, open: [] }, suggested, CHANNEL_ID);
    await bot.submit(sentForm(form, { text: text('Two on a card') }));
    expect(callsOf(bot.useCases)).toEqual([
      [
        'tryExperiment',
        { teamId: 'team-1', text: 'Two on a card', ratio: 'surpriseRatio', direction: 'down' },
      ],
    ]);
    expect(platform.callsTo('chat.postEphemeral')[0]?.text).toContain('Kept: Split cards of 8');
  });

  it('put something else in the place of what the team tries, beginning with what that was', async () => {
    const bot = botUnderTest(platform);
    const { experiment } = sample;
    const form = tryFormView(
      { team, verdict: undefined, open: [experiment], changing: experiment },
      experiment,
    );
    expect(JSON.stringify(form.blocks)).toContain(`takes the place of “${experiment.text}”`);
    await bot.submit(sentForm(form));
    const { text: words, ratio, direction } = experiment;
    expect(callsOf(bot.useCases)).toEqual([
      ['tryExperiment', { teamId: 'team-1', text: words, ratio, direction, changes: experiment.id }],
    ]);
  });

  it('record the value of the chosen sprint, as typed, and say how it has grown', async () => {
    const bot = botUnderTest(platform);
    const form = sentForm(valueFormView(sample.valueForm, CHANNEL_ID), { recordedValue: text('1.200,50') });
    expect(await bot.submit(form)).toEqual([undefined]);
    expect(callsOf(bot.useCases)).toEqual([
      ['recordValue', { teamId: 'team-1', sprint: { sprintId: 'sprint-1' }, value: '1.200,50' }],
    ]);
    expect(platform.callsTo('chat.postEphemeral')[0]?.text).toContain('It replaces 1,000');
  });

  it('put what is wrong with a value beside it', async () => {
    const bot = botUnderTest(platform);
    const problem = { code: 'two-numbers', typed: '1.200', first: '1200', second: '1.2' } as const;
    const problems = [{ field: 'recordedValue', problem }];
    bot.useCases.recordValue.mockRejectedValue(new Refusal('bad-input', { problems }));
    const form = sentForm(valueFormView(sample.valueForm), { recordedValue: text('1.200') });
    expect(await bot.submit(form)).toEqual([
      {
        response_action: 'errors',
        errors: { recordedValue: '“1.200” may mean 1200 or 1.2. Write it in one of these two ways.' },
      },
    ]);
  });

  it.each([
    ['first', 'first'],
    ['sprint-1', { sprintId: 'sprint-1' }],
  ])('name the baseline sprint: %s', async (value, sprint) => {
    const bot = botUnderTest(platform);
    const form = sentForm(baselineFormView(sample.baselineForm, CHANNEL_ID), {
      sprintId: { type: 'static_select', selected_option: { value } },
    });
    await bot.submit(form);
    expect(callsOf(bot.useCases)).toEqual([['nameBaseline', { teamId: 'team-1', sprint }]]);
    expect(platform.callsTo('chat.postEphemeral')[0]?.text).toContain('now compared with Harbour 12');
  });

  it('put the preview on top of the plan', async () => {
    const bot = botUnderTest(platform);
    const [ack] = await bot.submit(sentForm(plan));
    expect(callsOf(bot.useCases)).toEqual([['previewPlan', sample.planInput]]);
    expect(ack).toMatchObject({ response_action: 'push', view: { callback_id: 'plan-preview-form' } });
  });

  it('put together cards that were typed into several fields', async () => {
    const bot = botUnderTest(platform);
    const long = planFormView({
      team,
      draft: { ...sample.planInput, cards: 'A card, 3\n'.repeat(400) },
      leftOver: 0,
    });
    const form = sentForm(long, { cards: text('First, 3'), 'cards-2': text('Second, 5') });
    await bot.submit(form);
    expect(bot.useCases.previewPlan.mock.calls[0]?.[1].cards.split('\n').slice(0, 2)).toEqual([
      'First, 3',
      'Second, 5',
    ]);
  });

  it('commit to the plan, close all forms and say so where the plan was asked for', async () => {
    const bot = botUnderTest(platform);
    expect(await bot.submit(sentForm(preview))).toEqual([{ response_action: 'clear' }]);
    expect(callsOf(bot.useCases)).toEqual([
      ['commitPlan', { teamId: 'team-1', seen: 'f1f2', ticked: ['1'] }],
    ]);
    expect(platform.callsTo('chat.postEphemeral')).toEqual([
      expect.objectContaining({ channel: CHANNEL_ID, user: MIRA_ID }),
    ]);
  });

  it('record answers and cards taken; cards of which nothing was said are left out', async () => {
    const bot = botUnderTest(platform);
    const opened = answerFormView(sample.answerForm, undefined, CHANNEL_ID, {
      answers: [],
      cardIds: ['card-1'],
    });
    const form = sentForm(opened, {
      'left:card-1': text('2'),
      'worked:card-1': text('1'),
      'blocked:card-1': text('waiting for the key'),
      takeCardIds: { selected_options: [{ value: 'card-2' }] },
    });
    expect(await bot.submit(form)).toEqual([undefined]);
    expect(callsOf(bot.useCases)).toEqual([
      [
        'recordAnswers',
        {
          sprintId: 'sprint-1',
          day: '2026-11-04',
          answers: [
            {
              cardId: 'card-1',
              worked: '1',
              left: '2',
              surprise: '',
              note: '',
              blocked: 'waiting for the key',
            },
          ],
          takeCardIds: ['card-2'],
        },
      ],
    ]);
    await bot.submit(sentForm(answer, { 'left:card-1': { value: null } }));
    expect(bot.useCases.recordAnswers.mock.calls[1]?.[1].answers).toEqual([]);
  });

  it('open more fields for the chosen cards before anything is recorded', async () => {
    const bot = botUnderTest(platform);
    const form = sentForm(answer, {
      'left:card-1': text('2'),
      moreCardIds: { selected_options: [{ value: 'card-1' }] },
    });
    const [ack] = (await bot.submit(form)) as [
      {
        response_action: string;
        view: { blocks: { block_id?: string; element?: { initial_value?: string } }[] };
      },
    ];
    expect(ack.response_action).toBe('update');
    const fieldOf = (name: string) => ack.view.blocks.find(({ block_id }) => block_id === name);
    expect(fieldOf('left:card-1')?.element?.initial_value).toBe('2');
    expect(fieldOf('worked:card-1')).toBeDefined();
    expect(callsOf(bot.useCases).map(([useCase]) => useCase)).toEqual(['answerForm']);
    // Once they are open, the same choice records.
    const opened = sentForm(ack.view as never, {
      'left:card-1': text('2'),
      'worked:card-1': text('1'),
      moreCardIds: { selected_options: [{ value: 'card-1' }] },
    });
    await bot.submit(opened);
    expect(bot.useCases.recordAnswers.mock.calls[0]?.[1].answers).toMatchObject([{ left: '2', worked: '1' }]);
  });

  it('say nothing more about an answer that the day’s prompt shows', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.recordAnswers.mockResolvedValue(sample.recordedInPrompt);
    expect(await bot.submit(sentForm(answer, { 'left:card-1': text('2') }))).toEqual([undefined]);
    expect([...platform.callsTo('chat.postMessage'), ...platform.callsTo('chat.postEphemeral')]).toEqual([]);
  });

  it('ask why a card grew in the same form, with its fields kept', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.recordAnswers.mockResolvedValue(sample.grown);
    const [ack] = (await bot.submit(sentForm(answer, { 'left:card-1': text('6') }))) as [
      { response_action: string; view: { blocks: { block_id?: string }[]; private_metadata: string } },
    ];
    expect(ack.response_action).toBe('update');
    const ids = ack.view.blocks.map(({ block_id }) => block_id);
    expect(ids).toEqual(expect.arrayContaining(['left:card-1', 'surprise:card-1', 'note:card-1']));
    expect(ack.view.private_metadata).toBe(answer.private_metadata);
    expect(platform.callsTo('chat.postEphemeral')).toEqual([]);
  });

  it('pull a card in, drop one, close and cancel the sprint', async () => {
    const bot = botUnderTest(platform);
    await bot.submit(sentForm(pull, { cards: text(`Mend nets, ½, <@${OLE_ID}>\nPaint the buoy, 2`) }));
    await bot.submit(
      sentForm(dropFormView(list), {
        reference: { selected_option: { value: '1' } },
        reason: text('withdrawn'),
      }),
    );
    await bot.submit(sentForm(closeFormView(list)));
    await bot.submit(sentForm(cancelFormView(list), { reason: text('goal obsolete') }));
    expect(callsOf(bot.useCases)).toEqual([
      ['cancelSprint', { sprintId: 'sprint-1', reason: 'goal obsolete' }],
      ['closeSprint', { sprintId: 'sprint-1' }],
      ['dropCard', { sprintId: 'sprint-1', reference: '1', reason: 'withdrawn' }],
      ['pullCards', { sprintId: 'sprint-1', text: `Mend nets, ½, <@${OLE_ID}>\nPaint the buoy, 2` }],
    ]);
  });

  it('close when they come again after what they hold was recorded', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.pullCards.mockRejectedValue(new AlreadyWritten());
    expect(await bot.submit(sentForm(pull))).toEqual([{ response_action: 'clear' }]);
    expect(platform.calls).toEqual([]);
  });

  it('are not carried out any more once somebody was told that nothing was recorded', async () => {
    const memory = eventMemory();
    const keys: string[] = [];
    const rememberEvent: typeof memory.rememberEvent = (key, at) => {
      keys.push(key);
      return memory.rememberEvent(key, at);
    };
    const bot = botUnderTest(platform, { store: fakeStore({ rememberEvent }) });
    bot.useCases.pullCards.mockRejectedValue(new Error('the database went away'));
    const [told] = await bot.submit(sentForm(pull), { trigger_id: 'one' });
    expect(JSON.stringify(told)).toContain('nothing was recorded');
    await bot.submit(sentForm(pull), { trigger_id: 'another' });
    const [key] = keys;
    expect(key).toContain(`${sample.WORKSPACE_ID} form:`);
    expect(keys.filter((one) => one === key)).toHaveLength(2);
  });

  it('say that it isn’t certain what was recorded, but not where a form records nothing', async () => {
    const rememberEvent = () => Promise.reject(new Error('the database went away'));
    const bot = botUnderTest(platform, { store: fakeStore({ rememberEvent }) });
    bot.useCases.pullCards.mockRejectedValue(new Error('the database went away'));
    bot.useCases.previewPlan.mockRejectedValue(new Error('the database went away'));
    const told = async (form: object) => JSON.stringify(await bot.submit(form));
    expect(await told(sentForm(pull))).toContain('it is not certain whether this was recorded');
    expect(await told(sentForm(plan))).toContain('nothing was recorded');
  });

  it('leave nothing that was typed in the log', async () => {
    const bot = botUnderTest(platform);
    await bot.submit(sentForm(pull, { cards: text('Mend nets, 3') }));
    await bot.submit(sentForm(plan, { goal: text('Ferries on time') }));
    bot.useCases.pullCards.mockRejectedValue(new Error('Failed query: insert\nparams: Mend nets'));
    await bot.submit(sentForm(pull, { cards: text('Mend nets, 3') }));
    expect(bot.log.entries().map(({ during }) => during)).toContain('form pull-form');
    expect(bot.log.text()).not.toMatch(/Mend nets|Ferries on time|Repair the tide gauge/);
  });

  it('are acknowledged when they are closed unsent', async () => {
    const bot = botUnderTest(platform);
    const closed = { type: 'view_closed', user: { id: MIRA_ID }, team: { id: sample.WORKSPACE_ID } };
    expect(await bot.push({ ...closed, view: { id: 'V1', callback_id: 'plan-form' } })).toEqual([undefined]);
  });
});

describe('a form that is refused', () => {
  it('stays open with each problem at its field', async () => {
    const bot = botUnderTest(platform);
    const problems: readonly InputProblem[] = [
      { field: 'name', problem: { code: 'sprint-name', most: 80 } },
      {
        field: 'cards',
        problem: { code: 'bad-lines', lines: [{ lineNumber: 2, problem: { code: 'open-quote' } }] },
      },
    ];
    bot.useCases.previewPlan.mockRejectedValue(new Refusal('bad-input', { problems }));
    expect(await bot.submit(sentForm(plan))).toEqual([
      {
        response_action: 'errors',
        errors: {
          name: 'Give the sprint a name of 1 to 80 characters.',
          cards: 'Line 2: A double quote is opened and never closed.',
        },
      },
    ]);
    expect(platform.calls).toEqual([]);
  });

  it('shows a problem of a field that is not there at the same card, else at the first field', async () => {
    const bot = botUnderTest(platform);
    const problems: readonly InputProblem[] = [
      { field: 'surprise:card-1', problem: { code: 'surprise-without-growth' } },
      { field: 'left:card-99', problem: { code: 'note-length', most: 500 } },
    ];
    bot.useCases.recordAnswers.mockRejectedValue(new Refusal('bad-input', { problems }));
    expect(await bot.submit(sentForm(answer))).toEqual([
      {
        response_action: 'errors',
        errors: {
          'left:card-1':
            'The card didn’t grow, so no surprise work came up: leave this at 0. Keep the note within 500 characters.',
        },
      },
    ]);
  });

  it('shows a refusal about no field at the first one, in plain words with names', async () => {
    platform.answer('users.info', { user: { profile: { display_name: 'Mira' } } });
    const bot = botUnderTest(platform);
    const details = { teamName: 'Pier crew', facilitatorIds: [MIRA_ID], act: 'plan' as const };
    bot.useCases.previewPlan.mockRejectedValue(new Refusal('not-a-facilitator', details));
    const [ack] = (await bot.submit(sentForm(plan))) as [{ errors: Record<string, string> }];
    expect(ack.errors.name).toContain('Ask Mira.');
    expect(JSON.stringify(ack.errors)).not.toMatch(/[<`]/);
  });

  it('shows a refusal in place of a form without fields', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.closeSprint.mockRejectedValue(
      new Refusal('sprint-over', { sprintName: 'Harbour 12', state: 'closed' }),
    );
    const [ack] = (await bot.submit(sentForm(closeFormView(list)))) as [{ response_action: string }];
    expect(ack.response_action).toBe('update');
    expect(JSON.stringify(ack)).toContain('Harbour 12');
  });

  it('keeps what was typed when something went wrong on our side, and gives the logged code', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.previewPlan.mockRejectedValue(new Error('the database is gone'));
    const [ack] = (await bot.submit(sentForm(plan))) as [
      { response_action: string; errors: { name: string } },
    ];
    const logged = bot.log.entries().find(({ errorId }) => errorId !== undefined);
    expect(ack.response_action).toBe('errors');
    expect(ack.errors.name).toContain(String(logged?.errorId));
    expect(ack.errors.name).not.toContain('database');
  });

  it.each([
    ['while its repetition may be carried out elsewhere', async () => false],
    ['when the database is gone', () => Promise.reject(new Error('the database is gone'))],
    ['when the database says nothing', () => new Promise<boolean>(() => {})],
  ])('is not said to be unrecorded %s, and keeps what was typed', async (_when, rememberEvent) => {
    const bot = botUnderTest(platform, { store: fakeStore({ rememberEvent }) });
    bot.useCases.pullCards.mockRejectedValue(new Error('the database is gone'));
    const [ack] = await bot.submit(sentForm(pull));
    expect(ack).toMatchObject({
      response_action: 'errors',
      errors: { cards: expect.stringContaining('it is not certain whether this was recorded') },
    });
  });

  it.each([
    ['a context that is no JSON', { ...pull, private_metadata: 'sprint-1' }],
    ['no context', { ...pull, private_metadata: '' }],
    ['a context of another form', { ...pull, private_metadata: '{"teamId":"team-1"}' }],
    ['an unknown form', { ...pull, callback_id: 'long-gone' }],
    ['a form named after a property of every object', { ...pull, callback_id: 'constructor' }],
  ])('says so for %s and does nothing', async (_what, view) => {
    const bot = botUnderTest(platform);
    const [ack] = await bot.submit(sentForm(view));
    expect(callsOf(bot.useCases)).toEqual([]);
    expect(JSON.stringify(ack)).toContain('/loadline');
    expect(bot.log.entries().some(({ level }) => level === 'error')).toBe(false);
  });

  it.each([
    ['no state', { state: undefined }],
    ['fields of odd types', { state: { values: { name: { value: { value: { deep: true } } } } } }],
    ['choices that are no list', { state: { values: { memberIds: { value: { selected_users: 'U1' } } } } }],
    ['inherited names as fields', { state: { values: { constructor: { value: { value: 'x' } } } } }],
  ])('survives %s', async (_what, more) => {
    const bot = botUnderTest(platform);
    expect(await bot.submit({ ...sentForm(setup), ...more })).toHaveLength(1);
    expect(bot.useCases.setUpTeam.mock.calls[0]?.[1]).toMatchObject({
      name: '',
      promptAt: '',
      memberIds: [],
    });
  });
});

describe('a form whose work takes longer than the platform waits', () => {
  /** The work ends only once the form has been acknowledged: if that waited for the work, nothing would end. */
  async function submitSlowly(view: object, result: () => Promise<PulledCards>) {
    const bot = botUnderTest(platform, { answerDue: async () => {} });
    const acknowledged = Promise.withResolvers<void>();
    const slowly = async () => {
      await acknowledged.promise;
      return result();
    };
    bot.useCases.pullCards.mockImplementation(slowly);
    bot.useCases.setUpTeam.mockImplementation(slowly as never);
    return bot.submit(view, {}, acknowledged.resolve);
  }

  it('says that work goes on, then shows and sends the result', async () => {
    const acks = await submitSlowly(sentForm(pull), async () => ({
      heading,
      cards: [sample.line],
      alike: [],
      summary,
      check: sample.pullInCheck,
    }));
    expect(acks).toEqual([expect.objectContaining({ response_action: 'update' })]);
    expect(JSON.stringify(acks)).toContain('Still working');
    expect(JSON.stringify(platform.callsTo('views.update'))).toContain(sample.CARD_TITLE);
    expect(platform.callsTo('chat.postEphemeral')).toHaveLength(1);
  });

  it('shows the form again with what was typed when it is refused', async () => {
    const problems = [{ field: 'name', problem: { code: 'team-name', most: 80 } as const }];
    await submitSlowly(
      sentForm(setup, { name: text('Quay crew'), memberIds: { selected_users: [OLE_ID] } }),
      () => Promise.reject(new Refusal('bad-input', { problems })),
    );
    const [{ view }] = platform.callsTo('views.update') as [
      {
        view: {
          callback_id: string;
          private_metadata: string;
          blocks: { block_id?: string; element?: object }[];
        };
      },
    ];
    expect(view.callback_id).toBe('setup-form');
    expect(view.private_metadata).toBe(setup.private_metadata);
    expect(JSON.stringify(view.blocks)).toContain('Give the team a name');
    const elements = Object.fromEntries(view.blocks.map(({ block_id, element }) => [block_id, element]));
    expect(elements).toMatchObject({
      name: { initial_value: 'Quay crew' },
      memberIds: { initial_users: [OLE_ID] },
    });
    expect(view).not.toHaveProperty('id');
    expect(view).not.toHaveProperty('state');
  });

  it('never shows a refusal under the title of something done', async () => {
    const bot = botUnderTest(platform, { answerDue: async () => {} });
    const acknowledged = Promise.withResolvers<void>();
    bot.useCases.closeSprint.mockImplementation(async () => {
      await acknowledged.promise;
      throw new Refusal('no-draft', {});
    });
    // A form without fields has no place beside which the refusal could be.
    await bot.submit(sentForm(closeFormView(list)), {}, acknowledged.resolve);
    const [{ view }] = platform.callsTo('views.update') as [{ view: { title: { text: string } } }];
    expect(view.title.text).toBe('Not done');
    expect(JSON.stringify(view)).toContain('already been committed to');
  });

  it('sends the refusal when the form was closed in the meantime', async () => {
    platform.refuse('views.update', 'not_found');
    await submitSlowly(sentForm(pull), () => Promise.reject(new Refusal('too-many-cards', { limit: 100 })));
    expect(platform.callsTo('chat.postEphemeral')[0]?.text).toContain('100');
  });
});
