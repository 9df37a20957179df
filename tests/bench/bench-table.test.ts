import { expect, test } from 'vitest';
import { benchRow, isWithin } from './bench-row.ts';
import { benchTable } from './bench-table.ts';

const SLOW = benchRow({
  name: 'slow thing',
  unit: 'ms',
  value: 30,
  baseline: 'plain loop',
  baselineValue: 10,
  bound: { of: 'ratio', atMost: 2 },
});

test('a row is compared with its bound by value or by ratio, and the bound itself is within', () => {
  expect(SLOW.ratio).toBe(3);
  expect(isWithin(SLOW)).toBe(false);
  expect(isWithin({ ...SLOW, bound: { of: 'ratio', atMost: 3 } })).toBe(true);
  expect(isWithin({ ...SLOW, bound: { of: 'value', atMost: 30 } })).toBe(true);
  expect(isWithin({ ...SLOW, bound: { of: 'value', atMost: 29 } })).toBe(false);
});

test('what is to be large has a least value instead', () => {
  const many = benchRow({
    name: 'answers',
    unit: 'per second',
    value: 120,
    baseline: 'a bare app',
    baselineValue: 240,
    bound: { of: 'ratio', atLeast: 0.4 },
  });
  expect(isWithin(many)).toBe(true);
  expect(isWithin({ ...many, bound: { of: 'ratio', atLeast: 0.6 } })).toBe(false);
  expect(benchTable([many])).toContain('ratio at least 0.400 ×');
});

test('the table names value, baseline, ratio and bound, and says loudly when a bound is exceeded', () => {
  const [, line] = benchTable([SLOW]).split('\n');
  expect(line?.split(/ {2,}/)).toEqual([
    'slow thing',
    '30.0 ms',
    '10.0 ms: plain loop',
    '3.00 ×',
    'ratio at most 2.00 ×',
    'EXCEEDED',
  ]);
});
