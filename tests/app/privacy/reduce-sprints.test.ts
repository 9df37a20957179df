/** Retention: details of sprints that ended long ago go, totals stay and go on serving. On both kinds of database. */

import { parse } from 'csv-parse/sync';
import { sql } from 'drizzle-orm';
import { beforeEach, describe, expect, test } from 'vitest';
import { askAdvice } from '../../../src/app/advice/ask-advice.ts';
import { endBody, keepBody } from '../../../src/app/bodies/keep-bodies.ts';
import { tryExperiment } from '../../../src/app/experiments/try-experiment.ts';
import { exportSprints } from '../../../src/app/export/export-sprints.ts';
import { recordValue } from '../../../src/app/history/record-value.ts';
import { pastSprints } from '../../../src/app/history/team-history.ts';
import { planForm } from '../../../src/app/planning/plan-form.ts';
import { privacyOverview } from '../../../src/app/privacy/privacy-overview.ts';
import { reduceSprints } from '../../../src/app/privacy/reduce-sprints.ts';
import type { Member, Team } from '../../../src/app/team/team.ts';
import { allWatchedSprints } from '../../../src/store/queries/watched-sprint-queries.ts';
import { actorOf, CHANNEL, Harness, PEOPLE } from '../../support/app-harness.ts';
import { describeOnPostgresFirst, emptyDatabase } from '../../support/databases.ts';
import { rowsOf } from '../../support/rows-of.ts';
import { type BusyTeam, busyTeam, NOW } from './busy-team.ts';

const ana = actorOf('ana');

const NO_DATES = { optimisticOn: undefined, likelyOn: undefined, pessimisticOn: undefined };

/** Thirteen months after the first sprint's last day, 13 November 2026, and the day after that. */
const LAST_DAY_KEPT = '2027-12-13T12:00:00Z';
const FIRST_DAY_REDUCED = '2027-12-14T12:00:00Z';

