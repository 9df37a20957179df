import { randomUUID } from 'node:crypto';
import { expect, test, vi } from 'vitest';
import type { PastTrace } from '../../../src/app/history/past-sprint.ts';
import { projectionHistory, rememberedHistory } from '../../../src/app/history/team-history.ts';
import type { Reading, Transaction } from '../../../src/app/ports/store.ts';
import type { Team } from '../../../src/app/team/team.ts';

const TEAM = { id: 'own', workspaceId: 'W1' } as Team;
const OTHER_TEAM = { id: 'other', workspaceId: 'W1' } as Team;

const PAST: readonly PastTrace[] = [4, 9, 7].map((velocityPoints, i) => ({
  teamId: i === 1 ? 'other' : 'own',
  endsOn: `2026-10-${10 + i}`,
  commitmentPoints: 10,
  velocityPoints,
  trace: [0, 2, velocityPoints].map((finishedPoints) => ({
    cardPoints: 10,
    finishedPoints,
    underwayPoints: 1,
  })),
}));

/** A store with that past, which counts how often it is read. */
function storeOf(past: readonly PastTrace[]) {
  let reads = 0;
  const read: Partial<Reading> = {
    sprintsWithoutPast: async () => [],
    pastTracesOf: async () => {
      reads += 1;
      return [...past];
    },
  };
  return { tx: { read } as Transaction, reads: () => reads };
}

test('what is remembered is what would be learnt again, at every share of the time', async () => {
  const version = randomUUID();
  const { tx, reads } = storeOf(PAST);
  for (const share of [0, 0.5, 1, 0.5]) {
    expect(await rememberedHistory(tx, TEAM, share, version)).toEqual(await projectionHistory(PAST, share));
  }
  expect(reads()).toBe(3);
});

test('another version of the past, and another team’s, are read again', async () => {
  const [before, after] = [randomUUID(), randomUUID()];
  const later = PAST.slice(1);
  await rememberedHistory(storeOf(PAST).tx, TEAM, 0.5, before);
  const changed = await rememberedHistory(storeOf(later).tx, TEAM, 0.5, after);
  expect(changed).toEqual(await projectionHistory(later, 0.5));
  const others = await rememberedHistory(storeOf(later).tx, OTHER_TEAM, 0.5, before);
  expect(others).toEqual(await projectionHistory(later, 0.5));
});

test('what was learnt long ago is learnt again, for a version may come back when the past behind it is forgotten', async () => {
  const version = randomUUID();
  const now = vi.spyOn(performance, 'now').mockReturnValue(0);
  try {
    const { tx, reads } = storeOf(PAST);
    await rememberedHistory(tx, TEAM, 0.5, version);
    now.mockReturnValue(11 * 3_600_000);
    await rememberedHistory(tx, TEAM, 0.5, version);
    expect(reads()).toBe(1);
    now.mockReturnValue(13 * 3_600_000);
    await rememberedHistory(tx, TEAM, 0.5, version);
    expect(reads()).toBe(2);
  } finally {
    now.mockRestore();
  }
});

test('without a version nothing is kept', async () => {
  const { tx, reads } = storeOf(PAST);
  await rememberedHistory(tx, TEAM, 0.5, undefined);
  await rememberedHistory(tx, TEAM, 0.5, undefined);
  expect(reads()).toBe(2);
});

test('the longest unused is forgotten first', async () => {
  const { tx, reads } = storeOf(PAST);
  const version = randomUUID();
  const shares = Array.from({ length: 201 }, (_, i) => i / 200);
  for (const share of shares) await rememberedHistory(tx, TEAM, share, version);
  const readOnce = reads();
  await rememberedHistory(tx, TEAM, 1, version);
  expect(reads()).toBe(readOnce);
  await rememberedHistory(tx, TEAM, 0, version);
  expect(reads()).toBe(readOnce + 1);
});
