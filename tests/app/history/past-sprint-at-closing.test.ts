import { sql } from 'drizzle-orm';
import { describe, expect, test } from 'vitest';
import { recordAway } from '../../../src/app/answering/record-answers.ts';
import { dropCard } from '../../../src/app/cards/change-cards.ts';
import { pullCards } from '../../../src/app/cards/pull-cards.ts';
import { cancelSprint, closeSprint, reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import type { PastSprint } from '../../../src/app/history/past-sprint.ts';
import { pastSprints } from '../../../src/app/history/team-history.ts';
import { allWatchedSprints } from '../../../src/store/queries/watched-sprint-queries.ts';
import { actorOf, CHANNEL, type Harness, harnessForEach, PEOPLE } from '../../support/app-harness.ts';
import { rowsOf } from '../../support/rows-of.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then: ten working days.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');

/**
 * Three members; cards of 5, 3 and 2 points. The first is finished, the second grows by surprise work, the third is
 * dropped, and one of 3 is pulled in and finished.
 */
async function played() {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team);
  const at = (day: string) => h.set(`2026-11-${day}T10:00:00Z`);
  at('02');
  await h.answer('ben', sprint.id, '2026-11-02', { 1: { worked: '2', left: '3' } });
  at('03');
  await h.answer('ben', sprint.id, '2026-11-03', { 1: { left: '0' } });
  at('04');
  await pullCards(h.deps, actorOf('ben'), { place: CHANNEL, text: 'Fog horn, 3, @Ben' });
  at('05');
  await recordAway(h.deps, actorOf('chi'), { sprintId: sprint.id, day: '2026-11-05' });
  at('06');
  await h.answer('chi', sprint.id, '2026-11-06', { 2: { worked: '1', left: '4', surprise: '2' } });
  at('09');
  await dropCard(h.deps, actorOf('ben'), { place: CHANNEL, reference: '3', reason: 'not wanted' });
  at('10');
  await h.answer('ben', sprint.id, '2026-11-10', { 4: { left: '0' } });
  return { h, team, sprint };
}

async function closed() {
  const played_ = await played();
  await played_.h.pass('2026-11-13T17:00:00Z');
  return played_;
}

function pastOf(h: Harness, teamId: string): Promise<PastSprint[]> {
  return h.read((read) => read.pastSprintsOf(teamId));
}

const point = (cardPoints: number, finishedPoints: number, underwayPoints: number) => ({
  cardPoints,
  finishedPoints,
  underwayPoints,
});

describe('what a sprint leaves behind when it closes', () => {
  test('is its sums, those of its ratios, and its days', async () => {
    const { h, team, sprint } = await closed();
    const [past, ...others] = await pastOf(h, team.id);
    expect(others).toEqual([]);
    expect(past).toMatchObject({
      sprintId: sprint.id,
      teamId: team.id,
      name: 'Harbour 12',
      startsOn: '2026-11-02',
      endsOn: '2026-11-13',
      importedAt: undefined,
      workingDays: 10,
      // Three members on ten days, without the one day that Chi was away.
      memberDays: 29,
      commitmentPoints: 10,
      pulledInPoints: 3,
      surprisePoints: 2,
      velocityPoints: 8,
      workedPoints: 9,
      committedFinishedPoints: 5,
      recordedValue: undefined,
    });
    const posted = (await h.read((read) => read.latestResult(sprint.id)))?.summary.ratios;
    expect({ ...past?.ratios, velocityGrowth: 1 }).toEqual(posted);
  });

  test('is how it was before its first working day and on the evening of each', async () => {
    const { h, team } = await closed();
    expect((await pastOf(h, team.id))[0]?.trace).toEqual([
      point(10, 0, 0),
      // Of the card of 5 points, 2 of 5 are worked off.
      point(10, 0, 2),
      point(10, 5, 0),
      point(13, 5, 0),
      point(13, 5, 0),
      // Of the card of 3 points that turned out to be 5, 1 of 5 is worked off.
      point(13, 5, 0.6),
      point(11, 5, 0.6),
      point(11, 8, 0.6),
      point(11, 8, 0.6),
      point(11, 8, 0.6),
      point(11, 8, 0.6),
    ]);
  });

  test('is its cards without the dropped, and of those pulled in how much time was left and whether they were finished', async () => {
    const { h, team } = await closed();
    expect((await pastOf(h, team.id))[0]?.cards).toEqual([
      { estimatePoints: 5, surprisePoints: 0, doneShare: 1 },
      { estimatePoints: 3, surprisePoints: 2, doneShare: 0.2 },
      // It came in on Wednesday 4 November: that day and seven more.
      {
        estimatePoints: 3,
        surprisePoints: 0,
        doneShare: 1,
        pulledIn: { workingDaysLeft: 8, finished: true },
      },
    ]);
  });

  test('is how each card went evening by evening, in queues that only have numbers', async () => {
    const { h } = await closed();
    const [kept] = await allWatchedSprints(h.database.session);
    // Evening 0 is before Monday 2 November, evening 10 that of Friday 13.
    expect(kept?.cardEvenings).toEqual([
      {
        estimatePoints: 5,
        from: 0,
        left: [5, 3, 0, 0, 0, 0, 0, 0, 0, 0, 0],
        worked: [0, 2, 5, 5, 5, 5, 5, 5, 5, 5, 5],
        queues: [0],
      },
      {
        estimatePoints: 3,
        from: 0,
        left: [3, 3, 3, 3, 3, 4, 4, 4, 4, 4, 4],
        worked: [0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1],
        queues: [1],
      },
      {
        estimatePoints: 3,
        from: 3,
        left: [3, 3, 3, 3, 0, 0, 0, 0],
        worked: [0, 0, 0, 0, 3, 3, 3, 3],
        queues: [0],
      },
    ]);
  });

  test('holds no title, no name and no id of a person', async () => {
    const { h, team } = await closed();
    const rows = await rowsOf(
      h.database,
      sql`select * from loadline.past_sprints where team_id = ${team.id}`,
    );
    expect(rows).toHaveLength(1);
    const held = JSON.stringify(rows);
    for (const word of ['Tide', 'Fog', 'not wanted', ...Object.values(PEOPLE)])
      expect(held).not.toContain(word);
  });

  test('counts days off neither as working days nor as member days', async () => {
    const h = harness();
    const team = await h.setUpTeam({ workingDays: [1, 2], memberIds: [PEOPLE.ana, PEOPLE.ben, PEOPLE.chi] });
    await h.plan(team);
    await h.pass('2026-11-13T17:00:00Z');
    const [past] = await pastOf(h, team.id);
    expect(past).toMatchObject({ workingDays: 4, memberDays: 12 });
    expect(past?.trace).toHaveLength(5);
  });

  test('of a sprint closed early spans all of its days, as it was at the end, but holds only the time till then', async () => {
    const { h, team } = await played();
    await closeSprint(h.deps, ana, { place: CHANNEL });
    const [past] = await pastOf(h, team.id);
    // Closed on the seventh of ten days; Chi was away on one.
    expect(past).toMatchObject({ workingDays: 10, memberDays: 3 * 7 - 1, velocityPoints: 8 });
    expect(past?.trace).toHaveLength(11);
    expect(past?.trace.at(-1)).toEqual(point(11, 8, 0.6));
  });

  test('of a sprint without a plan has no commitment, and ratios with their reasons', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await h.plan(team, { cards: '' });
    h.set('2026-11-03T10:00:00Z');
    await pullCards(h.deps, actorOf('ben'), { place: CHANNEL, text: 'Fog horn, 3, @Ben' });
    await h.pass('2026-11-13T17:00:00Z');
    const [past] = await pastOf(h, team.id);
    expect(past).toMatchObject({
      commitmentPoints: 0,
      pulledInPoints: 3,
      ratios: { keptShare: { undefined: { code: 'no-commitment' } }, planShare: 0 },
      cards: [{ pulledIn: { workingDaysLeft: 9, finished: false } }],
    });
    expect(past?.trace.slice(0, 3)).toEqual([point(0, 0, 0), point(0, 0, 0), point(3, 0, 0)]);
  });
});

