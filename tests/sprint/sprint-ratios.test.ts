import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ledgerOf } from '../../src/sprint/ledger.ts';
import { DEFAULT_SCALE } from '../../src/sprint/scale.ts';
import type { SprintRatios } from '../../src/sprint/sprint-ratios.ts';
import { RATIO_IDS, RATIOS, ratioOfSums, sprintRatios } from '../../src/sprint/sprint-ratios.ts';
import { sprintTotals } from '../../src/sprint/totals.ts';
import { isDefined } from '../../src/sprint/undefined-value.ts';
import { anyScale, anyStates, halves } from './random-sprint.ts';
import { aCard, answer, inOrder, TUE } from './sprint-facts.ts';

function ratiosOf(
  cards: Parameters<typeof ledgerOf>[0],
  facts: Parameters<typeof ledgerOf>[1] = [],
): SprintRatios {
  return sprintRatios(sprintTotals(ledgerOf(cards, facts), DEFAULT_SCALE), undefined);
}

describe('a ratio over nothing is a reason, not a number', () => {
  test('without a commitment the ratios over it are undefined and the plan share is 0', () => {
    const pulled = aCard({ estimatePoints: 3, origin: 'pulled-in' });
    const ratios = ratiosOf([pulled], inOrder(answer(TUE, 'ana', { worked: 3, left: 0 })));
    const none = { undefined: { code: 'no-commitment' } };
    expect(ratios).toMatchObject({ keptShare: none, pullInRatio: none, surpriseRatio: none, planShare: 0 });
    expect(ratios).toMatchObject({ estimateAccuracy: 1, onScaleShare: 1, finishShare: 1 });
  });

  test('without any work every ratio is undefined', () => {
    for (const ratio of Object.values(ratiosOf([]))) {
      expect(ratio).toEqual({ undefined: { code: expect.stringMatching(/^[a-z-]+$/) } });
    }
    expect(ratiosOf([])).toMatchObject({
      planShare: { undefined: { code: 'no-load' } },
      estimateAccuracy: { undefined: { code: 'no-load' } },
    });
  });

  test('a commitment of 0 points is no commitment', () => {
    const ratios = ratiosOf([aCard({ estimatePoints: 0 })]);
    expect(ratios.keptShare).toEqual({ undefined: { code: 'no-commitment' } });
  });

  test('without finished cards there is no on-scale share, without work reported no finish share', () => {
    expect(ratiosOf([aCard()])).toMatchObject({
      keptShare: 0,
      onScaleShare: { undefined: { code: 'no-card-finished' } },
      finishShare: { undefined: { code: 'no-work-reported' } },
      velocityGrowth: { undefined: { code: 'no-baseline' } },
    });
  });

  test('a baseline of 0 points is no baseline', () => {
    expect(ratioOfSums('velocityGrowth', { velocityPoints: 5, baselineVelocityPoints: 0 })).toEqual({
      undefined: { code: 'no-baseline' },
    });
  });
});

test('errors beyond the load make the accuracy negative, not 0', () => {
  const ratios = ratiosOf(
    [aCard({ estimatePoints: 1 })],
    inOrder(answer(TUE, 'ana', { worked: 0, left: 8 })),
  );
  expect(ratios.estimateAccuracy).toBe(-6);
});

test('every ratio of any sprint is a finite number in its range, or a reason', () => {
  const ranges: Record<keyof SprintRatios, readonly [number, number]> = {
    keptShare: [0, 1],
    planShare: [0, 1],
    onScaleShare: [0, 1],
    estimateAccuracy: [Number.NEGATIVE_INFINITY, 1],
    pullInRatio: [0, Number.POSITIVE_INFINITY],
    surpriseRatio: [0, Number.POSITIVE_INFINITY],
    finishShare: [0, Number.POSITIVE_INFINITY],
    velocityGrowth: [0, Number.POSITIVE_INFINITY],
  };
  for (const id of RATIO_IDS) {
    const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } = RATIOS[id].possible;
    expect([low, high], id).toEqual(ranges[id]);
  }
  const seen = new Map<string, number>();
  fc.assert(
    fc.property(
      anyStates,
      anyScale,
      fc.option(halves(0, 50), { nil: undefined }),
      (states, scale, baseline) => {
        const ratios = sprintRatios(sprintTotals(states, scale), baseline);
        for (const [name, [least, most]] of Object.entries(ranges)) {
          const ratio = ratios[name as keyof SprintRatios];
          if (!isDefined(ratio)) {
            expect(ratio.undefined.code).toMatch(/^[a-z-]+$/);
            continue;
          }
          seen.set(name, (seen.get(name) ?? 0) + 1);
          expect(Number.isFinite(ratio)).toBe(true);
          expect(ratio).toBeGreaterThanOrEqual(least);
          expect(ratio).toBeLessThanOrEqual(most);
          expect(Object.is(ratio, -0)).toBe(false);
        }
      },
    ),
    { seed: 20261105, numRuns: 500 },
  );
  // Each ratio was met as a number often enough for its bounds to mean something.
  for (const name of Object.keys(ranges)) expect(seen.get(name) ?? 0, name).toBeGreaterThan(50);
});
