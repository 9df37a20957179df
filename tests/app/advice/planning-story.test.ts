/**
 * A team works eight sprints with the bot, asks everything before planning the ninth, and is warned of a commitment
 * that it has never kept the like of.
 */
import { expect, test } from 'vitest';
import type { Advice, AdviceQuestion } from '../../../src/app/advice/advice.ts';
import { askAdvice, shareAdvice } from '../../../src/app/advice/ask-advice.ts';
import { recordAway } from '../../../src/app/answering/record-answers.ts';
import { pullCards } from '../../../src/app/cards/pull-cards.ts';
import { previewPlan } from '../../../src/app/planning/plan-sprint.ts';
import type { Sprint, Team } from '../../../src/app/team/team.ts';
import { dayPlus } from '../../../src/sprint/calendar.ts';
import { actorOf, CHANNEL, type Harness, harnessForEach } from '../../support/app-harness.ts';

// A Monday in Lisbon, which is on UTC until the end of March.
const harness = harnessForEach('2026-11-02T08:00:00Z');
const ben = actorOf('ben');

/** The first card holds surprise work in every second sprint, the last one stays open in every fourth. */
const CARDS = 'Tide table, 8, @Ben\nCrane log, 5, @Chi\nPilot roster, 5, @Ben\nBuoy chart, 3, @Chi';

async function workSprint(h: Harness, team: Team, place: number): Promise<Sprint> {
  const startsOn = dayPlus('2026-11-02', 14 * place);
  const endsOn = dayPlus(startsOn, 11);
  h.set(`${startsOn}T08:00:00Z`);
  const { sprint } = await h.plan(team, { name: `Harbour ${place + 1}`, startsOn, endsOn, cards: CARDS });
  await h.pass(`${startsOn}T09:15:00Z`);
  const [tuesday, friday] = [dayPlus(startsOn, 1), dayPlus(startsOn, 4)];
  h.set(`${tuesday}T10:00:00Z`);
  const hasSurprise = place % 2 === 1;
  await h.answer('ben', sprint.id, tuesday, {
    1: hasSurprise
      ? { left: '7', worked: '3', surprise: '2', note: 'an old rule' }
      : { left: '5', worked: '3' },
  });
  h.set(`${friday}T10:00:00Z`);
  await pullCards(h.deps, ben, { place: CHANNEL, text: 'Fog horn, 3, @Ben' });
  if (place === 2) await recordAway(h.deps, actorOf('chi'), { sprintId: sprint.id, day: friday });
  h.set(`${endsOn}T10:00:00Z`);
  await h.answer('ben', sprint.id, endsOn, { 1: { left: '0' }, 3: { left: '0' }, 5: { left: '0' } });
  const isOpen = place % 4 === 3;
  await h.answer('chi', sprint.id, endsOn, { 2: { left: '0' }, 4: { left: isOpen ? '1' : '0' } });
  await h.pass(`${endsOn}T17:00:00Z`);
  return h.sprint(sprint.id);
}

type AdviceAbout<Q extends AdviceQuestion> = Extract<Advice, { question: { about: Q['about'] } }>;

