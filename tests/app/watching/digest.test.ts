import { describe, expect, test } from 'vitest';
import { dropCard } from '../../../src/app/cards/change-cards.ts';
import { pullCards } from '../../../src/app/cards/pull-cards.ts';
import { sayDaysOff } from '../../../src/app/days-off/say-days-off.ts';
import { setMeasures } from '../../../src/app/team/set-measures.ts';
import type { LoadOutlook } from '../../../src/app/watching/load-outlook.ts';
import { setDigest } from '../../../src/app/watching/set-digest.ts';
import { newWords } from '../../../src/app/watching/watch.ts';
import type { LoadSignal } from '../../../src/forecast/pace.ts';
import { postMessage } from '../../../src/slack/views/post-message.ts';
import { undefinedBecause } from '../../../src/sprint/undefined-value.ts';
import { actorOf, CHANNEL, harnessForEach, problemsOf, refusalOf } from '../../support/app-harness.ts';
import { typedMeasures } from '../../support/typed-measures.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');

async function watched(digestAt = '08:30') {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team);
  await setDigest(h.deps, ana, { teamId: team.id, digestAt });
  return { h, team, sprint };
}

const digestsTo = (h: Awaited<ReturnType<typeof watched>>['h']) =>
  h.messagesTo('ana').flatMap((content) => (content.kind === 'digest' ? [content.digest] : []));

describe('the morning digest', () => {
  test('comes at the time that the facilitator chose, once on each working day of the sprint', async () => {
    const { h } = await watched();
    for (const at of ['2026-11-02T08:29:00Z', '2026-11-02T08:30:00Z', '2026-11-02T10:00:00Z'])
      await h.pass(at);
    await h.pass('2026-11-03T08:30:00Z');
    await h.pass('2026-11-07T08:30:00Z');
    await h.pass('2026-11-09T08:30:00Z');
    expect(digestsTo(h).map(({ status }) => status.on)).toEqual(['2026-11-02', '2026-11-03', '2026-11-09']);
    expect(h.kindsTo('ben')).not.toContain('digest');
  });

  test('comes to nobody who has not asked for it, and to nobody any more who ended it', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await h.plan(team);
    await h.pass('2026-11-02T09:15:00Z');
    expect(h.kindsTo('ana')).not.toContain('digest');
    await setDigest(h.deps, ana, { place: CHANNEL, digestAt: '8:30' });
    await h.pass('2026-11-03T08:30:00Z');
    await setDigest(h.deps, ana, { place: CHANNEL, digestAt: '' });
    await h.pass('2026-11-04T08:30:00Z');
    expect(digestsTo(h)).toHaveLength(1);
  });

  test('comes of a sprint that is planned later as well', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await setDigest(h.deps, ana, { teamId: team.id, digestAt: '08:30' });
    await h.plan(team);
    await h.pass('2026-11-02T08:00:00Z');
    await h.pass('2026-11-02T08:30:00Z');
    expect(digestsTo(h)).toHaveLength(1);
  });

  test('skips the facilitator’s own days off', async () => {
    const { h } = await watched();
    await sayDaysOff(h.deps, ana, { place: CHANNEL, words: '3 Nov' });
    for (const day of ['02', '03', '04']) await h.pass(`2026-11-${day}T08:30:00Z`);
    expect(digestsTo(h).map(({ status }) => status.on)).toEqual(['2026-11-02', '2026-11-04']);
  });

  test('names open cards that have not moved for three working days, and no others', async () => {
    const { h, sprint } = await watched();
    await h.pass('2026-11-03T08:30:00Z');
    await h.answer('ben', sprint.id, '2026-11-03', { 1: { left: '3' } });
    await h.pass('2026-11-05T08:30:00Z');
    expect(
      digestsTo(h)
        .at(-1)
        ?.still.map(({ card, days }) => [card.number, days]),
    ).toEqual([
      [2, 3],
      [3, 3],
    ]);
    await dropCard(h.deps, ana, { place: CHANNEL, reference: '2', reason: 'the office withdrew it' });
    await h.pass('2026-11-09T08:30:00Z');
    expect(
      digestsTo(h)
        .at(-1)
        ?.still.map(({ card, days }) => [card.number, days]),
    ).toEqual([
      [3, 5],
      [1, 3],
    ]);
  });

  test('says how many answered the working day before, unless all did, and that the last day has come', async () => {
    const { h, sprint } = await watched();
    const said = async (day: string) => {
      await h.pass(`2026-11-${day}T08:30:00Z`);
      const content = h.messagesTo('ana').findLast(({ kind }) => kind === 'digest');
      const { text } = postMessage(content as NonNullable<typeof content>);
      return text.split('\n').filter((line) => /answered on|last day/.test(line));
    };
    // On the first day nobody is asked.
    expect(await said('02')).toEqual([]);
    expect(await said('03')).toEqual([]);
    await h.pass('2026-11-03T09:15:00Z');
    expect(await said('04')).toEqual([
      'Nobody answered on Tue 3 Nov, so the cards may be further than this says.',
    ]);
    await h.pass('2026-11-04T09:15:00Z');
    await h.answer('ben', sprint.id, '2026-11-04', { 1: { left: '3' } });
    expect(await said('05')).toEqual([
      '1 of 2 members answered on Wed 4 Nov, so some cards may be further than this says.',
    ]);
    await h.pass('2026-11-12T09:15:00Z');
    await h.answer('ben', sprint.id, '2026-11-12', { 1: { left: '2' } });
    await h.answer('chi', sprint.id, '2026-11-12', { 2: { left: '2' } });
    expect(await said('13')).toEqual(['Today is the last day: the sprint closes at 17:00.']);
  });

  test('is refused to members who don’t facilitate, and at a time that is none', async () => {
    const { h, team } = await watched();
    await refusalOf(
      setDigest(h.deps, actorOf('ben'), { teamId: team.id, digestAt: '08:30' }),
      'not-a-facilitator',
    );
    expect(await problemsOf(setDigest(h.deps, ana, { teamId: team.id, digestAt: 'soon' }))).toHaveProperty(
      'digestAt',
    );
  });
});

