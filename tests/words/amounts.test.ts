import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { against, percent } from '../../src/words/amounts.ts';

test.each([
  [0.8, '80%'],
  [2 / 3, '66.7%'],
  [-0.25, '-25%'],
  [-0.0001, '0%'],
])('%s is written %s', (share, text) => {
  expect(percent(share)).toBe(text);
});

test('distances are percentage points, one of them in the singular', () => {
  expect([0.05, 0.01, 0.005].map((distance) => against(0.5 + distance, 0.5).distance)).toEqual([
    '5 percentage points',
    '1 percentage point',
    '0.5 percentage points',
  ]);
});

describe('a value beside its threshold', () => {
  test('has as many decimals as it takes to tell them apart', () => {
    expect(against(0.7996, 0.8)).toEqual({
      value: '79.96%',
      threshold: '80%',
      distance: '0.04 percentage points',
    });
    expect(against(0.75, 0.8)).toEqual({
      value: '75%',
      threshold: '80%',
      distance: '5 percentage points',
    });
  });

  test('looks equal when it is equal', () => {
    expect(against(1 / 3, 1 / 3)).toEqual({
      value: '33.3%',
      threshold: '33.3%',
      distance: '0 percentage points',
    });
  });

  test('never looks as if it lay on a threshold that it misses', () => {
    const thousandths = fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000);
    fc.assert(
      fc.property(fc.nat(100_000), fc.integer({ min: 1, max: 100_000 }), thousandths, (n, d, threshold) => {
        if (n / d === threshold) return;
        const text = against(n / d, threshold);
        expect(text.value).not.toBe(text.threshold);
        expect(text.distance).not.toMatch(/^0 /);
      }),
      { seed: 20261106, numRuns: 2000 },
    );
  });
});
