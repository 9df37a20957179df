/** Odds, range, forecast and history: from the command, words, buttons and forms to the use case and back. */

import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/app/refusal.ts';
import { encodeValue } from '../../../src/slack/button-values.ts';
import { ACTIONS } from '../../../src/slack/ids.ts';
import { forecastFormView, rangeFormView } from '../../../src/slack/views/advice-forms.ts';
import { planFormView } from '../../../src/slack/views/planning/plan-forms.ts';
import { problemWords } from '../../../src/words/problems.ts';
import { type BotUnderTest, botUnderTest, sentForm } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import * as sample from '../support/samples.ts';
import { callsOf } from '../support/spy-use-cases.ts';
import { rangeAdvice, STEADY } from '../views/advice-examples.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => platform.reset());
afterAll(() => platform.close());

const { CHANNEL_ID, DIRECT_ID, MIRA_ID, team } = sample;
const here = { place: { channelId: CHANNEL_ID, isDirect: false } };
const text = (value: string) => ({ type: 'plain_text_input', value });

/** The questions that reached the use case, with where they found their team. */
function asked(bot: BotUnderTest): unknown[] {
  return bot.useCases.askAdvice.mock.calls.map(([, where, question]) => [where, question]);
}

function openedForms(): { callback_id: string; private_metadata: string; blocks: object[] }[] {
  return platform.callsTo('views.open').map(({ view }) => view as never);
}

const COMMANDS: [typed: string, question: object][] = [
  ['odds', { about: 'odds' }],
  ['history', { about: 'history' }],
  ['range', { about: 'range' }],
  ['range 6 away', { about: 'range', awayDays: 6 }],
  ['range 2,5 days off', { about: 'range', awayDays: 2.5 }],
  ['range 2026-11-30', { about: 'range', startsOn: '2026-11-30' }],
  [
    'range 2026-11-30 2026-12-11 6 away',
    { about: 'range', startsOn: '2026-11-30', endsOn: '2026-12-11', awayDays: 6 },
  ],
  [
    'Range from 2026-11-30 to 2026-12-11, with 6 days away and 5 off',
    { about: 'range', startsOn: '2026-11-30', endsOn: '2026-12-11', awayDays: 11 },
  ],
  ['range 6 away 2026-11-30', { about: 'range', startsOn: '2026-11-30', awayDays: 6 }],
  ['forecast 120', { about: 'forecast', backlogPoints: 120 }],
  ['forecast 12,5 points', { about: 'forecast', backlogPoints: 12.5 }],
  ['forecast 1,200 points left', { about: 'forecast', backlogPoints: 1200 }],
  ['forecast 100 pts', { about: 'forecast', backlogPoints: 100 }],
  ['forecast 120 growing 5', { about: 'forecast', backlogPoints: 120, growthPoints: 5 }],
  [
    'forecast 120 points, growing by 5 points per sprint',
    { about: 'forecast', backlogPoints: 120, growthPoints: 5 },
  ],
  ['forecast 120 by 2027-03-31', { about: 'forecast', backlogPoints: 120, byDay: '2027-03-31' }],
  [
    'forecast 120 points by 2027-03-31, growing 5',
    { about: 'forecast', backlogPoints: 120, growthPoints: 5, byDay: '2027-03-31' },
  ],
  ['forecast 120 by 31 March', { about: 'forecast', backlogPoints: 120, byDay: '31 March' }],
  ['forecast by 31 March', { about: 'forecast', byDay: '31 March' }],
  [
    'forecast 120 by 15/1, growing 5',
    { about: 'forecast', backlogPoints: 120, growthPoints: 5, byDay: '15/1' },
  ],
  [
    'forecast How much until 2027-03-31, using 60%, growing 2',
    { about: 'forecast', growthPoints: 2, sharePercent: 60, byDay: '2027-03-31' },
  ],
  ['forecast how many points by Friday', { about: 'forecast', byDay: 'Friday' }],
  [
    'forecast 120 before Dec 18th, growing by 5',
    { about: 'forecast', backlogPoints: 120, growthPoints: 5, byDay: 'Dec 18th' },
  ],
  ['range 30 Nov - 11 Dec, 6 away', { about: 'range', startsOn: '30 nov', endsOn: '11 dec', awayDays: 6 }],
  [
    'range 6 away 7–18 December',
    { about: 'range', startsOn: '7 december', endsOn: '18 december', awayDays: 6 },
  ],
  ['range 20', { about: 'range', points: 20 }],
  ['range 20 pts', { about: 'range', points: 20 }],
  ['range at 20.5 points', { about: 'range', points: 20.5 }],
  ['range for 20 points, 6 away', { about: 'range', points: 20, awayDays: 6 }],
  ['range 30 Nov 20', { about: 'range', startsOn: '30 nov', points: 20 }],
  ['range from tomorrow', { about: 'range', startsOn: 'tomorrow' }],
  ['forecast 120 using 60%', { about: 'forecast', backlogPoints: 120, sharePercent: 60 }],
  [
    'forecast 120 points with 62.5% of our velocity, growing 2',
    { about: 'forecast', backlogPoints: 120, growthPoints: 2, sharePercent: 62.5 },
  ],
  ['forecast 120 growing 0', { about: 'forecast', backlogPoints: 120, growthPoints: 0 }],
  [
    'forecast 120 growing 2-8',
    { about: 'forecast', backlogPoints: 120, growthPoints: 2, growthMostPoints: 8 },
  ],
  [
    'forecast 120 growing by 2 to 8.5 points a sprint',
    { about: 'forecast', backlogPoints: 120, growthPoints: 2, growthMostPoints: 8.5 },
  ],
  ['forecast 120 +5', { about: 'forecast', backlogPoints: 120, growthPoints: 5 }],
  ['forecast 120 and grows 2.5 a sprint', { about: 'forecast', backlogPoints: 120, growthPoints: 2.5 }],
];

