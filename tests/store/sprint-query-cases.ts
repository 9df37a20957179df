/** What the store promises of sprints; run by `queries.test.ts`. */
import { expect, it } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { aResult, aSprint, aTeam, savedSprint } from './store-examples.ts';

const CLOSED = { state: 'closed', closedAt: new Date('2026-11-13T17:00:30Z') } as const;

export function sprintQueryCases(database: () => Database): void {
  it('gives a sprint back as it was saved and as it was changed', async () => {
    const { sprint } = await savedSprint(database());
    const changed = {
      ...sprint,
      ...CLOSED,
      goal: 'Another goal',
      closesAtInstant: new Date('2026-11-14T17:00:00.123Z'),
      reopenedAt: new Date('2026-11-14T08:00:00Z'),
      nextPromptAt: undefined,
      nextReminderAt: new Date('2026-11-03T11:15:00Z'),
    };
    await database().store.transaction(async (tx) => {
      expect(await tx.read.sprintById(sprint.id)).toEqual(sprint);
      await tx.write.sprints.update(changed);
      expect(await tx.read.sprintById(sprint.id)).toEqual(changed);
      expect(await tx.read.sprintById('nobody')).toBeUndefined();
    });
  });

  it('says so when there is no sprint to change', async () => {
    const { sprint } = await savedSprint(database());
    await expect(
      database().store.transaction((tx) => tx.write.sprints.update({ ...sprint, id: 'nobody' })),
    ).rejects.toThrow(RangeError);
  });

  it('lists open sprints earliest first, and the finished one with the latest last day', async () => {
    const team = aTeam();
    const cancelledAt = new Date('2026-10-01T12:00:00Z');
    const old = aSprint(team.id, { ...CLOSED, startsOn: '2026-09-01', endsOn: '2026-09-11' });
    const cancelled = aSprint(team.id, {
      state: 'cancelled',
      closedAt: cancelledAt,
      startsOn: '2026-10-01',
      endsOn: '2026-10-09',
    });
    const later = aSprint(team.id, { startsOn: '2026-11-16', endsOn: '2026-11-27' });
    const now = aSprint(team.id);
    await database().store.transaction(async (tx) => {
      await tx.write.teams.save(team);
      for (const sprint of [later, old, cancelled, now]) await tx.write.sprints.insert(sprint);
      expect(await tx.read.sprintsOf(team.id)).toEqual([old, cancelled, now, later]);
      expect(await tx.read.openSprintsOf(team.id)).toEqual([now, later]);
      expect(await tx.read.latestFinishedSprint(team.id)).toEqual(cancelled);
      expect(await tx.read.latestFinishedSprint('nobody')).toBeUndefined();
      const spans = [later, now, old].map(({ startsOn, endsOn }) => ({ startsOn, endsOn }));
      expect(await tx.read.latestSpans(team.id, 7)).toEqual(spans);
      expect(await tx.read.latestSpans(team.id, 2)).toEqual(spans.slice(0, 2));
    });
  });

  it('writes the clock of many sprints, undefined included, and of no other', async () => {
    const { sprint: first } = await savedSprint(database());
    const { sprint: second } = await savedSprint(database());
    const { sprint: untouched } = await savedSprint(database());
    const at = new Date('2026-11-05T09:15:00.500Z');
    const firstClock = { nextPromptAt: at, nextReminderAt: at, lastCallAt: undefined };
    const secondClock = { nextPromptAt: undefined, nextReminderAt: undefined, lastCallAt: at };
    await database().store.transaction(async (tx) => {
      await tx.write.sprints.updateClocks([
        { id: first.id, ...firstClock },
        { id: second.id, ...secondClock },
      ]);
      await tx.write.sprints.updateClocks([]);
      expect(await tx.read.sprintById(first.id)).toEqual({ ...first, ...firstClock });
      expect(await tx.read.sprintById(second.id)).toEqual({ ...second, ...secondClock });
      expect(await tx.read.sprintById(untouched.id)).toEqual(untouched);
    });
  });

  it('keeps every version of a result, and gives the latest as it was posted', async () => {
    const { sprint } = await savedSprint(database(), CLOSED);
    const first = aResult(sprint.id, 3);
    const second = aResult(sprint.id, 5, { version: 2, recordedAt: new Date('2026-11-14T17:00:00Z') });
    await database().store.transaction(async (tx) => {
      expect(await tx.read.latestResult(sprint.id)).toBeUndefined();
      await tx.write.results.insert(first);
      expect(await tx.read.latestResult(sprint.id)).toEqual(first);
      await tx.write.results.insert(second);
      expect(await tx.read.latestResult(sprint.id)).toEqual(second);
    });
  });

  it('lists closed sprints, oldest first, each with its latest result; not the cancelled or reopened', async () => {
    const team = aTeam();
    const span = (month: string) => ({ startsOn: `2026-${month}-01`, endsOn: `2026-${month}-10` });
    const march = aSprint(team.id, { ...CLOSED, ...span('03') });
    const february = aSprint(team.id, { ...CLOSED, ...span('02') });
    const cancelled = aSprint(team.id, { ...CLOSED, ...span('04'), state: 'cancelled' });
    const reopened = aSprint(team.id, {
      ...CLOSED,
      ...span('05'),
      state: 'open',
      reopenedAt: CLOSED.closedAt,
    });
    const marchAgain = aResult(march.id, 8, { version: 2 });
    const februaryResult = aResult(february.id, 5);
    await database().store.transaction(async (tx) => {
      await tx.write.teams.save(team);
      for (const sprint of [march, february, cancelled, reopened]) await tx.write.sprints.insert(sprint);
      await tx.write.results.insert(aResult(march.id, 3));
      await tx.write.results.insert(marchAgain);
      await tx.write.results.insert(februaryResult);
      await tx.write.results.insert(aResult(cancelled.id, 2, { cancelled: true }));
      await tx.write.results.insert(aResult(reopened.id, 2));
      expect(await tx.read.closedSprintsOf(team.id)).toEqual([
        { sprint: february, result: februaryResult },
        { sprint: march, result: marchAgain },
      ]);
    });
  });

  it('takes as baseline the named sprint, else the first closed one with a velocity, never the excepted', async () => {
    const team = aTeam();
    const span = (month: string) => ({ startsOn: `2026-${month}-01`, endsOn: `2026-${month}-10` });
    const idle = aSprint(team.id, { ...CLOSED, ...span('01') });
    const first = aSprint(team.id, { ...CLOSED, ...span('02') });
    const second = aSprint(team.id, { ...CLOSED, ...span('03') });
    await database().store.transaction(async (tx) => {
      await tx.write.teams.save(team);
      expect(await tx.read.baselineOf(team, 'none')).toBeUndefined();
      for (const sprint of [idle, first, second]) await tx.write.sprints.insert(sprint);
      await tx.write.results.insert(aResult(idle.id, 0));
      await tx.write.results.insert(aResult(first.id, 3));
      await tx.write.results.insert(aResult(first.id, 2.5, { version: 2 }));
      await tx.write.results.insert(aResult(second.id, 8));
      const named = { ...team, baselineSprintId: second.id };
      expect((await tx.read.baselineOf(team, 'none'))?.velocityPoints).toBe(2.5);
      expect((await tx.read.baselineOf(team, first.id))?.velocityPoints).toBe(8);
      expect((await tx.read.baselineOf(named, first.id))?.velocityPoints).toBe(8);
      expect(await tx.read.baselineOf(named, second.id)).toBeUndefined();
    });
  });
}
