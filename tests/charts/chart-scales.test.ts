import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pointsAxis, sharesAxis, spread } from '../../src/charts/chart-scales.ts';

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
    expect(pointsAxis(highest)).toEqual({ type: 'value', min: 0, max: topPoints, interval: stepPoints });
  });

  test('it always holds the highest value, with at most five steps and less than one step to spare', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 400_000 }), (halves) => {
        const highest = halves / 2;
        const { max: topPoints, interval: stepPoints } = pointsAxis(highest);
        expect(topPoints).toBeGreaterThanOrEqual(highest);
        expect(topPoints - highest).toBeLessThan(stepPoints);
        expect(topPoints / stepPoints).toBeLessThanOrEqual(5);
      }),
    );
  });
});

describe('the axis of shares', () => {
  test.each([
    [0, 1, { type: 'value', min: 0, max: 1, interval: 0.5 }],
    [0.74, 1, { type: 'value', min: 0.7, max: 1, interval: 0.1 }],
    [0, 0.56, { type: 'value', min: 0, max: 0.6, interval: 0.2 }],
    [-0.35, 0.95, { type: 'value', min: -0.5, max: 1, interval: 0.5 }],
    [1, 2.4, { type: 'value', min: 1, max: 2.5, interval: 0.5 }],
  ])('from %s to %s has round ends and steps', (low, high, axis) => {
    expect(sharesAxis([low, high])).toEqual(axis);
  });

  test('spans 20% at least, reaching downwards so that shares do not pass 100%, but not below 0', () => {
    expect(sharesAxis([0.97, 0.99])).toEqual({ type: 'value', min: 0.7, max: 1, interval: 0.1 });
    expect(sharesAxis([0, 0])).toEqual({ type: 'value', min: 0, max: 0.2, interval: 0.05 });
  });

  test('holds both ends in at most four steps', () => {
    const ends = fc.tuple(
      fc.double({ min: -20, max: 5_000, noNaN: true }),
      fc.double({ min: 0, max: 5_000, noNaN: true }),
    );
    fc.assert(
      fc.property(ends, ([low, span]) => {
        const axis = sharesAxis([low, low + span]);
        expect(axis.min).toBeLessThanOrEqual(low + 1e-6);
        expect(axis.max).toBeGreaterThanOrEqual(low + span - 1e-6);
        expect(Math.round((axis.max - axis.min) / axis.interval)).toBeLessThanOrEqual(4);
      }),
    );
  });
});

describe('labels in one column', () => {
  test('stay where they are when none touches another', () => {
    expect(spread([80, 10, 40], 14, { low: 0, high: 100 })).toEqual([80, 10, 40]);
  });

  test('move apart, in their order, when they would touch', () => {
    expect(spread([50, 52, 49], 14, { low: 0, high: 100 })).toEqual([63, 77, 49]);
    expect(spread([98, 99], 14, { low: 0, high: 100 })).toEqual([86, 100]);
  });

  test('none at all needs no place', () => {
    expect(spread([], 14, { low: 0, high: 100 })).toEqual([]);
  });

  test('always keep their distance, their order and the bounds when they fit', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -50, max: 150 }), { maxLength: 7 }), (wanted) => {
        const moved = spread(wanted, 14, { low: 0, high: 100 });
        const inOrder = moved.toSorted((a, b) => a - b);
        inOrder.forEach((height, index) => {
          expect(height).toBeGreaterThanOrEqual(0);
          expect(height).toBeLessThanOrEqual(100);
          if (index > 0) expect(height - (inOrder[index - 1] ?? 0)).toBeGreaterThanOrEqual(14);
        });
        wanted.forEach((one, index) => {
          wanted.forEach((other, place) => {
            if (one < other) expect(moved[index]).toBeLessThan(moved[place] ?? 0);
          });
        });
      }),
    );
  });
});
