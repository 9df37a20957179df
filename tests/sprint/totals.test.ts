import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ledgerOf } from '../../src/sprint/ledger.ts';
import { DEFAULT_SCALE } from '../../src/sprint/scale.ts';
import { sprintTotals } from '../../src/sprint/totals.ts';
import { anyScale, anyStates } from './random-sprint.ts';
import { aCard, answer, drop, inOrder, reopen, THU, TUE, WED } from './sprint-facts.ts';

test('an empty sprint adds up to zeros', () => {
  expect(new Set(Object.values(sprintTotals([], DEFAULT_SCALE)))).toEqual(new Set([0]));
});

describe('a sprint with a finished, a grown, a dropped, a reopened and a pulled-in card', () => {
  const cards = [
    aCard({ id: 'finished', estimatePoints: 5 }),
    aCard({ id: 'grown', estimatePoints: 8 }),
    aCard({ id: 'dropped', estimatePoints: 3 }),
    aCard({ id: 'reopened', estimatePoints: 2 }),
    aCard({ id: 'pulled', estimatePoints: 1, origin: 'pulled-in', enteredOn: WED }),
    aCard({ id: 'pulled-dropped', estimatePoints: 0.5, origin: 'pulled-in', enteredOn: WED }),
  ];
  const facts = inOrder(
    answer(TUE, 'ana', { worked: 5, left: 0, card: 'finished' }),
    answer(TUE, 'ana', { worked: 4, left: 8, surprise: 3, card: 'grown' }),
    answer(TUE, 'ana', { worked: 1, left: 3, surprise: 1, card: 'dropped' }),
    drop(WED, 'dropped'),
    answer(TUE, 'ben', { left: 0, card: 'reopened' }),
    reopen(WED, 'reopened'),
    answer(THU, 'ben', { worked: 2, left: 0, surprise: 0, card: 'pulled' }),
    drop(THU, 'pulled-dropped'),
  );
  const totals = sprintTotals(ledgerOf(cards, facts), DEFAULT_SCALE);

  test('a dropped card keeps its estimate in the commitment, and in the pulled-in work', () => {
    expect(totals).toMatchObject({ commitmentPoints: 18, pulledInPoints: 1.5 });
  });

  test('surprise counts on every card, and load is commitment + pulled-in + surprise', () => {
    expect(totals).toMatchObject({ surprisePoints: 4, driftPoints: 2, growthPoints: 6, loadPoints: 23.5 });
  });

  test('only finished cards count for the velocity; neither dropped nor reopened ones do', () => {
    expect(totals).toMatchObject({ velocityPoints: 6, committedFinishedPoints: 5, finishedCards: 2 });
  });

  test('the estimate error leaves dropped cards out', () => {
    // grown: 12 for 8 errs by 4; pulled: 2 for 1 errs by 1; the dropped one (4 for 3) does not count.
    expect(totals).toMatchObject({ estimateErrorPoints: 5, plainEstimateErrorPoints: 5, onScaleCards: 1 });
  });

  test('left counts every card, open left only those still in the sprint', () => {
    expect(totals).toMatchObject({ workedPoints: 14, leftPoints: 11.5, openLeftPoints: 8 });
  });
});

test('conservation holds for the sums of any sprint', () => {
  fc.assert(
    fc.property(anyStates, anyScale, (states, scale) => {
      const totals = sprintTotals(states, scale);
      expect(totals.commitmentPoints + totals.pulledInPoints + totals.growthPoints).toBe(
        totals.workedPoints + totals.leftPoints,
      );
      expect(totals.estimateErrorPoints).toBeLessThanOrEqual(totals.plainEstimateErrorPoints);
      expect(totals.onScaleCards).toBeLessThanOrEqual(totals.finishedCards);
    }),
    { seed: 20261104, numRuns: 300 },
  );
});
