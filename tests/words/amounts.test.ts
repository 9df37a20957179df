import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { against, percent, toTenths, wholePercent } from '../../src/words/amounts.ts';
import { say } from '../../src/words/say.ts';

test.each([
  [0, '0%'],
  [0.8, '80%'],
  [2 / 3, '66.7%'],
  [2.4, '240%'],
  [-0.25, '-25%'],
  [-0.0001, '0%'],
])('%s is written %s', (share, text) => {
  expect(percent(share)).toBe(text);
});

test('estimates are whole percents with a true minus sign, and nothing is never negative', () => {
  expect([0.404, 0.125, 1, -0.03, -0.001, 23.4].map(wholePercent)).toEqual([
    '40%',
    '13%',
    '100%',
    '-3%',
    '0%',
    '2,340%',
  ]);
});

test.each([
  [3.5, 3.5],
  [20 / 3, 6.7],
  [2.96, 3],
  [-1.5, -1.5],
])('%s points in tenths are %s', (points, tenths) => {
  expect(toTenths(points)).toBe(tenths);
});

test('a span is a single number where both ends are the same', () => {
  const span = (low: number, high: number) => say('history-alt-usual', { limits: 'both', low, high });
  expect(span(0.171, 0.694)).toBe('ordinarily 17% to 69%');
  expect(span(-0.5, 0)).toBe('ordinarily -50% to 0%');
  expect(span(0.249, 0.251)).toBe('ordinarily 25%');
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

  test('is as far from it as the two numbers on the page are', () => {
    expect(against(0.6875, 0.8)).toEqual({
      value: '68.8%',
      threshold: '80%',
      distance: '11.2 percentage points',
    });
    expect(against(0.3125, 0.8).distance).toBe('48.7 percentage points');
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
