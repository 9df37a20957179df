import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compareWithPublished } from './compare-with-published.ts';
import { deliveryDifference, ledgerFigures } from './delivery-difference.ts';
import { describeSample } from './describe-sample.ts';
import type { PublishedFigures } from './published-table-7.ts';
import type { SprintMoment } from './read-open-data.ts';

function moment(given: Partial<SprintMoment>): SprintMoment {
  return {
    board: 900,
    sprint: 1,
    plannedDays: 14,
    elapsedPercent: 30,
    startPoints: 0,
    addedPoints: 0,
    removedPoints: 0,
    todoPoints: 0,
    inProgressPoints: 0,
    donePoints: 0,
    members: 3,
    deliveredPoints: 0,
    ...given,
  };
}

describe('the ledger gives back what the rows say', () => {
  test('committed at a moment is start + added − removed, delivered is what was delivered', () => {
    const points = fc.nat(200);
    fc.assert(
      fc.property(points, points, points, points, (startPoints, addedPoints, some, deliveredPoints) => {
        const removedPoints = Math.min(some, startPoints + addedPoints);
        const figures = ledgerFigures(moment({ startPoints, addedPoints, removedPoints, deliveredPoints }));
        expect(figures).toEqual({
          committedPoints: startPoints + addedPoints - removedPoints,
          deliveredPoints,
        });
      }),
      { seed: 20261109, numRuns: 500 },
    );
  });

  test('the difference is below 0 when the team delivered less than it had committed to', () => {
    expect(
      deliveryDifference(moment({ startPoints: 15, addedPoints: 7, removedPoints: 3, deliveredPoints: 7 })),
    ).toBe(-12);
    expect(deliveryDifference(moment({ startPoints: 4, deliveredPoints: 9 }))).toBe(5);
  });

  test('more removed than there was is refused', () => {
    expect(() => ledgerFigures(moment({ startPoints: 1, removedPoints: 2 }))).toThrow(/more points removed/);
  });
});

describe('a sample', () => {
  test('is described with a standard deviation of n − 1 and quantiles of type 7', () => {
    // Hyndman and Fan 1996, type 7 of {1,2,3,4}: 1.75 and 3.25. SD: the square root of 5/3, by hand.
    expect(describeSample([4, 1, 3, 2])).toEqual({
      n: 4,
      min: 1,
      max: 4,
      mean: 2.5,
      median: 2.5,
      SD: expect.closeTo(Math.sqrt(5 / 3), 12),
      IQR: 1.5,
    });
  });

  test('of one value has no standard deviation', () => {
    expect(() => describeSample([1])).toThrow(RangeError);
  });
});

describe('a published figure', () => {
  const rows = [1, 2, 4].map((deliveredPoints) => moment({ deliveredPoints }));
  const published = (figures: PublishedFigures['figures']): PublishedFigures => ({
    table: 'Table 7',
    project: 'a',
    elapsedPercent: 30,
    figures,
  });

  test('agrees within the rounding of its last decimal', () => {
    // The mean is 2.333…
    for (const mean of ['2', '2.3', '2.33', '2.333']) {
      expect(compareWithPublished(rows, published({ mean }))[0]?.agrees, mean).toBe(true);
    }
    for (const mean of ['3', '2.4', '2.34', '2.32', '-2.33']) {
      expect(compareWithPublished(rows, published({ mean }))[0]?.agrees, mean).toBe(false);
    }
  });

  test('is compared with the rows of its own moment only', () => {
    const later = moment({ elapsedPercent: 50, deliveredPoints: 100 });
    expect(
      compareWithPublished([...rows, later], published({ n: '3', max: '4' })).map((each) => each.agrees),
    ).toEqual([true, true]);
  });

  test('cannot be compared with a single sprint', () => {
    expect(() => compareWithPublished(rows.slice(0, 1), published({ n: '1' }))).toThrow(
      /too few sprints at 30%/,
    );
  });
});
