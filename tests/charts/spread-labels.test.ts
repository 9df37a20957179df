import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { spreadLabels } from '../../src/charts/spread-labels.ts';

describe('labels in one column', () => {
  test('stay where they are when none touches another', () => {
    expect(spreadLabels([80, 10, 40], 14, { top: 0, bottom: 100 })).toEqual([80, 10, 40]);
  });

  test('move apart, in their order, when they would touch', () => {
    expect(spreadLabels([50, 52, 49], 14, { top: 0, bottom: 100 })).toEqual([63, 77, 49]);
    expect(spreadLabels([98, 99], 14, { top: 0, bottom: 100 })).toEqual([86, 100]);
  });

  test('none at all needs no place', () => {
    expect(spreadLabels([], 14, { top: 0, bottom: 100 })).toEqual([]);
  });

  test('always keep their distance, their order and the bounds when they fit', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -50, max: 150 }), { maxLength: 7 }), (wanted) => {
        const spread = spreadLabels(wanted, 14, { top: 0, bottom: 100 });
        const inOrder = spread.toSorted((a, b) => a - b);
        inOrder.forEach((height, index) => {
          expect(height).toBeGreaterThanOrEqual(0);
          expect(height).toBeLessThanOrEqual(100);
          if (index > 0) expect(height - (inOrder[index - 1] ?? 0)).toBeGreaterThanOrEqual(14);
        });
        wanted.forEach((one, index) => {
          wanted.forEach((other, place) => {
            if (one < other) expect(spread[index]).toBeLessThan(spread[place] ?? 0);
          });
        });
      }),
    );
  });
});
