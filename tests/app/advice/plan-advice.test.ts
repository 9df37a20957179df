import { sql } from 'drizzle-orm';
import { describe, expect, test } from 'vitest';
import { askAdvice } from '../../../src/app/advice/ask-advice.ts';
import { planForm } from '../../../src/app/planning/plan-form.ts';
import type { PlanInput } from '../../../src/app/planning/plan-input.ts';
import type { PlanPreview } from '../../../src/app/planning/plan-sprint.ts';
import { commitPlan, previewPlan } from '../../../src/app/planning/plan-sprint.ts';
import { actorOf, CHANNEL, type Harness, harnessForEach, problemsOf } from '../../support/app-harness.ts';
import { finishing, importPast, pastSprintsOf } from '../past-sprints.ts';

// Friday noon in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');

const CARDS = [
  { estimatePoints: 8, surprisePoints: 2.5 },
  { estimatePoints: 8, surprisePoints: 0 },
  { estimatePoints: 5, surprisePoints: 0 },
];

/** A team that commits to 20 and pulls in about 4 each time. */
async function withPast(sprints: number) {
  const h = harness();
  const team = await h.setUpTeam();
  const past = pastSprintsOf(
    Array.from({ length: sprints }, (_, i) => ({ ...finishing(20, 3.5 + (i % 3) / 2), cards: CARDS })),
  );
  await importPast(h, team, past);
  const preview = (change: Partial<PlanInput> = {}): Promise<PlanPreview> =>
    previewPlan(h.deps, ana, h.planInput(team, change));
  return { h, team, preview };
}

function cardsOf(points: number): string {
  return `Small one, ${points % 8}\n${'Tug, 8, @Ben\n'.repeat(Math.floor(points / 8))}`;
}

describe('the plan preview', () => {
  test('shows the same range as the answer when asked for the plan’s days', async () => {
    const { h, preview } = await withPast(8);
    const { range } = await preview({ awayDays: '4' });
    expect(range.coming).toEqual({
      startsOn: '2026-11-02',
      endsOn: '2026-11-13',
      workingDays: 10,
      members: 3,
      memberDays: 30,
      awayDays: 4,
    });
    const { startsOn, endsOn } = range.coming;
    const question = { about: 'range', startsOn, endsOn, awayDays: 4 } as const;
    const asked = await askAdvice(h.deps, ana, { place: CHANNEL }, question);
    // As text: the range holds functions, which are never equal.
    expect(JSON.stringify({ ...range, askerIsFacilitator: true })).toBe(JSON.stringify(asked));
    expect(range.range).toMatchObject({ lowPoints: expect.any(Number), highPoints: expect.any(Number) });
  });

  test('says the chances that the commitment is kept, that all of it is finished, and that the team runs out of work', async () => {
    const { preview } = await withPast(8);
    const bold = (await preview({ cards: cardsOf(40) })).commitment;
    const timid = (await preview({ cards: cardsOf(9) })).commitment;
    expect(bold.kept).toBeLessThan(0.2);
    expect(bold.finishedWhole).toBeLessThan(0.15);
    expect(bold.ranOut).toBeLessThan(0.1);
    expect(timid.kept).toBeGreaterThan(0.9);
    expect(timid.finishedWhole).toBeGreaterThan(0.9);
    expect(timid.ranOut).toBeGreaterThan(0.8);
  });

  test('says the chances of these very cards, and which of them endangers them most', async () => {
    const { preview } = await withPast(8);
    const { set } = await preview({ cards: 'Lock gate, 13\nTide table, 13\nFog horn, 3' });
    expect(set).toMatchObject({ points: 29, floor: 0.8, isAllNeeded: false, sprints: 8 });
    expect(set?.endangering?.card.title).toBe('Lock gate');
    expect(set?.endangering?.chanceWithout.kept).toBeGreaterThan((set?.chance.kept as number) + 0.3);
    const both = (await preview({ cards: 'Lock gate, 13\nTide table, 8' })).set;
    expect(both?.isAllNeeded).toBe(true);
    expect(both?.chance.kept).toBeCloseTo(both?.chance.all as number, 12);
  });

  test('shows the odds of the big cards with the numbers that they will have', async () => {
    const { preview } = await withPast(2);
    const { bigCards, cards } = await preview({ cards: 'A, 8\nB, 1\nC, 13, @Ben\nD, 8\nE, 5\nF, 2' });
    if ('undefined' in bigCards) throw new Error(bigCards.undefined.code);
    expect(
      bigCards.map(({ odds, cardNumbers }) => [
        odds.estimatePoints,
        odds.withSurprise,
        odds.cards,
        cardNumbers.map((number) => cards.find((card) => card.number === number)?.title),
      ]),
    ).toEqual([
      [13, 0, 0, ['C']],
      [8, 2, 4, ['A', 'D']],
      [5, 0, 2, ['E']],
    ]);
  });

  test('of a team’s first sprint says what is missing', async () => {
    const { preview } = await withPast(0);
    const { range, commitment, bigCards, recent } = await preview();
    const tooFew = { undefined: { code: 'few-sprints', needed: 3, known: 0, having: 'commitment' } };
    expect(range.range).toEqual(tooFew);
    expect(commitment).toEqual({ kept: tooFew, finishedWhole: tooFew, ranOut: tooFew });
    expect(bigCards).toEqual({ undefined: { code: 'no-closed-card' } });
    expect(recent).toEqual([]);
  });

  test('shows imported sprints among the latest, which have no verdict of ours', async () => {
    const { h, team, preview } = await withPast(2);
    await importPast(h, team, [
      {
        ...(pastSprintsOf([{}])[0] as ReturnType<typeof pastSprintsOf>[number]),
        sprintId: 'without-velocity',
        name: 'Harbour 3',
        startsOn: '2026-02-02',
        endsOn: '2026-02-13',
        velocityPoints: undefined,
        committedFinishedPoints: undefined,
      },
    ]);
    await h.plan(team);
    await h.pass('2026-11-02T09:15:00Z');
    await h.pass('2026-11-13T17:00:00Z');
    const { recent } = await preview({ startsOn: '2026-11-16', endsOn: '2026-11-27' });
    expect(recent).toEqual([
      {
        sprintName: 'Harbour 12',
        workingDays: 10,
        commitmentPoints: 10,
        velocityPoints: 0,
        verdict: 'missed',
      },
      {
        sprintName: 'Harbour 3',
        workingDays: 10,
        commitmentPoints: 20,
        velocityPoints: undefined,
        verdict: undefined,
      },
      {
        sprintName: 'Harbour 2',
        workingDays: 10,
        commitmentPoints: 20,
        velocityPoints: 24,
        verdict: undefined,
      },
    ]);
  });
});

