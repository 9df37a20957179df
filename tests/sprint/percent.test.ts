import { expect, test } from 'vitest';
import { formatPercent } from '../../src/sprint/percent.ts';

test.each([
  [0, '0%'],
  [0.8, '80%'],
  [2 / 3, '66.7%'],
  [2.4, '240%'],
  [-0.25, '-25%'],
  [-0.0001, '0%'],
])('%s is written %s', (share, text) => {
  expect(formatPercent(share)).toBe(text);
});
