/** Bodies of work that a team keeps: from the command, buttons and the form to the use case and back. */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { encodeValue } from '../../../src/slack/button-values.ts';
import { ACTIONS } from '../../../src/slack/ids.ts';
import { bodyFormView } from '../../../src/slack/views/body-views.ts';
import { aBody, ordinaryKept } from '../../charts/kept-examples.ts';
import { botUnderTest, sentForm } from '../support/bot-under-test.ts';
import { FakePlatform } from '../support/fake-platform.ts';
import * as sample from '../support/samples.ts';
import { callsOf } from '../support/spy-use-cases.ts';

const platform = new FakePlatform();
beforeAll(() => platform.listen());
afterEach(() => platform.reset());
afterAll(() => platform.close());

const { CHANNEL_ID, team } = sample;
const place = { channelId: CHANNEL_ID, isDirect: false };
const text = (value: string) => ({ type: 'plain_text_input', value });
const chosen = (value: string) => ({ type: 'static_select', selected_option: { value } });

function opened(): { callback_id: string; private_metadata: string }[] {
  return platform.callsTo('views.open').map(({ view }) => view as never);
}

describe('`forecast` with another word', () => {
  it.each([
    ['keep Harbour lights 80', 'keepBody', { place, name: 'Harbour lights', leftPoints: 80 }],
    ['keep “Phase 2” 80', 'keepBody', { place, name: 'Phase 2', leftPoints: 80 }],
    ['Keep Phase 2, 80.5 points left', 'keepBody', { place, name: 'Phase 2', leftPoints: 80.5 }],
    ['keep 1 65', 'keepBody', { place, name: '1', leftPoints: 65 }],
    [
      'keep Harbour lights 80 points, growing by 5 a sprint',
      'keepBody',
      { place, name: 'Harbour lights', leftPoints: 80, growth: { points: 5, mostPoints: undefined } },
    ],
    [
      'keep Harbour lights 1,200 growing 2-8 using 62.5%',
      'keepBody',
      {
        place,
        name: 'Harbour lights',
        leftPoints: 1200,
        growth: { points: 2, mostPoints: 8 },
        sharePercent: 62.5,
      },
    ],
    [
      'keep Growing mussels 80 using 60% of our sprints, growing 0',
      'keepBody',
      {
        place,
        name: 'Growing mussels',
        leftPoints: 80,
        growth: { points: 0, mostPoints: undefined },
        sharePercent: 60,
      },
    ],
    ['done Harbour lights', 'endBody', { place, reference: 'Harbour lights', how: 'done' }],
    ['done', 'endBody', { place, reference: '', how: 'done' }],
    ['forget 2', 'endBody', { place, reference: '2', how: 'removed' }],
    ['rename 1 to Pier lights', 'renameBody', { place, reference: '1', name: 'Pier lights' }],
    ['together Harbour lights', 'jointForecast', { place, reference: 'Harbour lights' }],
    ['order 2 1', 'orderBodies', { place, references: ['2', '1'] }],
    ['order Beacons, Harbour lights', 'orderBodies', { place, references: ['Beacons', 'Harbour lights'] }],
    ['order Beacons', 'orderBodies', { place, references: ['Beacons'] }],
  ])('%s', async (typed, useCase, input) => {
    const bot = botUnderTest(platform);
    await bot.command(`forecast ${typed}`);
    expect(callsOf(bot.useCases)).toContainEqual([useCase, input]);
    expect(platform.responses).toHaveLength(1);
  });

  it.each([
    ['keep Harbour lights', 'how many points are left', 'keep Lighthouse 80'],
    ['keep Harbour lights 80 by 2027-03-31', 'how many points are left', 'keep Lighthouse 80'],
    ['rename Harbour lights', 'what it’s to be called', 'rename 1 to Beacons'],
  ])('says what is missing of `%s`', async (typed, problem, example) => {
    const bot = botUnderTest(platform);
    await bot.command(`forecast ${typed}`);
    expect(callsOf(bot.useCases)).toEqual([]);
    expect(platform.responses[0]?.text).toContain(problem);
    expect(platform.responses[0]?.text).toContain(`/loadline forecast ${example}`);
  });

  it('`keep` alone opens the form', async () => {
    const bot = botUnderTest(platform);
    await bot.command('forecast keep');
    expect(opened()).toMatchObject([{ callback_id: 'keep-form' }]);
  });
});

