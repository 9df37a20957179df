/** What the store promises of the history that the statistics read; run by `queries.test.ts`. */
import { randomUUID } from 'node:crypto';
import { eq, sql } from 'drizzle-orm';
import { expect, it } from 'vitest';
import type { NewPastSprint, PastSprint } from '../../src/app/history/past-sprint.ts';
import type { Reading, Transaction } from '../../src/app/ports/store.ts';
import type { Sprint, Team } from '../../src/app/team/team.ts';
import type { SprintRatios } from '../../src/sprint/sprint-ratios.ts';
import { undefinedBecause } from '../../src/sprint/undefined-value.ts';
import type { Database } from '../../src/store/database.ts';
import { pastChanges } from '../../src/store/schema.ts';
import { sqlErrorOf } from '../../src/store/sql-error.ts';
import { pastRatios } from '../support/past-ratios.ts';
import { aMember, aResult, aSprint, aTeam, savedSprint, WORKSPACE } from './store-examples.ts';

const CLOSED_AT = new Date('2026-06-30T17:00:30.000Z');
const CLOSED = { state: 'closed', closedAt: CLOSED_AT } as const;
const IMPORTED = { ...CLOSED, importedAt: new Date('2026-11-02T08:00:00.000Z') } as const;
const RATIOS = pastRatios({
  keptShare: 0.7,
  pullInRatio: 0.3,
  surpriseRatio: undefinedBecause('surprise-work-not-imported'),
  planShare: 1 / 1.3,
  estimateAccuracy: 1,
  onScaleShare: 1,
  finishShare: 0.5,
});

/** From the first to the tenth of a month of 2026. */
function month(number: number): Pick<Sprint, 'startsOn' | 'endsOn'> {
  const start = `2026-${String(number).padStart(2, '0')}`;
  return { startsOn: `${start}-01`, endsOn: `${start}-10` };
}

function aPast(team: Team, sprint: Sprint, given: Partial<NewPastSprint> = {}): NewPastSprint {
  return {
    sprintId: sprint.id,
    teamId: team.id,
    workspaceId: team.workspaceId,
    endsOn: sprint.endsOn,
    workingDays: 7,
    memberDays: 20.5,
    commitmentPoints: 10,
    pulledInPoints: 3,
    surprisePoints: 0.5,
    velocityPoints: 8.5,
    workedPoints: 17,
    committedFinishedPoints: 7,
    ratios: RATIOS,
    trace: [
      { cardPoints: 10, finishedPoints: 0, underwayPoints: 0 },
      { cardPoints: 13, finishedPoints: 8.5, underwayPoints: 1 / 3 },
    ],
    cards: [
      { estimatePoints: 5, surprisePoints: 0.5 },
      { estimatePoints: 3, surprisePoints: 0, pulledIn: { workingDaysLeft: 2, finished: true } },
    ],
    recordedAt: CLOSED_AT,
    ...given,
  };
}

/** As an import leaves it that gave the first four columns only. */
const BARE = {
  memberDays: undefined,
  pulledInPoints: undefined,
  surprisePoints: undefined,
  velocityPoints: undefined,
  workedPoints: undefined,
  committedFinishedPoints: undefined,
  trace: [],
  cards: [],
} as const;

/** As it is read: with the sprint's own name and days, without what is only for the store. */
function read(past: NewPastSprint, sprint: Sprint, recordedValue?: number): PastSprint {
  const { workspaceId: _, recordedAt: __, ...kept } = past;
  const { name, startsOn, importedAt } = sprint;
  return { ...kept, name, startsOn, importedAt, recordedValue };
}

async function saveAll(
  tx: Transaction,
  team: Team,
  sprints: readonly (readonly [Sprint, Partial<NewPastSprint>?])[],
): Promise<NewPastSprint[]> {
  await tx.write.teams.save(team);
  const pasts: NewPastSprint[] = [];
  for (const [sprint, given] of sprints) {
    await tx.write.sprints.insert(sprint);
    const past = aPast(team, sprint, given);
    await tx.write.history.savePastSprint(past);
    pasts.push(past);
  }
  return pasts;
}