test('eight sprints answer all four questions, and warn of a commitment above the range', async () => {
  const h = harness();
  const team = await h.setUpTeam();
  for (let place = 0; place < 8; place += 1) {
    expect(await workSprint(h, team, place)).toMatchObject({ state: 'closed' });
  }
  const ask = async <Q extends AdviceQuestion>(question: Q): Promise<AdviceAbout<Q>> =>
    (await askAdvice(h.deps, ben, { place: CHANNEL }, question)) as AdviceAbout<Q>;

  const { odds, sprintsWithCards } = await ask({ about: 'odds' });
  if ('undefined' in odds) throw new Error(odds.undefined.code);
  // Of every sprint: one card of 8, two of 5, two of 3 points, the one pulled in included.
  expect([odds.cards, odds.withSurprise, sprintsWithCards]).toEqual([40, 4, 8]);
  expect(
    odds.sizes.map(({ estimatePoints, cards, withSurprise }) => [estimatePoints, cards, withSurprise]),
  ).toEqual([
    [3, 16, 0],
    [5, 16, 0],
    [8, 8, 4],
  ]);
  expect(odds.sizes[2]).toMatchObject({ borrows: true, medianSurprisePoints: 2 });
  // Half of them held some, and none of the 32 smaller ones.
  expect(odds.sizes[2]?.likelyShare).toBeGreaterThan(0.3);
  expect(odds.sizes[2]?.likelyShare).toBeLessThan(0.5);

  const { range, coming, past } = await ask({ about: 'range' });
  expect(coming).toMatchObject({ startsOn: '2027-02-22', endsOn: '2027-03-05', workingDays: 10, members: 3 });
  expect(past.map(({ memberDays }) => memberDays)).toEqual([30, 30, 29, 30, 30, 30, 30, 30]);
  if ('undefined' in range) throw new Error(range.undefined.code);
  // It commits to 21 and brings home 21 to 24: there is a range, and it reaches no further than that.
  expect(range).toMatchObject({
    sprints: 8,
    advised: { unserved: undefined },
    surpriseAboveCeiling: { sprints: 0, of: 8 },
  });
  const [low, high] = [range.lowPoints as number, range.highPoints as number];
  expect(low).toBeLessThanOrEqual(high);
  expect([low >= 18, high <= 30]).toEqual([true, true]);

  const { forecast, startsOn, sprintLengthDays } = await ask({
    about: 'forecast',
    backlogPoints: 120,
    growthPoints: 0,
  });
  if ('undefined' in forecast) throw new Error(forecast.undefined.code);
  expect([startsOn, sprintLengthDays, forecast.sprintsUsed]).toEqual(['2027-02-22', 14, 8]);
  const dates = forecast.dates.map((date) => ('on' in date ? date.on : date.undefined));
  expect(dates).toEqual([...dates].sort());
  expect(dates[0]).toMatch(/^2027-/);

  const { ratios, margin, velocityBaseline } = await ask({ about: 'history' });
  const history = new Map(ratios.map((one) => [one.ratio, one]));
  expect(velocityBaseline?.sprintId).toBe(past[0]?.sprintId);
  // Every fourth sprint left 3 of 21 points open, which is still above the floor; every second pulled in 3 of 21.
  expect(history.get('keptShare')).toMatchObject({
    values: [1, 1, 1, 18 / 21, 1, 1, 1, 18 / 21],
    crossedAt: [],
    chart: { values: 8, latest: { reading: 'ordinary variation' } },
  });
  expect(history.get('surpriseRatio')?.values.filter((value) => value === 2 / 21)).toHaveLength(4);
  expect(history.get('velocityGrowth')?.values).toEqual([1, 1, 1, 21 / 24, 1, 1, 1, 21 / 24]);
  expect(margin.ofCommitments).toMatchObject({ sprints: 8, median: 24 / 21 });

  const days = { startsOn: '2027-02-22', endsOn: '2027-03-05' };
  const bold = await previewPlan(
    h.deps,
    actorOf('ana'),
    h.planInput(team, {
      ...days,
      name: 'Harbour 9',
      awayDays: '5',
      cards: 'Lock gate, 13, @Chi\nTide table, 8, @Ben\nCrane log, 8, @Chi\nPilot roster, 5, @Ben',
    }),
  );
  expect(bold.range.range).toMatchObject({ advised: { points: expect.any(Number), unserved: undefined } });
  expect(bold.commitmentPoints).toBe(34);
  expect(bold.commitment.kept).toBeLessThan(0.25);
  // A sixth of the time is missing, and the range is as much lower.
  const narrower = 'undefined' in bold.range.range ? Number.NaN : (bold.range.range.highPoints as number);
  expect(narrower).toBeLessThan(high);
  if ('undefined' in bold.bigCards) throw new Error(bold.bigCards.undefined.code);
  expect(
    bold.bigCards.map(({ odds: { estimatePoints }, cardNumbers }) => [estimatePoints, cardNumbers]),
  ).toEqual([
    [13, [1]],
    [8, [2, 3]],
    [5, [4]],
  ]);
  expect(bold.recent[0]).toMatchObject({ sprintName: 'Harbour 8', commitmentPoints: 21, velocityPoints: 21 });

  await shareAdvice(h.deps, ben, { teamId: team.id, question: { about: 'history' } });
  await h.drain();
  expect(h.kindsTo(CHANNEL).at(-1)).toBe('shared-advice');
});
