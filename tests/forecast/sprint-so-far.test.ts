import { expect, test } from 'vitest';
import { sprintSoFar } from '../../src/forecast/sprint-so-far.ts';
import { ledgerOf } from '../../src/sprint/ledger.ts';
import { aCard, answer, drop, inOrder, MON, TUE } from '../sprint/sprint-facts.ts';

test('finished cards count in full, open ones by the share of their size worked off, dropped ones not at all', () => {
  const cards = [
    aCard({ id: 'done', estimatePoints: 3 }),
    aCard({ id: 'grown', estimatePoints: 5 }),
    aCard({ id: 'fresh', estimatePoints: 8 }),
    aCard({ id: 'gone', estimatePoints: 13 }),
  ];
  const facts = inOrder(
    answer(MON, 'ana', { card: 'done', worked: 3, left: 0 }),
    // 5 estimated, 4 worked, 4 left: half of its true size, so 2.5 of its estimate.
    answer(MON, 'ana', { card: 'grown', worked: 4, left: 4, surprise: 3 }),
    answer(MON, 'ana', { card: 'gone', worked: 2, left: 11 }),
    drop(TUE, 'gone'),
  );
  expect(sprintSoFar(ledgerOf(cards, facts))).toEqual({
    cardPoints: 16,
    finishedPoints: 3,
    underwayPoints: 2.5,
  });
});

test('a sprint without cards is one of 0 points', () => {
  expect(sprintSoFar([])).toEqual({ cardPoints: 0, finishedPoints: 0, underwayPoints: 0 });
});

test('an open card without size is not underway', () => {
  expect(sprintSoFar(ledgerOf([aCard({ estimatePoints: 0 })], [])).underwayPoints).toBe(0);
});