describe('`forecast` alone', () => {
  it.each(['typed', 'by its name', 'list', 'pressed'])(
    'shows what is kept, where anything is: %s',
    async (how) => {
      const bot = botUnderTest(platform);
      bot.useCases.forecastForm.mockResolvedValue({ team, velocities: [22], keptNames: ['Harbour lights'] });
      bot.useCases.askAdvice.mockResolvedValue(ordinaryKept);
      const words = { typed: 'forecast', 'by its name': 'forecast harbour', list: 'forecast list' }[how];
      if (words !== undefined) await bot.command(words);
      else await bot.press(ACTIONS.showKept, encodeValue({ channelId: CHANNEL_ID }));
      expect(opened()).toEqual([]);
      expect(platform.responses[0]?.text).toContain(
        'Harbour lights, 80 points left: likely by 31 December 2026',
      );
      expect(JSON.stringify(platform.responses[0])).toContain(ACTIONS.changeBody);
    },
  );

  it('opens the form of a forecast by its button where nothing is kept', async () => {
    const bot = botUnderTest(platform);
    await bot.press(ACTIONS.showKept, encodeValue({ channelId: CHANNEL_ID }));
    expect(opened()).toMatchObject([{ callback_id: 'forecast-form' }]);
  });
});

describe('the form', () => {
  it('opens for a body of work that is kept, and for a forecast that is to be', async () => {
    const bot = botUnderTest(platform);
    bot.useCases.bodyForm.mockResolvedValue({ team, body: aBody(), turn: 1 });
    await bot.press(ACTIONS.changeBody, encodeValue({ bodyId: 'body-1' }));
    expect(callsOf(bot.useCases)).toEqual([['bodyForm', { bodyId: 'body-1' }]]);
    const [form] = opened();
    expect(JSON.parse(form?.private_metadata ?? '')).toMatchObject({ teamId: team.id, bodyId: 'body-1' });
    const question = { about: 'forecast', backlogPoints: 120, growthPoints: 5 } as const;
    bot.useCases.bodyForm.mockResolvedValue({ team, body: undefined, turn: undefined });
    await bot.press(ACTIONS.keepForecast, encodeValue({ teamId: team.id, question }));
    expect(JSON.stringify(opened()[1])).toContain('"initial_value":"120"');
  });

  it('keeps a new one, and changes one that is kept', async () => {
    const bot = botUnderTest(platform);
    const blank = bodyFormView({ team, body: undefined, turn: undefined }, undefined, CHANNEL_ID);
    await bot.submit(
      sentForm(blank, { name: text('Beacons'), backlogPoints: text('80 points'), growthPoints: text('2-8') }),
    );
    const held = bodyFormView({ team, body: aBody({ sharePercent: 60 }), turn: 2 }, undefined, CHANNEL_ID);
    await bot.submit(sentForm(held, { backlogPoints: text('65'), turn: text('1') }));
    expect(callsOf(bot.useCases).filter(([name]) => name === 'keepBody')).toEqual([
      [
        'keepBody',
        {
          teamId: team.id,
          name: 'Beacons',
          leftPoints: 80,
          growth: { points: 2, mostPoints: 8 },
          sharePercent: 100,
          turn: undefined,
        },
      ],
      [
        'keepBody',
        {
          bodyId: 'body-1',
          name: 'Harbour lights',
          leftPoints: 65,
          growth: 'measured',
          sharePercent: 60,
          turn: 1,
        },
      ],
    ]);
  });

  it.each(['done', 'removed'])('says of one that it is %s', async (how) => {
    const bot = botUnderTest(platform);
    const held = bodyFormView({ team, body: aBody(), turn: 1 }, undefined, CHANNEL_ID);
    await bot.submit(sentForm(held, { state: chosen(how) }));
    expect(callsOf(bot.useCases)).toEqual([['endBody', { bodyId: 'body-1', how }]]);
  });

  it('says at the field what is no number', async () => {
    const bot = botUnderTest(platform);
    const blank = bodyFormView({ team, body: undefined, turn: undefined }, undefined, CHANNEL_ID);
    const sent = sentForm(blank, { name: text('Beacons'), backlogPoints: text('some') });
    expect(await bot.submit(sent)).toEqual([
      { response_action: 'errors', errors: { backlogPoints: expect.stringContaining('isn’t a number') } },
    ]);
  });
});