describe('what a sprint left behind', () => {
  test('is replaced when it is reopened, corrected and closed again', async () => {
    const { h, team, sprint } = await closed();
    const before = (await pastOf(h, team.id))[0] as PastSprint;
    h.set('2026-11-13T18:00:00Z');
    await reopenSprint(h.deps, ana, { place: CHANNEL });
    expect(await pastOf(h, team.id)).toEqual([]);
    await h.answer('chi', sprint.id, '2026-11-12', { 2: { left: '0' } });
    await closeSprint(h.deps, ana, { place: CHANNEL });
    const [after, ...others] = await pastOf(h, team.id);
    expect(others).toEqual([]);
    expect(after).toMatchObject({ velocityPoints: 11, workedPoints: 13, committedFinishedPoints: 8 });
    // The correction is about Thursday 12 November, so the evenings before stay as they were.
    expect(after?.trace.slice(0, 9)).toEqual(before.trace.slice(0, 9));
    expect(after?.trace.slice(9)).toEqual([point(11, 11, 0), point(11, 11, 0)]);
  });

  test('leaves the history when it is reopened and then cancelled', async () => {
    const { h, team } = await closed();
    await reopenSprint(h.deps, ana, { place: CHANNEL });
    await cancelSprint(h.deps, ana, { place: CHANNEL, reason: '' });
    expect(await pastOf(h, team.id)).toEqual([]);
    expect(await h.write((tx) => pastSprints(tx, team))).toEqual([]);
  });

  test('is none when it is cancelled', async () => {
    const { h, team } = await played();
    await cancelSprint(h.deps, ana, { place: CHANNEL, reason: '' });
    expect(await h.write((tx) => pastSprints(tx, team))).toEqual([]);
  });

  test('is made good from the records for a sprint that closed before there was such a thing', async () => {
    const { h, team } = await closed();
    const before = await pastOf(h, team.id);
    await h.database.session.execute(sql`delete from loadline.past_sprints`);
    expect(await pastOf(h, team.id)).toEqual([]);
    expect(await h.write((tx) => pastSprints(tx, team))).toEqual(before);
    expect(await pastOf(h, team.id)).toEqual(before);
  });

  test('counts the days of the members, of those who left only the days before that', async () => {
    const { h, team, sprint } = await played();
    const away = (who: 'ana' | 'chi', day: string) =>
      recordAway(h.deps, actorOf(who), { sprintId: sprint.id, day: `2026-11-${day}` });
    for (const day of ['02', '03', '04', '09', '10']) await away('chi', day);
    await away('ana', '10');
    await h.setUpTeam({ memberIds: [PEOPLE.ana, PEOPLE.ben] });
    await h.pass('2026-11-13T17:00:00Z');
    // Ana and Ben on ten days, without the one day that Ana was away; Chi on the six before she left, less five away.
    expect((await pastOf(h, team.id))[0]?.memberDays).toBe(20);
  });
});