describe('days off and away in a plan', () => {
  test.each(['4', ' 4 ', '4.0', '4,0'])('are read as %j', async (awayDays) => {
    const { preview } = await withPast(0);
    expect((await preview({ awayDays })).range.coming.awayDays).toBe(4);
  });

  test('are not known when the field is empty, which is another thing than 0', async () => {
    const { preview } = await withPast(0);
    expect((await preview({ awayDays: ' ' })).range.coming.awayDays).toBeUndefined();
    expect((await preview({ awayDays: '0' })).range.coming.awayDays).toBe(0);
  });

  test.each([
    [
      'some',
      'Give the days off and away of all members together as whole or half days, for example 6 or 2.5.',
    ],
    ['-1', 'Give the days off and away of all members together as whole or half days, for example 6 or 2.5.'],
    ['30.5', '3 members × 10 working days = 30, so no more than that can be off or away; you gave 30.5.'],
  ])('are refused as %j, beside every other problem; what was typed is kept', async (awayDays, message) => {
    const { h, preview } = await withPast(0);
    expect(await problemsOf(preview({ awayDays, name: '' }))).toEqual({
      name: expect.any(String),
      awayDays: message,
    });
    expect((await planForm(h.deps, ana, CHANNEL)).draft).toMatchObject({ awayDays, name: '' });
  });

  test('are not counted while the sprint’s own days cannot be read', async () => {
    const { preview } = await withPast(0);
    expect(Object.keys(await problemsOf(preview({ awayDays: '99', endsOn: 'soon' })))).toEqual(['endsOn']);
  });

  test('are empty in a draft that was kept before plans asked for them; it can be committed to', async () => {
    const { h, team, preview } = await withPast(0);
    await preview({ awayDays: '4' });
    await forgetAwayDays(h);
    expect((await planForm(h.deps, ana, CHANNEL)).draft.awayDays).toBe('');
    await forgetAwayDays(h);
    expect(await commitPlan(h.deps, ana, { teamId: team.id })).toMatchObject({ commitmentPoints: 10 });
  });
});

/** As drafts were before. */
async function forgetAwayDays(h: Harness): Promise<void> {
  await h.database.session.execute(sql`update loadline.plan_drafts set draft = draft - 'awayDays'`);
}
