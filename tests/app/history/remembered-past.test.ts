/** What is kept of a past from one question to the next: as long as it holds, and no longer. */
import { randomUUID } from 'node:crypto';
import { expect, test, vi } from 'vitest';
import { closeSprint, reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import { recordGoal } from '../../../src/app/closing/record-goal.ts';
import type { PastSprint } from '../../../src/app/history/past-sprint.ts';
import { recordValue } from '../../../src/app/history/record-value.ts';
import { oncePerPast, pastSprints } from '../../../src/app/history/team-history.ts';
import { removeImport } from '../../../src/app/import/remove-import.ts';
import { Memory } from '../../../src/app/memory.ts';
import type { Reading, Transaction } from '../../../src/app/ports/store.ts';
import { erasePerson } from '../../../src/app/privacy/erase-person.ts';
import { reduceSprints } from '../../../src/app/privacy/reduce-sprints.ts';
import type { Member, Team } from '../../../src/app/team/team.ts';
import { NO_DAYS_OFF } from '../../../src/sprint/work-calendar.ts';
import { actorOf, CHANNEL, harnessForEach } from '../../support/app-harness.ts';
import { GOOD, imported } from '../import/giving-files.ts';
import { finishing, pastSprintsOf } from '../past-sprints.ts';

const TEAM = {
  id: 'own',
  workspaceId: 'W1',
  timeZone: 'Etc/UTC',
  workingDays: [1, 2, 3, 4, 5],
} as unknown as Team;
const PAST = pastSprintsOf([finishing(20, 0), finishing(18, 2)]);

/** A store with that past, which counts how often it is read. */
function storeOf(version: string | undefined, past: readonly PastSprint[] = PAST, members: Member[] = []) {
  let reads = 0;
  const read: Partial<Reading> = {
    pastVersion: async () => version,
    sprintsWithoutPast: async () => [],
    membersOf: async () => members,
    pastSprintsOf: async () => {
      reads += 1;
      return [...past];
    },
  };
  return { tx: { read } as Transaction, reads: () => reads };
}

test('a past that has not changed is read once, and what is computed from it is computed once', async () => {
  const { tx, reads } = storeOf(randomUUID());
  const compute = vi.fn((past: readonly PastSprint[]) => past.length);
  const computed = oncePerPast(compute);
  const first = await pastSprints(tx, TEAM);
  expect(first).toEqual(PAST);
  expect([computed(first), computed(await pastSprints(tx, TEAM))]).toEqual([2, 2]);
  expect(reads()).toBe(1);
  expect(compute).toHaveBeenCalledOnce();
});

test('another version is read again, and so is one that is not known', async () => {
  await pastSprints(storeOf(randomUUID()).tx, TEAM);
  const later = PAST.slice(1);
  expect(await pastSprints(storeOf(randomUUID(), later).tx, TEAM)).toEqual(later);
  const { tx, reads } = storeOf(undefined);
  await pastSprints(tx, TEAM);
  await pastSprints(tx, TEAM);
  expect(reads()).toBe(2);
});

test('imported sprints count the members that the team says now, which no version tells', async () => {
  const version = randomUUID();
  const importedAt = new Date('2026-10-30T08:00:00Z');
  const past = PAST.map((sprint) => ({ ...sprint, memberDays: undefined, importedAt }));
  const member = (userId: string): Member =>
    ({
      userId,
      isMember: true,
      isActive: true,
      guestIn: [],
      worksOnBefore: [],
      daysOff: NO_DAYS_OFF,
    }) as unknown as Member;
  const membersThen = async (members: Member[]) =>
    (await pastSprints(storeOf(version, past, members).tx, TEAM)).map((sprint) => sprint.membersThen);
  expect(await membersThen([member('U1')])).toEqual([1, 1]);
  expect(await membersThen([member('U1'), member('U2')])).toEqual([2, 2]);
});

test('what is kept weighs no more than was said: the longest unused goes first, and what is too heavy at once', async () => {
  const memory = new Memory<number>(10, (weight) => weight);
  const made: string[] = [];
  const get = (key: string, weight: number) =>
    memory.get(key, async () => {
      made.push(key);
      return weight;
    });
  await get('a', 4);
  await get('b', 4);
  await get('a', 4);
  await get('c', 4);
  await get('a', 4);
  expect(made).toEqual(['a', 'b', 'c']);
  await get('b', 4);
  expect(made).toEqual(['a', 'b', 'c', 'b']);
  await get('too heavy', 11);
  await get('too heavy', 11);
  expect(made.slice(4)).toEqual(['too heavy', 'too heavy']);
});

test('what can’t be weighed, as of a damaged row, is not kept, and spoils nothing that is kept of others', async () => {
  const memory = new Memory<{ parts?: string }>(10, ({ parts }) => (parts as string).length);
  let made = 0;
  const whole = () => memory.get('whole', async () => ({ parts: `${++made}` }));
  await expect(memory.get('damaged', async () => ({}))).rejects.toThrow(TypeError);
  await memory.get('odd', async () => ({ parts: { length: Number.NaN } as never }));
  await whole();
  await whole();
  expect(made).toBe(1);
});

const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');

test('it is right after every kind of change', async () => {
  const h = harness();
  const team = await h.setUpTeam();
  const remembered = async () => JSON.stringify(await h.write((tx) => pastSprints(tx, team)));
  const readNow = async () => {
    const past = await h.read((read) => read.pastSprintsOf(team.id));
    const withMembers = await pastSprints(
      {
        read: {
          ...storeOf(undefined, past).tx.read,
          membersOf: (id: string) => h.read((read) => read.membersOf(id)),
        },
      } as Transaction,
      team,
    );
    return JSON.stringify(withMembers);
  };
  let before = await remembered();
  const rightAfter = async (what: string, change: () => Promise<unknown>): Promise<string> => {
    await change();
    const after = await remembered();
    expect(after, what).toBe(await readNow());
    return after;
  };
  const changedBy = async (what: string, change: () => Promise<unknown>) => {
    const after = await rightAfter(what, change);
    expect(after, `${what} changes something`).not.toBe(before);
    before = after;
  };
  await changedBy('an import', () => imported(h, team, { 'sprints.csv': GOOD }));
  const { sprint } = await h.plan(team);
  await h.pass('2026-11-03T10:00:00Z');
  await h.answer('ben', sprint.id, '2026-11-03', { 1: { left: '0' } });
  await changedBy('a closing', () => h.pass('2026-11-13T17:00:00Z'));
  const value = (typed: string) =>
    recordValue(h.deps, ana, { place: CHANNEL, value: typed, sprint: undefined });
  await changedBy('a value', () => value('1,200'));
  await changedBy('a corrected value', () => value('1,300'));
  await changedBy('a goal', () => recordGoal(h.deps, ana, { place: CHANNEL, line: 'partly' }));
  await changedBy('a reopening', () => reopenSprint(h.deps, ana, { place: CHANNEL }));
  await h.answer('chi', sprint.id, '2026-11-12', { 2: { left: '0' } });
  await changedBy('a closing with corrections', () => closeSprint(h.deps, ana, { place: CHANNEL }));
  await changedBy('another name', () =>
    h.write(async (tx) => {
      const [latest] = (await tx.read.sprintsOf(team.id)).toReversed();
      if (latest) await tx.write.sprints.update({ ...latest, name: 'Harbour twelve' });
    }),
  );
  const [first] = await h.read((read) => read.pastSprintsOf(team.id));
  await changedBy('an import that is taken out', () =>
    removeImport(h.deps, ana, { teamId: team.id, sprintId: first?.sprintId ?? '' }),
  );
  await rightAfter('an erasure', () => erasePerson(h.deps, actorOf('chi')));
  h.set('2028-11-20T12:00:00Z');
  await rightAfter('the end of what is kept in detail', () => reduceSprints(h.deps));
  await changedBy('the end of the team', () => h.write((tx) => tx.write.retention.eraseTeam(team.id)));
  expect(before).toBe('[]');
});