describe('a word in between', () => {
  test('says once that a ceiling is crossed, within the hour', async () => {
    const { h } = await watched();
    await h.pass('2026-11-02T08:30:00Z');
    await pullCards(h.deps, ana, { place: CHANNEL, text: 'Fog horn, 5, @Ben' });
    await h.pass('2026-11-02T09:30:00Z');
    await h.pass('2026-11-02T10:30:00Z');
    await h.pass('2026-11-03T10:30:00Z');
    const words = h.messagesTo('ana').filter(({ kind }) => kind === 'watch-word');
    expect(words).toMatchObject([{ word: 'above-pullInRatio', crossed: { value: 0.5, ceiling: 0.2 } }]);
  });

  const none = {
    ratios: {
      surpriseRatio: undefinedBecause('no-commitment'),
      pullInRatio: undefinedBecause('no-commitment'),
    },
  };
  const THRESHOLDS = { surpriseRatioAtMost: 0.2, pullInRatioAtMost: 0.2 };
  const watch = {
    sprintId: 'sprint-12',
    nextAt: new Date('2026-11-03T10:00:00Z'),
    lastAt: new Date('2026-11-03T09:00:00Z'),
    signal: 'light' as LoadSignal | undefined,
    signalToldOn: undefined as string | undefined,
    ceilingsTold: [],
  };
  const pace = (signal: LoadSignal): LoadOutlook => ({
    from: 'pace',
    pace: { signal, projectedLeftPoints: 0, daysGone: 6, isEarly: false },
    ownSprints: 0,
    neededSprints: 3,
  });
  const look = (before: typeof watch, day: string, signal: LoadSignal) =>
    newWords(before, day, pace(signal), none as never, THRESHOLDS as never);

  test('says that the load signal has turned, and what is first seen is no turn', () => {
    expect(look({ ...watch, signal: undefined }, '2026-11-03', 'heavy')).toMatchObject({
      words: [],
      watch: { signal: 'heavy' },
    });
    expect(look(watch, '2026-11-03', 'heavy').words).toEqual(['turned-heavy']);
    expect(look(watch, '2026-11-03', 'light').words).toEqual([]);
  });

  test('of a signal that wavers comes once a day at most', () => {
    const first = look(watch, '2026-11-03', 'on the line');
    expect(first.words).toEqual(['turned-on-the-line']);
    const back = look(first.watch as typeof watch, '2026-11-03', 'light');
    const forth = look(back.watch as typeof watch, '2026-11-03', 'on the line');
    expect([back.words, forth.words]).toEqual([[], []]);
    expect(look(forth.watch as typeof watch, '2026-11-04', 'on the line').words).toEqual([]);
    expect(look(back.watch as typeof watch, '2026-11-04', 'light').words).toEqual(['turned-light']);
  });
});