describe('the command', () => {
  it.each(COMMANDS)('`%s` asks that question', async (typed, question) => {
    const bot = botUnderTest(platform);
    await bot.command(typed);
    expect(asked(bot)).toEqual([[here, question]]);
    expect(platform.responses.map(({ response_type }) => response_type)).toEqual(['ephemeral']);
  });

  it.each([
    ['range soon', '“soon” can’t be understood'],
    ['range 30/11/2026', '“30/11/2026” can’t be understood. Write days like “30 Nov” or 2026-11-30.'],
    ['range 30 Nov 11 Dec tomorrow', 'two days at most'],
    [
      'range 20 30',
      'one number of points only. For days off and away, of all members together, write “6 away”',
    ],
    ['range 20.3', '“20.3” can’t be understood'],
    ['range away', 'Say how many days are off or away'],
    ['range six away', '“six” isn’t a number of days'],
    ['range 2026-11-30 2026-12-11 2026-12-12', 'two days at most'],
    [`range ${'x'.repeat(3_000)}`, 'can’t be understood'],
    ['forecast soon', '“soon” isn’t a number'],
    ['forecast 1.200', '1200 or 1.2'],
    ['forecast growing 5', 'how many points are left to do, or by which day you ask'],
    ['forecast how much', '“how much” isn’t a number'],
    ['forecast 120 by 2027-03-31 by 2027-04-30', 'one day only'],
    ['forecast 120 by spring', '“spring” isn’t a day. Write it like “31 March”', '120 by 31 March'],
    ['forecast by spring', '“spring” isn’t a day', '120 by 31 March'],
    ['forecast 120 using 60% using 50%', 'only once which share'],
    ['forecast 120 growing', 'by how many points it grows'],
    ['forecast 120 growing 5 growing 6', 'only once'],
    ['forecast 120 5', '“120 5” isn’t a number'],
    ['forecast Harbour lights 50', '“Harbour lights 50” isn’t a number', 'keep Harbour lights 50'],
  ])('refuses `%s` and shows how it is written', async (typed, problem, wanted?: string) => {
    const bot = botUnderTest(platform);
    await bot.command(typed);
    expect(asked(bot)).toEqual([]);
    const said = String(platform.responses[0]?.text);
    expect(said).toContain(problem);
    const example = wanted ?? (typed.startsWith('range') ? '30 Nov - 11 Dec, 6 away' : '120 growing 5');
    expect(said).toContain(`/loadline ${typed.split(' ')[0]} ${example}`);
    expect(said.length).toBeLessThan(500);
  });

  it('answers to the asker alone, with the chart uploaded privately and a button to share', async () => {
    const bot = botUnderTest(platform);
    await bot.command('range');
    expect(platform.uploads).toHaveLength(1);
    expect(platform.callsTo('files.completeUploadExternal')[0]).not.toHaveProperty('channel_id');
    const [response] = platform.responses as [
      { text: string; blocks: { type: string; slack_file?: object; alt_text?: string }[] },
    ];
    expect(response.text).toMatch(/^At \d+ points: .* Your last commitment was 21\./);
    expect(response.blocks.find(({ type }) => type === 'image')).toMatchObject({
      slack_file: { id: 'F1' },
      alt_text: 'At 25 points: 8 in 10 to keep it.',
    });
    expect(JSON.stringify(response.blocks)).toContain(ACTIONS.shareAdvice);
  });

  it.each(['the chart can not be uploaded', 'there is nothing to draw', 'drawing fails'])(
    'answers in words when %s',
    async (what) => {
      const bot = botUnderTest(platform);
      if (what.startsWith('the chart')) platform.refuse('files.getUploadURLExternal', 'missing_scope');
      if (what.startsWith('there')) bot.useCases.adviceChart.mockResolvedValue(undefined);
      if (what.startsWith('drawing')) bot.useCases.adviceChart.mockRejectedValue(new Error('no font'));
      await bot.command('range');
      const [response] = platform.responses as [{ text: string; blocks: { type: string }[] }];
      expect(response.blocks.some(({ type }) => type === 'image')).toBe(false);
      expect(response.text).toContain('Your last commitment was 21');
    },
  );

  it('`forecast` alone opens the form, and its answer finds its way back', async () => {
    const bot = botUnderTest(platform);
    await bot.command('forecast');
    expect(callsOf(bot.useCases)).toEqual([['forecastForm', here]]);
    expect(openedForms()).toMatchObject([
      {
        callback_id: 'forecast-form',
        private_metadata: JSON.stringify({ teamId: team.id, replyTo: CHANNEL_ID }),
      },
    ]);
    expect(platform.responses).toEqual([]);
  });

  it('passes on a refusal of the use case', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.askAdvice.mockRejectedValue(
      new Refusal('bad-input', {
        problems: [{ field: 'endsOn', problem: { code: 'sprint-gone-by', last: '2020-01-01' } }],
      }),
    );
    await bot.command('range 2020-01-01');
    expect(platform.responses[0]?.text).toContain('That sprint is over: Wed 1 Jan has gone by.');
  });
});

