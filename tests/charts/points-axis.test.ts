import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pointsAxis } from '../../src/charts/points-axis.ts';

describe('the axis of points', () => {
  test.each([
    [0, 2, 1],
    [0.5, 2, 1],
    [5, 5, 1],
    [5.5, 6, 2],
    [34, 40, 10],
    [50, 50, 10],
    [50.5, 60, 20],
    [160, 200, 50],
    [99_950, 100_000, 20_000],
  ])('for %s points it ends at %s in steps of %s', (highest, topPoints, stepPoints) => {
    expect(pointsAxis(highest)).toEqual({ topPoints, stepPoints });
  });

  test('it always holds the highest value, with at most five steps and less than one step to spare', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 400_000 }), (halves) => {
        const highest = halves / 2;
        const { topPoints, stepPoints } = pointsAxis(highest);
        expect(topPoints).toBeGreaterThanOrEqual(highest);
        expect(topPoints - highest).toBeLessThan(stepPoints);
        expect(topPoints / stepPoints).toBeLessThanOrEqual(5);
      }),
    );
  });
});