export function historyQueryCases(database: () => Database): void {
  it('gives closed sprints back as they were left, oldest first, imported ones with what is not known', async () => {
    const team = aTeam();
    const march = aSprint(team.id, { ...CLOSED, ...month(3) });
    const january = aSprint(team.id, { ...IMPORTED, ...month(1), name: 'Ebb' });
    await database().store.transaction(async (tx) => {
      const [ofMarch, ofJanuary] = (await saveAll(tx, team, [
        [march],
        [january, { ...BARE, endsOn: january.endsOn }],
      ])) as [NewPastSprint, NewPastSprint];
      expect(await tx.read.pastSprintsOf(team.id)).toEqual([read(ofJanuary, january), read(ofMarch, march)]);
      expect(await tx.read.pastSprintsOf('nobody')).toEqual([]);
    });
  });

  it('gives all of a past that is longer than what is read at once, of which many sprints ended on one day', async () => {
    const team = aTeam();
    const sprints = Array.from({ length: 230 }, (_, i) =>
      aSprint(team.id, { ...CLOSED, ...month(1 + Math.floor(i / 90)) }),
    );
    await database().store.transaction(async (tx) => {
      await saveAll(
        tx,
        team,
        sprints.map((sprint) => [sprint, { cards: [] }]),
      );
      const past = await tx.read.pastSprintsOf(team.id);
      const ids = (some: readonly string[]): string[] => [...some].sort();
      expect(ids(past.map(({ sprintId }) => sprintId))).toEqual(ids(sprints.map(({ id }) => id)));
      expect(past.map(({ endsOn }) => endsOn)).toEqual(sprints.map(({ endsOn }) => endsOn));
    });
  });

  it('says of a ratio that came after a sprint that there was none yet, in its history and its result', async () => {
    const { finishShare: _later, ...ratios } = RATIOS;
    const noneYet = { undefined: { code: 'ended-before-ratio' } };
    const team = aTeam();
    const sprint = aSprint(team.id, { ...CLOSED, ...month(3) });
    await database().store.transaction(async (tx) => {
      await saveAll(tx, team, [[sprint, { ratios: ratios as NewPastSprint['ratios'] }]]);
      const [past] = await tx.read.pastSprintsOf(team.id);
      expect(past?.ratios).toEqual({ ...ratios, finishShare: noneYet });
      const { summary, ...result } = aResult(sprint.id, 3);
      const { onScaleShare: _alsoLater, ...kept } = summary.ratios;
      const before = { ...summary, ratios: kept as SprintRatios };
      await tx.write.results.insert({ ...result, summary: before });
      expect((await tx.read.latestResult(sprint.id))?.summary.ratios).toEqual({
        ...kept,
        onScaleShare: noneYet,
      });
    });
  });

  it('leaves out cancelled sprints, and reopened ones while they are open', async () => {
    const team = aTeam();
    const cancelled = aSprint(team.id, { ...CLOSED, ...month(1), state: 'cancelled' });
    const reopened = aSprint(team.id, { ...CLOSED, ...month(2) });
    await database().store.transaction(async (tx) => {
      await saveAll(tx, team, [[cancelled], [reopened]]);
      expect((await tx.read.pastSprintsOf(team.id)).map(({ sprintId }) => sprintId)).toEqual([reopened.id]);
      await tx.write.sprints.update({ ...reopened, state: 'open', reopenedAt: CLOSED_AT });
      expect(await tx.read.pastSprintsOf(team.id)).toEqual([]);
      expect(await tx.read.pastTracesOf(team, { own: 9, others: 0 }, 1)).toEqual([]);
    });
  });

  it('replaces what a sprint left behind when it closes again, with less known as well as with more', async () => {
    const team = aTeam();
    const sprint = aSprint(team.id, { ...CLOSED, ...month(1) });
    await database().store.transaction(async (tx) => {
      await saveAll(tx, team, [[sprint]]);
      for (const given of [BARE, { velocityPoints: 10, committedFinishedPoints: 10 }]) {
        const past = aPast(team, sprint, given);
        await tx.write.history.savePastSprint(past);
        expect(await tx.read.pastSprintsOf(team.id)).toEqual([read(past, sprint)]);
      }
    });
  });

  it('finds closed sprints that have left nothing behind, oldest first', async () => {
    const team = aTeam();
    const [known, late, early, cancelled] = [
      aSprint(team.id, { ...CLOSED, ...month(1) }),
      aSprint(team.id, { ...CLOSED, ...month(4) }),
      aSprint(team.id, { ...CLOSED, ...month(2) }),
      aSprint(team.id, { ...CLOSED, ...month(3), state: 'cancelled' }),
    ] as const;
    await database().store.transaction(async (tx) => {
      await saveAll(tx, team, [[known]]);
      for (const sprint of [late, early, cancelled, aSprint(team.id)]) await tx.write.sprints.insert(sprint);
      expect(await tx.read.sprintsWithoutPast(team.id)).toEqual([early, late]);
      expect(await tx.read.sprintsWithoutPast('nobody')).toEqual([]);
      expect(await tx.read.sprintsWithoutPast(team.id, 1)).toEqual([late]);
    });
  });

  it('gives traces of the latest own sprints and of the latest watched ones of other teams, oldest first', async () => {
    const workspaceId = `W-${randomUUID()}`;
    const [own, other, third, elsewhere] = [
      aTeam({ workspaceId }),
      aTeam({ workspaceId }),
      aTeam({ workspaceId }),
      aTeam({ workspaceId: 'W-far-away' }),
    ] as const;
    const ends = (day: string) => ({ ...CLOSED, startsOn: '2026-01-01', endsOn: day });
    await database().store.transaction(async (tx) => {
      await saveAll(tx, own, [
        [aSprint(own.id, ends('2026-01-09')), { velocityPoints: 1, committedFinishedPoints: 1 }],
        [aSprint(own.id, { ...ends('2026-01-16'), importedAt: CLOSED_AT }), BARE],
        [aSprint(own.id, ends('2026-01-23')), { velocityPoints: 3, committedFinishedPoints: 3 }],
      ]);
      await saveAll(tx, other, [
        [aSprint(other.id, ends('2026-01-10')), { velocityPoints: 4, committedFinishedPoints: 4 }],
        [aSprint(other.id, ends('2026-01-20')), { velocityPoints: 5, committedFinishedPoints: 5 }],
        // Nobody watched it, so a projection learns nothing from it.
        [aSprint(other.id, { ...ends('2026-01-22'), importedAt: CLOSED_AT }), { trace: [] }],
        [aSprint(other.id, { ...ends('2026-01-24'), state: 'cancelled' })],
      ]);
      await saveAll(tx, third, [
        [aSprint(third.id, ends('2026-01-21')), { velocityPoints: 6, committedFinishedPoints: 6 }],
      ]);
      await saveAll(tx, elsewhere, [[aSprint(elsewhere.id, ends('2026-01-22'))]]);
      const traces = await tx.read.pastTracesOf(own, { own: 2, others: 2 }, 0.5);
      expect(traces.map(({ endsOn, teamId, velocityPoints }) => [endsOn, teamId, velocityPoints])).toEqual([
        ['2026-01-16', own.id, undefined],
        ['2026-01-20', other.id, 5],
        ['2026-01-21', third.id, 6],
        ['2026-01-23', own.id, 3],
      ]);
      expect(traces.map(({ trace }) => trace.length)).toEqual([0, 1, 1, 1]);
      expect(traces[1]).toEqual({
        teamId: other.id,
        endsOn: '2026-01-20',
        commitmentPoints: 10,
        velocityPoints: 5,
        // Of two points, half the working days lie nearest to the later one.
        trace: aPast(other, aSprint(other.id)).trace.slice(1),
      });
      expect(await tx.read.pastTracesOf(own, { own: 0, others: 0 }, 0)).toEqual([]);
      const { workingDays, memberDays } = aPast(other, aSprint(other.id));
      expect(await tx.read.pastTimesOfOthers(own, 2)).toEqual([
        { teamId: other.id, velocityPoints: 5, workingDays, memberDays },
        { teamId: third.id, velocityPoints: 6, workingDays, memberDays },
      ]);
    });
  });

  it('shows every change of a workspace’s past by another version, and only of those', async () => {
    const workspaceId = randomUUID();
    const team = { ...aTeam(), workspaceId };
    const sprint = aSprint(team.id, { ...CLOSED, ...month(1) });
    const running = aSprint(team.id, month(2));
    const goalOutcome = { met: 'partly', note: '', saidBy: 'U-ola', saidAt: CLOSED_AT } as const;
    const withGoal = { ...sprint, name: 'Renamed', goalOutcome };
    const inTransaction = <T>(work: (tx: Transaction) => Promise<T>) => database().store.transaction(work);
    const version = () =>
      inTransaction(async ({ read }) => {
        const version = await read.pastVersion(workspaceId);
        const found = await read.teamInChannel(workspaceId, team.channelId);
        expect(found?.pastVersion).toBe(found && version);
        return version;
      });
    const changes: [what: string, change: (tx: Transaction) => Promise<unknown>][] = [
      ['a sprint leaves something behind', (tx) => saveAll(tx, team, [[sprint]])],
      [
        'it leaves something else',
        (tx) => tx.write.history.savePastSprint(aPast(team, sprint, { velocityPoints: 8 })),
      ],
      [
        'it is reopened',
        (tx) => tx.write.sprints.update({ ...sprint, state: 'open', reopenedAt: CLOSED_AT }),
      ],
      ['it closes again', (tx) => tx.write.sprints.update(sprint)],
      ['it has another name', (tx) => tx.write.sprints.update({ ...sprint, name: 'Renamed' })],
      ['somebody says whether its goal was met', (tx) => tx.write.sprints.update(withGoal)],
      [
        'a value is recorded for it',
        (tx) =>
          tx.write.history.recordValue({ sprintId: sprint.id, value: 5, byUserId: 'U-ola', at: CLOSED_AT }),
      ],
    ];
    const versions = [await version()];
    expect(versions).toEqual([undefined]);
    for (const [, change] of changes) {
      await inTransaction(change);
      versions.push(await version());
      expect(await version()).toBe(versions.at(-1));
    }
    await inTransaction(async (tx) => {
      await tx.write.sprints.update(withGoal);
      await tx.write.sprints.insert(running);
      await tx.write.sprints.update({ ...running, name: 'Renamed' });
      await saveAll(tx, aTeam(), []);
    });
    expect(await version()).toBe(versions.at(-1));
    const undone = inTransaction(async (tx) => {
      await tx.write.history.savePastSprint(aPast(team, sprint));
      throw new Error('undone');
    });
    await expect(undone).rejects.toThrow('undone');
    expect(await version()).toBe(versions.at(-1));
    await database().session.execute(sql`delete from loadline.past_sprints where sprint_id = ${sprint.id}`);
    versions.push(await version());
    expect(new Set(versions).size).toBe(changes.length + 2);
  });

  it('forgets earlier changes of the past, and keeps a version as long as there is a past', async () => {
    const team = { ...aTeam(), workspaceId: randomUUID() };
    const sprint = aSprint(team.id, { ...CLOSED, ...month(1) });
    const changesOf = () =>
      database().session.$count(pastChanges, eq(pastChanges.workspaceId, team.workspaceId));
    await database().store.transaction((tx) => saveAll(tx, team, [[sprint]]));
    await database().store.transaction((tx) => tx.write.history.savePastSprint(aPast(team, sprint)));
    expect(await changesOf()).toBe(2);
    // Both in the same millisecond, as on a quick machine; and nothing hangs on what the clock says now.
    const changedAt = new Date('2026-11-30T12:00:00Z');
    await database()
      .session.update(pastChanges)
      .set({ changedAt })
      .where(eq(pastChanges.workspaceId, team.workspaceId));
    const upkeep = (hours: number) =>
      database().store.transaction((tx) =>
        tx.write.retention.dropOldRecords(new Date(changedAt.getTime() + hours * 3_600_000), 1_000_000),
      );
    await upkeep(23.9);
    expect(await changesOf()).toBe(2);
    await upkeep(24.1);
    expect(await changesOf()).toBe(1);
    expect(await database().store.read((read) => read.pastVersion(team.workspaceId))).toBeDefined();
  });

  it('counts the latest value that was recorded for a sprint, and keeps the earlier ones', async () => {
    const team = aTeam();
    const [first, second] = [
      aSprint(team.id, { ...CLOSED, ...month(1) }),
      aSprint(team.id, { ...IMPORTED, ...month(2) }),
    ] as const;
    const values = async (read: Reading) =>
      (await read.pastSprintsOf(team.id)).map(({ recordedValue }) => recordedValue);
    const record = { sprintId: first.id, byUserId: 'U-ola', at: CLOSED_AT };
    await database().store.transaction(async (tx) => {
      await saveAll(tx, team, [[first], [second]]);
      expect(await values(tx.read)).toEqual([undefined, undefined]);
      for (const value of [1200, -0.1, 0, 999_999_999_999_999]) {
        await tx.write.history.recordValue({ ...record, value });
        expect(await values(tx.read)).toEqual([value, undefined]);
      }
      await tx.write.history.recordValue({ ...record, sprintId: second.id, value: 7 });
      expect(await values(tx.read)).toEqual([999_999_999_999_999, 7]);
    });
    const kept = await database().session.execute(
      sql`select version, value, recorded_by from loadline.recorded_values where sprint_id = ${first.id}
        order by version`,
    );
    const rows = (Array.isArray(kept) ? kept : (kept as { rows: unknown[] }).rows) as object[];
    expect(rows).toMatchObject([
      { version: 1, value: 1200, recorded_by: 'U-ola' },
      { version: 2, value: -0.1 },
      { version: 3, value: 0 },
      { version: 4, value: 999_999_999_999_999 },
    ]);
  });

  it('keeps both values when two people record at once, each holding the team', async () => {
    const { team, sprint } = await savedSprint(database(), { ...CLOSED, ...month(1) });
    const record = (value: number) =>
      database().store.transaction(async (tx) => {
        await tx.lock.team(team.id);
        await tx.write.history.recordValue({ sprintId: sprint.id, value, byUserId: 'U-ola', at: CLOSED_AT });
      });
    await Promise.all([1, 2, 3, 4].map(record));
    const kept = await database().session.execute(
      sql`select value from loadline.recorded_values where sprint_id = ${sprint.id}`,
    );
    const rows = (Array.isArray(kept) ? kept : (kept as { rows: unknown[] }).rows) as { value: number }[];
    expect(rows.map(({ value }) => value).toSorted()).toEqual([1, 2, 3, 4]);
  });

  it.each(['update loadline.recorded_values set value = 0', 'delete from loadline.recorded_values'])(
    'refuses to change what was recorded: %s',
    async (statement) => {
      const { sprint } = await savedSprint(database(), { ...CLOSED, ...month(1) });
      const record = { sprintId: sprint.id, value: 5, byUserId: 'U-ola', at: CLOSED_AT };
      await database().store.transaction((tx) => tx.write.history.recordValue(record));
      const error: unknown = await database()
        .session.execute(sql`${sql.raw(statement)} where sprint_id = ${sprint.id}`)
        .catch((refusal: unknown) => refusal);
      expect(sqlErrorOf(error)?.constraint).toBe('recorded_values_append_only');
      // Who recorded it gives way when that person asks to be erased.
      await database().session.execute(
        sql`update loadline.recorded_values set recorded_by = 'erased-1' where sprint_id = ${sprint.id}`,
      );
    },
  );

  it('finds the teams of a product owner by name, members or not, in their workspace only', async () => {
    const owner = { workspaceId: WORKSPACE, userId: `U-${randomUUID()}` };
    const [quay, berth] = [
      aTeam({ name: 'Quay', productOwnerId: owner.userId }),
      aTeam({ name: 'Berth', productOwnerId: owner.userId }),
    ] as const;
    await database().store.transaction(async (tx) => {
      for (const team of [
        quay,
        berth,
        aTeam({ productOwnerId: 'U-other' }),
        aTeam({ productOwnerId: owner.userId, workspaceId: 'W-far-away' }),
      ])
        await tx.write.teams.save(team);
      await tx.write.teams.saveMembers(quay.id, [aMember({ userId: owner.userId })]);
      expect(await tx.read.teamsOwnedBy(owner)).toEqual([berth, quay]);
      expect(await tx.read.teamsOf(owner)).toEqual([quay]);
      expect(await tx.read.teamsOwnedBy({ ...owner, userId: 'nobody' })).toEqual([]);
    });
  });

  it('takes an imported sprint as baseline, the first of all or named, unless it has no velocity', async () => {
    const team = aTeam();
    const [bare, imported, run] = [
      aSprint(team.id, { ...IMPORTED, ...month(1) }),
      aSprint(team.id, { ...IMPORTED, ...month(2) }),
      aSprint(team.id, { ...CLOSED, ...month(3) }),
    ] as const;
    await database().store.transaction(async (tx) => {
      await saveAll(tx, team, [
        [bare, BARE],
        [imported, { velocityPoints: 8.5, committedFinishedPoints: 7 }],
      ]);
      await tx.write.sprints.insert(run);
      // Only its result is known: it closed before sprints left anything behind.
      await tx.write.results.insert(aResult(run.id, 5));
      const named = (sprint: Sprint) => ({ ...team, baselineSprintId: sprint.id });
      expect((await tx.read.baselineOf(team, 'none'))?.velocityPoints).toBe(8.5);
      expect((await tx.read.baselineOf(team, imported.id))?.velocityPoints).toBe(5);
      expect((await tx.read.baselineOf(named(imported), run.id))?.velocityPoints).toBe(8.5);
      expect((await tx.read.baselineOf(named(run), imported.id))?.velocityPoints).toBe(5);
      expect(await tx.read.baselineOf(named(imported), imported.id)).toBeUndefined();
      // Nothing can be measured by it, so it is as if none were named.
      expect((await tx.read.baselineOf(named(bare), 'none'))?.velocityPoints).toBe(8.5);
    });
  });

  it('does not take a cancelled sprint as baseline, nor a reopened one while it is open', async () => {
    const team = aTeam();
    const [reopened, cancelled, second] = [
      aSprint(team.id, { ...CLOSED, ...month(1) }),
      aSprint(team.id, { ...CLOSED, ...month(2), state: 'cancelled' }),
      aSprint(team.id, { ...CLOSED, ...month(3) }),
    ] as const;
    await database().store.transaction(async (tx) => {
      await saveAll(tx, team, [
        [reopened, { velocityPoints: 9 }],
        [cancelled, { velocityPoints: 7 }],
        [second, { velocityPoints: 8 }],
      ]);
      await tx.write.results.insert(aResult(cancelled.id, 7, { cancelled: true }));
      expect((await tx.read.baselineOf(team, 'none'))?.velocityPoints).toBe(9);
      await tx.write.sprints.update({ ...reopened, state: 'open', reopenedAt: CLOSED_AT });
      expect((await tx.read.baselineOf(team, 'none'))?.velocityPoints).toBe(8);
      const named = { ...team, baselineSprintId: reopened.id };
      expect((await tx.read.baselineOf(named, 'none'))?.velocityPoints).toBe(8);
    });
  });

  it.each<[string, string, Partial<NewPastSprint>]>([
    ['a velocity of a quarter', 'past_sprints_points_in_halves', { velocityPoints: 8.3 }],
    ['less than no pulled-in work', 'past_sprints_points_not_negative', { pulledInPoints: -1 }],
    ['member days below 0', 'past_sprints_days_not_negative', { memberDays: -1 }],
    [
      'more finished of the commitment than was committed',
      'past_sprints_committed_finished_fits',
      { committedFinishedPoints: 11, velocityPoints: 12 },
    ],
    [
      'more finished of the commitment than was finished',
      'past_sprints_committed_finished_fits',
      { committedFinishedPoints: 9 },
    ],
    ['a team that the sprint is not of', 'past_sprints_sprint_of_team_fk', { teamId: 'nobody' }],
  ])('refuses %s', async (_what, constraint, given) => {
    const { team, sprint } = await savedSprint(database(), { ...CLOSED, ...month(1) });
    const error: unknown = await database()
      .store.transaction((tx) => tx.write.history.savePastSprint(aPast(team, sprint, given)))
      .catch((refusal: unknown) => refusal);
    expect(sqlErrorOf(error)?.constraint).toBe(constraint);
  });
}