describeOnPostgresFirst('a team’s retention', (_database, kind) => {
  let h: Harness;
  let busy: BusyTeam;
  beforeEach(async () => {
    h = new Harness(await emptyDatabase(kind), NOW);
    busy = await busyTeam(h);
    await h.drain();
    // The third sprint runs on and closes by itself.
    await h.pass('2026-12-04T17:00:00Z');
  });

  async function reducedSprints(): Promise<number> {
    const [row] = await rowsOf<{ reduced: string }>(
      h.database,
      sql`select count(*) as reduced from loadline.sprints where reduced_at is not null`,
    );
    return Number(row?.reduced);
  }

  /** All batches. @returns how many sprints are reduced by then */
  async function reduceAll(now: string): Promise<number> {
    h.set(now);
    while ((await reduceSprints(h.deps)) > 0);
    return reducedSprints();
  }

  /** How many rows hang on a sprint, by table. */
  async function rowsOfSprint(sprintId: string): Promise<Record<string, number>> {
    const [counts] = await rowsOf<Record<string, string>>(
      h.database,
      sql`select
        (select count(*) from loadline.cards where sprint_id = ${sprintId}) as cards,
        (select count(*) from loadline.card_owners join loadline.cards on id = card_id
          where sprint_id = ${sprintId}) as owners,
        (select count(*) from loadline.answers join loadline.cards as c on c.id = card_id
          where sprint_id = ${sprintId}) as answers,
        (select count(*) from loadline.card_changes join loadline.cards as c on c.id = card_id
          where sprint_id = ${sprintId}) as changes,
        (select count(*) from loadline.prompts where sprint_id = ${sprintId}) as prompts,
        (select count(*) from loadline.posts where sprint_id = ${sprintId}) as posts,
        (select count(*) from loadline.past_sprints where sprint_id = ${sprintId}) as totals,
        (select count(*) from loadline.sprint_results where sprint_id = ${sprintId}) as results`,
    );
    return Object.fromEntries(Object.entries(counts ?? {}).map(([table, count]) => [table, Number(count)]));
  }

  const months = (team: Team, retentionMonths: number | undefined) =>
    h.write(async (tx) =>
      tx.write.teams.save({ ...((await tx.read.teamById(team.id)) as Team), retentionMonths }),
    );

  test('keeps a new team’s details for 13 months to the day, then only its totals', async () => {
    expect((await h.read((read) => read.teamById(busy.team.id)))?.retentionMonths).toBe(13);
    expect(await reduceAll(LAST_DAY_KEPT)).toBe(0);
    const before = await rowsOfSprint(busy.closedId);
    for (const count of Object.values(before)) expect(count).toBeGreaterThan(0);
    expect(await reduceAll(FIRST_DAY_REDUCED)).toBe(1);
    expect(await rowsOfSprint(busy.closedId)).toEqual({
      ...{ cards: 0, owners: 0, answers: 0, changes: 0, prompts: 0, posts: 0 },
      totals: before.totals,
      results: before.results,
    });
    // The next sprint ended a week later.
    expect((await rowsOfSprint(busy.cancelledId)).cards).toBeGreaterThan(0);
    expect(await h.sprint(busy.closedId)).toMatchObject({ name: 'Harbour 12', goal: '', state: 'closed' });
  });

  test('lets go days off before the time kept, and keeps those since', async () => {
    const teamId = busy.team.id;
    const member = async () =>
      (await h.read((read) => read.membersOf(teamId))).find(({ userId }) => userId === PEOPLE.ben);
    const said = { full: ['2026-11-10', '2026-11-13', '2027-12-24'], half: ['2026-11-12'] };
    const ben = await member();
    await h.write(async (tx) => tx.write.teams.saveMembers(teamId, [{ ...(ben as Member), daysOff: said }]));
    await reduceAll(LAST_DAY_KEPT);
    expect((await member())?.daysOff).toEqual({ full: ['2026-11-13', '2027-12-24'], half: [] });
    await months(busy.team, undefined);
    await reduceAll('2030-12-14T12:00:00Z');
    expect((await member())?.daysOff.full).toEqual(['2026-11-13', '2027-12-24']);
  });

  test('lets go weekdays that ended before the time kept, and keeps those since', async () => {
    const ben = async () =>
      (await h.read((read) => read.membersOf(busy.team.id))).find(({ userId }) => userId === PEOPLE.ben);
    const worksOnBefore = [
      { until: '2026-11-10', worksOn: [1, 2] },
      { until: '2026-11-13', worksOn: undefined },
      { until: '2027-01-04', worksOn: [3] },
    ];
    const before = (await ben()) as Member;
    await h.write(async (tx) =>
      tx.write.teams.saveMembers(busy.team.id, [{ ...before, worksOn: [5], worksOnBefore }]),
    );
    await reduceAll(LAST_DAY_KEPT);
    expect(await ben()).toEqual({ ...before, worksOn: [5], worksOnBefore: worksOnBefore.slice(1) });
  });

  test('lets go the team’s days off in the same way', async () => {
    const team = async () => (await h.read((read) => read.teamById(busy.team.id))) as Team;
    const said = { full: ['2026-11-10', '2026-11-13', '2027-12-24'], half: ['2026-11-12'] };
    const before = await team();
    await h.write(async (tx) => tx.write.teams.save({ ...before, daysOff: said }));
    await reduceAll(LAST_DAY_KEPT);
    expect((await team()).daysOff).toEqual({ full: ['2026-11-13', '2027-12-24'], half: [] });
    await months(busy.team, undefined);
    await reduceAll('2030-12-14T12:00:00Z');
    expect((await team()).daysOff.full).toEqual(['2026-11-13', '2027-12-24']);
  });

  test('lets go that somebody was a guest of a reduced sprint, and keeps them until then', async () => {
    const teamId = busy.team.id;
    const dayo = async () =>
      (await h.read((read) => read.membersOf(teamId))).find(({ userId }) => userId === PEOPLE.dayo);
    const guestIn = [
      { sprintId: busy.closedId, from: '2026-11-04', until: '2026-11-14' },
      { sprintId: busy.cancelledId, from: '2026-11-16', until: '2026-11-21' },
    ];
    const [person] = await h.read((read) => read.membersOf(teamId));
    const guest = { ...(person as Member), userId: PEOPLE.dayo, name: 'Dayo', isMember: false };
    await h.write(async (tx) =>
      tx.write.teams.saveMembers(teamId, [{ ...guest, isActive: false, isFacilitator: false, guestIn }]),
    );
    await reduceAll(LAST_DAY_KEPT);
    expect((await dayo())?.guestIn).toEqual(guestIn);
    await reduceAll(FIRST_DAY_REDUCED);
    expect((await dayo())?.guestIn).toEqual(guestIn.slice(1));
    await reduceAll('2028-01-01T00:00:00Z');
    expect(await dayo()).toBeUndefined();
  });

  test('lets go what was tried and decided about before then, and keeps what is still being tried', async () => {
    h.set('2026-12-05T10:00:00Z');
    const trial = { teamId: busy.team.id, text: 'Still on', ratio: 'keptShare', direction: 'up' };
    await tryExperiment(h.deps, ana, trial);
    const texts = async () =>
      (await h.read((read) => read.experimentsOf(busy.team.id))).map(({ text }) => text);
    await reduceAll(LAST_DAY_KEPT);
    expect(await texts()).toEqual(['Pair with Ben Ode', 'Small cards', 'Still on']);
    await reduceAll('2028-01-01T00:00:00Z');
    expect(await texts()).toEqual(['Still on']);
  });

  test('lets go bodies of work that were done before then, with what was told of them, and keeps those still to do', async () => {
    h.set('2026-12-05T10:00:00Z');
    const { id: teamId } = busy.team;
    await keepBody(h.deps, ana, { teamId, name: 'Beacons', leftPoints: 40 });
    await endBody(h.deps, ana, { teamId, reference: 'lights', how: 'done' });
    // Too few sprints have closed for the forecast, so the telling is made here.
    const [lights, beacons] = await h.read((read) => read.bodiesOf(teamId));
    const telling = { toldOn: '2026-12-05', leftPoints: 80, sprintsSinceSaid: 0, ...NO_DATES };
    await h.write((tx) =>
      tx.write.bodies.tell([lights, beacons].map((body) => ({ bodyId: body?.id ?? '', ...telling }))),
    );
    const kept = async () => ({
      names: (await h.read((read) => read.bodiesOf(teamId))).map(({ name }) => name),
      tellings: (await h.read((read) => read.toldDatesOf(teamId))).length,
    });
    await reduceAll('2028-02-01T00:00:00Z');
    expect(await kept()).toEqual({ names: ['Beacons'], tellings: 1 });
  });

  test('of no end keeps everything', async () => {
    await months(busy.team, undefined);
    expect(await reduceAll('2040-01-01T00:00:00Z')).toBe(0);
    expect((await rowsOfSprint(busy.closedId)).answers).toBeGreaterThan(0);
  });

  test('leaves results, history, range, odds and forecast as they were', async () => {
    const read = async () =>
      h.write(async (tx) => ({
        past: await pastSprints(tx, busy.team),
        results: [await tx.read.latestResult(busy.closedId), await tx.read.latestResult(busy.cancelledId)],
      }));
    const ask = async () => {
      const place = { place: CHANNEL };
      return [
        await askAdvice(h.deps, ana, place, { about: 'history' }),
        await askAdvice(h.deps, ana, place, { about: 'odds' }),
        await askAdvice(h.deps, ana, place, { about: 'range' }),
      ];
    };
    h.set('2028-03-01T09:00:00Z');
    const [before, advice] = [await read(), await ask()];
    await reduceAll('2028-03-01T09:00:00Z');
    expect((await rowsOfSprint(busy.openId)).cards).toBe(0);
    expect(await read()).toEqual(before);
    const team = expect.anything();
    expect(await ask()).toEqual(advice.map((one) => ({ ...one, team })));
    // What reads the sprint before this one copes with there being no cards.
    expect((await planForm(h.deps, actorOf('chi'), CHANNEL).catch((error) => error)).code).toBe(
      'not-a-facilitator',
    );
    expect((await planForm(h.deps, ana, CHANNEL)).draft.name).toBe('Quay 4');
    const value = { place: CHANNEL, value: '900', sprint: { sprintName: 'Harbour 12' } };
    expect((await recordValue(h.deps, ana, value)).previousValue).toBe(1200);
  });

  test('takes from the statistics how each card went', async () => {
    expect((await allWatchedSprints(h.database.session)).length).toBeGreaterThan(0);
    await reduceAll('2029-01-01T12:00:00Z');
    expect(await allWatchedSprints(h.database.session)).toEqual([]);
  });

  test('leaves an export with the totals of every sprint, cancelled ones too, and without cards', async () => {
    const exported = async () => {
      const { files } = await exportSprints(h.deps, ana, CHANNEL);
      const [sprints = [], cards = []] = files.map(({ bytes }) =>
        parse(Buffer.from(bytes), { columns: true, bom: true }),
      ) as Record<string, string>[][];
      return { sprints, cards };
    };
    const before = await exported();
    await reduceAll('2028-03-01T09:00:00Z');
    const after = await exported();
    // Only what a person typed goes, and for the cancelled sprint the evenings that nobody needs any more.
    const without = ({ goal: _, 'daily answers': _daily, ...row }: Record<string, string>) => row;
    expect(after.sprints.map(without)).toEqual(before.sprints.map(without));
    expect(after.sprints.map(({ commitment }) => commitment)).toEqual(['10', '10', '10']);
    expect([before.cards.length > 2, after.cards]).toEqual([true, []]);
  });

  test('lets the name of somebody who left go with the last detail of theirs', async () => {
    await h.setUpTeam({ memberIds: [PEOPLE.ana, PEOPLE.chi], facilitatorIds: [PEOPLE.ana] });
    const names = async () => (await h.read((read) => read.membersOf(busy.team.id))).map(({ name }) => name);
    await reduceAll(FIRST_DAY_REDUCED);
    expect(await names()).toContain('Ben Ode');
    await reduceAll('2028-03-01T09:00:00Z');
    expect(await names()).toEqual(['Ana Lima', 'Chi Wen']);
    expect((await privacyOverview(h.deps, actorOf('ben'))).kinds).toEqual([]);
  });

  test('is done once, by any replica and however often', async () => {
    h.set('2028-03-01T09:00:00Z');
    const done = await Promise.all([reduceSprints(h.deps), reduceSprints(h.deps), reduceSprints(h.deps)]);
    expect(Math.max(...done)).toBeGreaterThan(0);
    expect(await reduceAll('2028-03-01T09:00:00Z')).toBe(3);
    expect(await reduceSprints(h.deps)).toBe(0);
  });

  test('waits for a sprint that closed late until it can’t be reopened any more', async () => {
    await h.database.session.execute(
      sql`update loadline.sprints set closed_at = '2027-12-13T20:00Z' where id = ${busy.closedId}`,
    );
    expect(await reduceAll('2027-12-15T19:00:00Z')).toBe(0);
    expect(await reduceAll('2027-12-15T21:00:00Z')).toBe(1);
  });

  describe('in the database', () => {
    test('deletes nothing of a sprint that is open, or whose totals are not kept', async () => {
      const begin = (id: string) => h.database.session.execute(sql`select loadline.begin_reduction(${id})`);
      h.set('2027-01-04T08:00:00Z');
      const { sprint } = await h.plan(busy.team, {
        name: 'Quay 9',
        startsOn: '2027-01-04',
        endsOn: '2027-01-08',
      });
      await expect(begin(sprint.id)).rejects.toThrow();
      await h.database.session.execute(
        sql`delete from loadline.past_sprints where sprint_id = ${busy.closedId}`,
      );
      await expect(begin(busy.closedId)).rejects.toThrow();
      await expect(
        h.write((tx) => tx.write.retention.reduceSprint(busy.closedId, new Date(NOW))),
      ).rejects.toThrow();
      expect((await rowsOfSprint(busy.closedId)).answers).toBeGreaterThan(0);
    });

    test('lets only the cards of the sprint go that was named, and results never', async () => {
      const attempt = (statement: ReturnType<typeof sql>) =>
        h.database.session.transaction(async (tx) => {
          await tx.execute(sql`select loadline.begin_reduction(${busy.closedId})`);
          await tx.execute(statement);
        });
      await expect(
        attempt(sql`delete from loadline.answers where card_id in
          (select id from loadline.cards where sprint_id = ${busy.openId})`),
      ).rejects.toThrow();
      await expect(
        attempt(sql`delete from loadline.sprint_results where sprint_id = ${busy.closedId}`),
      ).rejects.toThrow();
      await expect(
        attempt(sql`delete from loadline.recorded_values where sprint_id = ${busy.closedId}`),
      ).rejects.toThrow();
      await attempt(sql`delete from loadline.card_changes where card_id in
        (select id from loadline.cards where sprint_id = ${busy.closedId})`);
      expect((await rowsOfSprint(busy.closedId)).changes).toBe(0);
    });
  });
});