describe('the weekly line', () => {
  const wanted = async (plan = {}) => {
    const h = harness();
    const team = await h.setUpTeam();
    await setMeasures(h.deps, ana, { teamId: team.id, ...typedMeasures({ weeklyLine: 'yes' }) });
    const { sprint } = await h.plan(team, plan);
    return { h, team, sprint };
  };
  const lines = (h: Awaited<ReturnType<typeof wanted>>['h']) =>
    h.messagesTo(CHANNEL).flatMap((content) => (content.kind === 'weekly-line' ? [content.status.on] : []));

  test('comes to the channel once, at closing time on Friday, and not on the sprint’s last day', async () => {
    const { h } = await wanted();
    for (let day = 2; day <= 13; day += 1)
      for (const time of ['09:15', '16:59', '17:00', '18:30'])
        await h.pass(`2026-11-${String(day).padStart(2, '0')}T${time}:00Z`);
    expect(lines(h)).toEqual(['2026-11-06']);
    expect(h.kindsTo('ana')).not.toContain('digest');
    expect(h.kindsTo('ana')).not.toContain('watch-word');
  });

  test('comes to no channel of a team that has not asked for it', async () => {
    const { h } = await watched();
    await h.pass('2026-11-06T09:15:00Z');
    await h.pass('2026-11-06T17:00:00Z');
    expect(lines(h)).toEqual([]);
  });

  test('comes late on the same day after an outage, and not at all on the next', async () => {
    const { h } = await wanted({ endsOn: '2026-11-27' });
    await h.pass('2026-11-05T17:00:00Z');
    await h.pass('2026-11-06T22:40:00Z');
    expect(lines(h)).toEqual(['2026-11-06']);
    await h.pass('2026-11-12T17:00:00Z');
    await h.pass('2026-11-14T09:00:00Z');
    expect(lines(h)).toEqual(['2026-11-06']);
  });

  test('begins with the running sprint when a team asks for it, and ends when it no longer does', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await h.plan(team, { endsOn: '2026-11-27' });
    const set = (weeklyLine: string) =>
      setMeasures(h.deps, ana, { teamId: team.id, ...typedMeasures({ weeklyLine }) });
    await h.pass('2026-11-06T16:00:00Z');
    await set('yes');
    await h.pass('2026-11-06T16:30:00Z');
    await h.pass('2026-11-06T17:00:00Z');
    await set('no');
    await h.pass('2026-11-13T16:30:00Z');
    await h.pass('2026-11-13T17:00:00Z');
    expect(lines(h)).toEqual(['2026-11-06']);
  });

  test('comes on the last working day of a week whose Friday is off', async () => {
    const { h } = await wanted();
    await sayDaysOff(h.deps, ana, { place: CHANNEL, words: 'team 6 Nov' });
    await h.pass('2026-11-05T16:30:00Z');
    await h.pass('2026-11-05T17:00:00Z');
    await h.pass('2026-11-06T17:00:00Z');
    expect(lines(h)).toEqual(['2026-11-05']);
  });
});
