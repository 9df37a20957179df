import { expect, test } from 'vitest';
import { shortShare } from '../../src/words/charts/history.ts';

test('shares become so many times from 10,000% on, where room is scarce', () => {
  expect([0.5, 99.99, 100, 2_400.4, -150].map(shortShare)).toEqual([
    '50%',
    '9,999%',
    '100×',
    '2,400×',
    '-150×',
  ]);
});