describe('words in direct messages', () => {
  it('ask as the command does', async () => {
    const bot = botUnderTest(platform);
    await bot.say('forecast 120 growing 5');
    expect(asked(bot)).toEqual([
      [
        { place: { channelId: DIRECT_ID, isDirect: true } },
        { about: 'forecast', backlogPoints: 120, growthPoints: 5 },
      ],
    ]);
  });

  it('say what to type for a forecast, since no form can open there, and offer one by a button', async () => {
    const bot = botUnderTest(platform);
    await bot.say('forecast');
    expect(openedForms()).toEqual([]);
    const [said] = platform.callsTo('chat.postMessage') as unknown as [{ text: string; blocks: object[] }];
    expect(said.text).toContain('/loadline forecast 120 growing 5');
    const [button] = (said.blocks[1] as { elements: { action_id: string; value: string }[] }).elements;
    expect(button).toMatchObject({
      action_id: 'open-forecast-form',
      value: encodeValue({ channelId: CHANNEL_ID }),
    });
  });
});

const place = encodeValue({ channelId: CHANNEL_ID });
const range = { about: 'range', startsOn: '2026-11-30', awayDays: 6 } as const;
const forecast = { about: 'forecast', backlogPoints: 120, growthPoints: 5 } as const;
const asking = (question: typeof range | typeof forecast) => encodeValue({ teamId: 'team-1', question });

