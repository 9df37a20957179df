import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ratioAxis } from '../../src/charts/ratio-axis.ts';

describe('the axis of shares', () => {
  test.each([
    [0, 1, { low: 0, high: 1, step: 0.5 }],
    [0.74, 1, { low: 0.7, high: 1, step: 0.1 }],
    [0, 0.56, { low: 0, high: 0.6, step: 0.2 }],
    [-0.35, 0.95, { low: -0.5, high: 1, step: 0.5 }],
    [1, 2.4, { low: 1, high: 2.5, step: 0.5 }],
  ])('from %s to %s has round ends and steps', (low, high, axis) => {
    expect(ratioAxis({ low, high })).toEqual(axis);
  });

  test('spans 20% at least, reaching downwards so that shares do not pass 100%, but not below 0', () => {
    expect(ratioAxis({ low: 0.97, high: 0.99 })).toEqual({ low: 0.7, high: 1, step: 0.1 });
    expect(ratioAxis({ low: 0, high: 0 })).toEqual({ low: 0, high: 0.2, step: 0.05 });
  });

  test('holds both ends in at most four steps', () => {
    const ends = fc.tuple(
      fc.double({ min: -20, max: 5_000, noNaN: true }),
      fc.double({ min: 0, max: 5_000, noNaN: true }),
    );
    fc.assert(
      fc.property(ends, ([low, span]) => {
        const axis = ratioAxis({ low, high: low + span });
        expect(axis.low).toBeLessThanOrEqual(low + 1e-6);
        expect(axis.high).toBeGreaterThanOrEqual(low + span - 1e-6);
        expect(Math.round((axis.high - axis.low) / axis.step)).toBeLessThanOrEqual(4);
      }),
    );
  });
});
