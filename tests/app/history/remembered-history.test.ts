import { expect, test } from 'vitest';
import type { PastTrace } from '../../../src/app/history/past-sprint.ts';
import { rememberedHistory } from '../../../src/app/history/remembered-history.ts';
import { projectionHistory } from '../../../src/app/history/team-history.ts';

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

test('what is remembered is what would be learnt again, at every share of the time', () => {
  for (const share of [0, 0.5, 1, 0.5]) {
    expect(rememberedHistory(PAST, share)).toEqual(projectionHistory(PAST, share));
  }
});

test('the same past is learnt once', () => {
  expect(rememberedHistory(structuredClone(PAST), 0.5)).toBe(rememberedHistory(PAST, 0.5));
});

test('a past that differs in one number, one day or one team is another', () => {
  const before = rememberedHistory(PAST, 0.5);
  const [first, ...others] = PAST as [PastTrace, ...PastTrace[]];
  const changes: Partial<PastTrace>[] = [
    { velocityPoints: 4.5 },
    { endsOn: '2026-10-09' },
    { teamId: 'third' },
    { trace: [{ cardPoints: 12, finishedPoints: 2, underwayPoints: 1 }] },
    { trace: [], commitmentPoints: 11 },
  ];
  for (const change of changes) {
    const past = [{ ...first, ...change }, ...others];
    expect(rememberedHistory(past, 0.5)).toEqual(projectionHistory(past, 0.5));
    expect(rememberedHistory(past, 0.5)).not.toBe(before);
  }
});
