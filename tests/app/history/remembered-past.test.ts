import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import type { PastSprint } from '../../../src/app/history/past-sprint.ts';
import { pastSprints } from '../../../src/app/history/team-history.ts';
import type { Reading, Transaction } from '../../../src/app/ports/store.ts';
import type { Team } from '../../../src/app/team/team.ts';
import { finishing, pastSprintsOf } from '../past-sprints.ts';

const TEAM = { id: 'own', workspaceId: 'W1' } as Team;
const PAST = pastSprintsOf([finishing(20, 0), finishing(18, 2)]);

/** A store with that past, which counts how often its numbers are read. */
function storeOf(version: string | undefined, past: readonly PastSprint[] = PAST) {
  let reads = 0;
  let names = past.map(({ name }) => name);
  const read: Partial<Reading> = {
    pastVersion: async () => version,
    sprintsWithoutPast: async () => [],
    pastHeadingsOf: async () => past.map((sprint, i) => ({ ...sprint, name: names[i] as string })),
    pastNumbersOf: async () => {
      reads += 1;
      return [...past];
    },
  };
  return {
    tx: { read } as Transaction,
    reads: () => reads,
    rename: (name: string) => {
      names = names.map(() => name);
    },
  };
}

test('the numbers of a past that has not changed are read once, its names each time', async () => {
  const { tx, reads, rename } = storeOf(randomUUID());
  expect(await pastSprints(tx, TEAM)).toEqual(PAST);
  rename('Low tide');
  expect((await pastSprints(tx, TEAM)).map(({ name }) => name)).toEqual(['Low tide', 'Low tide']);
  expect(reads()).toBe(1);
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

test('a reopened sprint is no past: its numbers are kept, but it has no heading', async () => {
  const [reopened, closed] = PAST as [PastSprint, PastSprint];
  const { tx } = storeOf(randomUUID());
  const read = { ...tx.read, pastHeadingsOf: async () => [closed] };
  const found = await pastSprints({ ...tx, read } as Transaction, TEAM);
  expect(found.map(({ sprintId }) => sprintId)).toEqual([closed.sprintId]);
  expect(found).not.toContainEqual(reopened);
});
