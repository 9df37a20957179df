import { expect, test } from 'vitest';
import { statesOf } from '../../../src/app/cards/card-line.ts';
import type { WatchedSprint } from '../../../src/app/history/watched-sprint.ts';
import type { Transaction } from '../../../src/app/ports/store.ts';
import { byBetterModel } from '../../../src/app/watching/better-model.ts';
import { projectionFrom } from '../../../src/app/watching/sprint-projection.ts';
import { NO_HISTORY } from '../../../src/forecast/project-velocity.ts';
import { simulatedSprints } from '../../forecast/simulated-team.ts';

// Simulated teams; the rules are beside them.
function storeOf(past: readonly Omit<WatchedSprint, 'teamId'>[]): Transaction {
  const read = { watchedSprintsOf: async () => past.map((sprint) => ({ ...sprint, teamId: 'ours' })) };
  return { read } as unknown as Transaction;
}

const NOW = { cardPoints: 20, finishedPoints: 6, underwayPoints: 2 };
const SUMS = projectionFrom(NO_HISTORY, 'ours', NOW);
const AT = { teamId: 'ours', pastVersion: undefined, elapsedShare: 0.8, days: [], on: '2026-11-10' } as const;

test('with few past sprints the model of sums speaks, and nothing is said of a choice', async () => {
  const past = simulatedSprints({ seed: 1, sprints: 13, rule: 'queues' });
  expect(await byBetterModel(storeOf(past), SUMS, [], AT)).toEqual({ ...SUMS, speaker: undefined });
});

test('where cards were nearer they speak, in sums of whole cards', async () => {
  const past = simulatedSprints({ seed: 1, sprints: 26, rule: 'queues' });
  const spoken = await byBetterModel(storeOf(past), SUMS, statesOf({ cards: [], facts: [] }), AT);
  expect(spoken.speaker).toEqual({ model: 'cards', sprints: 20 });
  expect([...spoken.distribution.points]).toEqual([6]);
});

test('both are asked about a past once, until it is another', async () => {
  const past = simulatedSprints({ seed: 1, sprints: 26, rule: 'queues' });
  let reads = 0;
  const counted = storeOf(past);
  const watchedSprintsOf = (...given: Parameters<typeof counted.read.watchedSprintsOf>) => {
    reads += 1;
    return counted.read.watchedSprintsOf(...given);
  };
  const tx = { read: { watchedSprintsOf } } as unknown as Transaction;
  const speakerAt = async (pastVersion: string | undefined, elapsedShare = 0.8) =>
    (await byBetterModel(tx, SUMS, [], { ...AT, pastVersion, elapsedShare })).speaker;
  const known = await speakerAt('first');
  expect(known).toEqual({ model: 'cards', sprints: 20 });
  expect(await speakerAt('first')).toEqual(known);
  expect(reads).toBe(1);
  await speakerAt('second');
  await speakerAt('first', 0.5);
  expect(reads).toBe(3);
  await speakerAt(undefined);
  await speakerAt(undefined);
  expect(reads).toBe(5);
});

test('where sums were nearer they speak, and say so', async () => {
  const past = simulatedSprints({ seed: 1, sprints: 26, rule: 'whole' });
  const spoken = await byBetterModel(storeOf(past), SUMS, [], { ...AT, elapsedShare: 0.5 });
  expect(spoken).toEqual({ ...SUMS, speaker: { model: 'sums', sprints: 20 } });
});
