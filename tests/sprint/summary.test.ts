import { describe, expect, test } from 'vitest';
import { ledgerOf } from '../../src/sprint/ledger.ts';
import { DEFAULT_SCALE } from '../../src/sprint/scale.ts';
import { closingSummary, runningSummary } from '../../src/sprint/summary.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import { aCard, answer, inOrder, TUE } from './sprint-facts.ts';

const yardstick = { scale: DEFAULT_SCALE, thresholds: DEFAULT_THRESHOLDS, baseline: undefined };
const finished = ledgerOf([aCard()], inOrder(answer(TUE, 'ana', { worked: 5, left: 0 })));

describe('the first sprint with a velocity is its own baseline', () => {
  test('once it is over', () => {
    const { ratios, baseline } = closingSummary(finished, yardstick);
    expect([ratios.velocityGrowth, baseline]).toEqual([1, 'itself']);
  });

  test('but not while it runs', () => {
    expect(runningSummary(finished, yardstick).ratios.velocityGrowth).toHaveProperty('undefined');
  });

  test('and not when it has no velocity', () => {
    expect(closingSummary(ledgerOf([aCard()], []), yardstick).ratios.velocityGrowth).toHaveProperty(
      'undefined',
    );
  });
});

test('a sprint is measured by the earlier baseline when there is one', () => {
  const later = { ...yardstick, baseline: { name: 'Harbour 1', velocityPoints: 2 } };
  const summary = closingSummary(finished, later);
  expect([summary.ratios.velocityGrowth, summary.baseline]).toEqual([2.5, { name: 'Harbour 1' }]);
  expect(summary.notes.map((note) => note.id)).toEqual(['estimate-accuracy-high']);
});

test('verdict, ratios, totals and notes are those of the same cards, scale and thresholds', () => {
  const grown = ledgerOf([aCard()], inOrder(answer(TUE, 'ana', { worked: 2, left: 5, surprise: 2 })));
  const summary = closingSummary(grown, { ...yardstick, scale: [5, 10] });
  expect(summary.totals).toMatchObject({ commitmentPoints: 5, surprisePoints: 2, loadPoints: 7 });
  // 7 snaps to 5 on a scale of 5 and 10, so there is no estimate error.
  expect(summary.ratios).toMatchObject({
    keptShare: 0,
    surpriseRatio: 0.4,
    planShare: 5 / 7,
    estimateAccuracy: 1,
  });
  expect(summary.verdict.failedTests.map((failed) => failed.id)).toEqual(['keptShare', 'surpriseRatio']);
  expect(summary.notes.map((note) => note.id)).toEqual([
    'kept-share-low',
    'surprise-ratio-high',
    'plan-share-low',
    'estimate-accuracy-high',
  ]);
});
