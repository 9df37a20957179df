import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEFAULT_SCALE, isOnScale, snap, whyNotAScale } from '../../src/sprint/scale.ts';
import { anyScale, halves } from './random-sprint.ts';

describe('snapping to the default scale', () => {
  // The bands as design and common practice state them: 4 snaps to 5, 5 covers 4 to 6, 8 covers 7 to 10.
  test.each([
    [0, 1],
    [1, 1],
    [1.5, 2],
    [2, 2],
    [2.5, 3],
    [3.5, 3],
    [4, 5],
    [6, 5],
    [6.5, 8],
    [7, 8],
    [10, 8],
    [10.5, 13],
    [16.5, 13],
    [17, 21],
    [19, 21],
    [27, 21],
    [27.5, 34],
    [44, 34],
    [44.5, 55],
    [5000, 4181],
  ])('%s points snap to %s', (size, expected) => {
    expect(snap(size, DEFAULT_SCALE)).toBe(expected);
  });

  test('the scale goes on as the Fibonacci sequence, so estimates beyond 21 are on it', () => {
    expect([21, 34, 55, 89, 610].map((size) => isOnScale(size, DEFAULT_SCALE))).toEqual(Array(5).fill(true));
    expect([0, 4, 22, 40].map((size) => isOnScale(size, DEFAULT_SCALE))).toEqual(Array(4).fill(false));
  });

  test('a team that writes out the default scale has the default scale', () => {
    expect(snap(34, [1, 2, 3, 5, 8, 13, 21])).toBe(34);
  });
});

describe('snapping to a scale of the team', () => {
  const sizes = [1, 2, 4, 10];
  test('a tie goes up', () => {
    expect([1.5, 3, 7].map((size) => snap(size, sizes))).toEqual([2, 4, 10]);
  });

  test('the band of the largest value reaches as far above it as below, both ends included', () => {
    expect([7, 10, 13].map((size) => snap(size, sizes))).toEqual([10, 10, 10]);
    expect([6.5, 13.5, 34].map((size) => snap(size, sizes))).toEqual([4, undefined, undefined]);
  });

  test("a lone value's band reaches from 0 to twice the value", () => {
    expect([0, 4, 8, 8.5].map((size) => snap(size, [4]))).toEqual([4, 4, 4, undefined]);
  });

  test('halves and a size of 0 may be on the scale', () => {
    expect([0, 0.5, 1].map((size) => snap(size, [0, 0.5, 1]))).toEqual([0, 0.5, 1]);
    expect(snap(0.5, [0, 1])).toBe(1);
  });

  test('a scale that is longer or shorter than the default ends', () => {
    expect(snap(34, [1, 2, 3, 5, 8, 13])).toBeUndefined();
    expect(isOnScale(34, [1, 2, 3, 5, 8, 13])).toBe(false);
    expect(isOnScale(8, [1, 2, 3, 5, 8, 13])).toBe(true);
  });
});

describe('snapping, for any scale and size', () => {
  const size = fc.oneof(halves(0, 120), halves(0, 3000));
  const seed = 20261102;

  test('a value of the scale snaps to itself', () => {
    fc.assert(
      fc.property(anyScale, (scale) => {
        for (const value of scale) expect(snap(value, scale)).toBe(value);
      }),
      { seed },
    );
  });

  test('a larger size never snaps to a smaller value', () => {
    fc.assert(
      fc.property(anyScale, size, size, (scale, a, b) => {
        const low = snap(Math.min(a, b), scale) ?? Number.POSITIVE_INFINITY;
        const high = snap(Math.max(a, b), scale) ?? Number.POSITIVE_INFINITY;
        expect(low).toBeLessThanOrEqual(high);
      }),
      { seed },
    );
  });

  test('no other value of the scale lies nearer, and none as near lies higher', () => {
    fc.assert(
      fc.property(anyScale, size, (scale, points) => {
        const value = snap(points, scale);
        const distances = scale.map((other) => Math.abs(other - points));
        if (value === undefined || !scale.includes(value)) return;
        const distance = Math.abs(value - points);
        expect(Math.min(...distances)).toBe(distance);
        const asNear = scale.filter((other) => Math.abs(other - points) === distance);
        expect(Math.max(...asNear)).toBe(value);
      }),
      { seed },
    );
  });

  test('only a size beyond the band of the largest value snaps to nothing', () => {
    fc.assert(
      fc.property(anyScale, size, (scale, points) => {
        const largest = scale.at(-1) as number;
        const reach = (largest - (scale.at(-2) ?? -largest)) / 2;
        const isDefault = scale.join() === DEFAULT_SCALE.join();
        expect(snap(points, scale) === undefined).toBe(!isDefault && points - largest > reach);
      }),
      { seed },
    );
  });
});

describe('what is no scale is refused with the reason', () => {
  const noSize = (size: number): object => ({ code: 'scale-no-size', size, most: 999.5 });
  test.each([
    [[], { code: 'scale-empty' }],
    [Array.from({ length: 31 }, (_, i) => i + 1), { code: 'scale-too-long', most: 30 }],
    [[1, 2.2], noSize(2.2)],
    [[1, Number.NaN], noSize(Number.NaN)],
    [[-1, 2], noSize(-1)],
    [[1, 3, 2], { code: 'scale-not-rising', size: 2, before: 3 }],
    [[1, 1], { code: 'scale-not-rising', size: 1, before: 1 }],
    [[0], { code: 'scale-only-zero' }],
  ])('%j', (values, problem) => {
    expect(whyNotAScale(values)).toEqual(problem);
  });

  test.each([[[1]], [[0, 0.5, 1]], [[...DEFAULT_SCALE]], [Array.from({ length: 30 }, (_, i) => i + 1)]])(
    '%j is a scale',
    (values) => {
      expect(whyNotAScale(values)).toBeUndefined();
    },
  );
});