describe('buttons', () => {
  it.each([
    [ACTIONS.showOdds, { about: 'odds' }],
    [ACTIONS.showRange, { about: 'range' }],
    [ACTIONS.showHistory, { about: 'history' }],
  ])('%s asks its question of the team that it belongs to', async (action, question) => {
    const bot = botUnderTest(platform);
    await bot.press(action, place);
    expect(asked(bot)).toEqual([[here, question]]);
    expect(platform.responses).toHaveLength(1);
  });

  it('open the form of the forecast', async () => {
    const bot = botUnderTest(platform);
    await bot.press('open-forecast-form', place);
    expect(openedForms()).toMatchObject([{ callback_id: 'forecast-form' }]);
  });

  it('share the very question that was answered', async () => {
    const bot = botUnderTest(platform);
    await bot.press(ACTIONS.shareAdvice, asking(forecast));
    expect(callsOf(bot.useCases)).toEqual([['shareAdvice', { teamId: 'team-1', question: forecast }]]);
    expect(platform.responses[0]?.text).toContain('goes to the team’s channel');
  });

  it('say how the very question was answered, to the person who asks', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.askAdvice.mockResolvedValue(rangeAdvice(STEADY, 6));
    await bot.press(ACTIONS.explainAdvice, asking(range));
    expect(asked(bot)).toEqual([[{ teamId: 'team-1' }, range]]);
    expect(platform.responses).toMatchObject([{ response_type: 'ephemeral' }]);
    expect(platform.responses[0]?.text).toContain('What this doesn’t know');
    expect(platform.uploads).toEqual([]);
  });

  it('open the range’s form with the days of the question', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.askAdvice.mockResolvedValue(rangeAdvice(STEADY, 6));
    await bot.press(ACTIONS.changeRange, asking(range));
    expect(asked(bot)).toEqual([[{ teamId: 'team-1' }, range]]);
    const [form] = openedForms();
    expect(form?.callback_id).toBe('range-form');
    expect(JSON.stringify(form?.blocks)).toContain('"initial_date":"2026-11-30"');
    expect(JSON.stringify(form?.blocks)).toContain('"initial_value":"6"');
  });

  it('open it with the next sprint when the one of the question is over by now', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.askAdvice.mockRejectedValueOnce(
      new Refusal('bad-input', {
        problems: [{ field: 'endsOn', problem: { code: 'sprint-gone-by', last: '2020-01-01' } }],
      }),
    );
    await bot.press(ACTIONS.changeRange, asking(range));
    expect(asked(bot)).toEqual([
      [{ teamId: 'team-1' }, range],
      [{ teamId: 'team-1' }, { about: 'range' }],
    ]);
    expect(openedForms()).toMatchObject([{ callback_id: 'range-form' }]);
  });

  it('but open nothing for people who may not read the team’s numbers', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.askAdvice.mockRejectedValue(new Refusal('not-a-member', { teamName: 'Pier crew' }));
    await bot.press(ACTIONS.changeRange, asking(range));
    expect(bot.useCases.askAdvice).toHaveBeenCalledTimes(1);
    expect(openedForms()).toEqual([]);
    expect(platform.responses[0]?.text).toContain('Only members of Pier crew');
  });

  it('open the forecast’s form with the numbers of the question', async () => {
    const bot = botUnderTest(platform);
    await bot.press(ACTIONS.changeForecast, asking(forecast));
    expect(callsOf(bot.useCases)).toEqual([['forecastForm', { teamId: 'team-1' }]]);
    expect(JSON.stringify(openedForms()[0]?.blocks)).toContain('"initial_value":"120"');
  });

  it.each([
    ['a question of another kind', ACTIONS.changeRange, asking(forecast)],
    ['a question of another kind', ACTIONS.changeForecast, asking(range)],
    ['an unknown question', ACTIONS.shareAdvice, '{"teamId":"team-1","question":{"about":"people"}}'],
    [
      'more than the question',
      ACTIONS.shareAdvice,
      '{"teamId":"t","question":{"about":"odds","of":"U0OLE"}}',
    ],
    [
      'an amount that is none',
      ACTIONS.shareAdvice,
      '{"teamId":"t","question":{"about":"forecast","backlogPoints":-1,"growthPoints":0}}',
    ],
    ['no question', ACTIONS.explainAdvice, '{"teamId":"team-1"}'],
    ['no team', ACTIONS.shareAdvice, '{"question":{"about":"odds"}}'],
  ])('refuse %s', async (_what, action, value) => {
    const bot = botUnderTest(platform);
    await bot.press(action, value);
    expect(callsOf(bot.useCases)).toEqual([]);
    expect(platform.responses[0]?.text).toContain('/loadline');
  });
});

const rangeForm = rangeFormView(rangeAdvice(STEADY, 6), CHANNEL_ID);
const forecastForm = forecastFormView({ team, velocities: [22, 25], keptNames: [] }, forecast, CHANNEL_ID);

describe('forms', () => {
  it('ask for the range of other days', async () => {
    const bot = botUnderTest(platform);
    expect(await bot.submit(sentForm(rangeForm, { awayDays: text(' 2½ ') }))).toEqual([undefined]);
    const question = { about: 'range', startsOn: '2026-11-30', endsOn: '2026-12-11', awayDays: 2.5 };
    expect(asked(bot)).toEqual([[{ teamId: 'team-harbour' }, question]]);
    expect(platform.callsTo('chat.postEphemeral')[0]).toMatchObject({ channel: CHANNEL_ID, user: MIRA_ID });
    expect(platform.uploads).toHaveLength(1);
  });

  it('take empty days off and away for not known', async () => {
    const bot = botUnderTest(platform);
    await bot.submit(sentForm(rangeForm, { awayDays: text('') }));
    expect(bot.useCases.askAdvice.mock.calls[0]?.[2]).toMatchObject({ awayDays: undefined });
  });

  it('leave it to the use case to refuse days that are no number, at their field', async () => {
    const bot = botUnderTest(platform);
    const problem = { field: 'awayDays', problem: { code: 'no-away-days' } } as const;
    bot.useCases.askAdvice.mockRejectedValue(new Refusal('bad-input', { problems: [problem] }));
    const [ack] = await bot.submit(sentForm(rangeForm, { awayDays: text('some') }));
    expect(bot.useCases.askAdvice.mock.calls[0]?.[2]).toMatchObject({ awayDays: Number.NaN });
    expect(ack).toEqual({ response_action: 'errors', errors: { awayDays: problemWords(problem.problem) } });
  });

  it('ask for the forecast, growth left empty being measured', async () => {
    const bot = botUnderTest(platform);
    await bot.submit(sentForm(forecastForm));
    await bot.submit(sentForm(forecastForm, { backlogPoints: text('80 points'), growthPoints: text(' ') }));
    expect(asked(bot)).toEqual([
      [{ teamId: 'team-1' }, forecast],
      [{ teamId: 'team-1' }, { about: 'forecast', backlogPoints: 80 }],
    ]);
  });

  it('show at each field what is no number, and ask nothing', async () => {
    const bot = botUnderTest(platform);
    const form = sentForm(forecastForm, { backlogPoints: text('lots'), growthPoints: text('a bit') });
    const [ack] = (await bot.submit(form)) as [{ errors: Record<string, string> }];
    expect(Object.keys(ack.errors).sort()).toEqual(['backlogPoints', 'growthPoints']);
    expect(ack.errors.backlogPoints).toContain('“lots” isn’t a number');
    expect(callsOf(bot.useCases)).toEqual([]);
  });

  it('plan with the days off and away', async () => {
    const bot = botUnderTest(platform);
    const plan = planFormView({ team, draft: sample.planInput, leftOver: 0 }, CHANNEL_ID);
    await bot.submit(sentForm(plan, { awayDays: text('6') }));
    expect(bot.useCases.previewPlan.mock.calls[0]?.[1]).toMatchObject({ awayDays: '6' });
  });
});
