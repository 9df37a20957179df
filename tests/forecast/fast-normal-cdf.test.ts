import { expect, test } from 'vitest';
import { fastNormalCdf } from '../../src/forecast/fast-normal-cdf.ts';
import { spreadsheet } from './spreadsheet.ts';

const POINTS = Array.from({ length: 181 }, (_, i) => (i - 90) * 0.0997);

test('the fast normal distribution agrees with a spreadsheet to 1e-12', () => {
  const expected = spreadsheet(POINTS.map((z) => `NORM.S.DIST(${z},TRUE())`));
  for (const [i, z] of POINTS.entries()) {
    expect(Math.abs(fastNormalCdf(z) - (expected[i] as number)), `at ${z}`).toBeLessThan(1e-12);
  }
});

test('it is 0 and 1 at the ends of the line', () => {
  expect([fastNormalCdf(Number.NEGATIVE_INFINITY), fastNormalCdf(Number.POSITIVE_INFINITY)]).toEqual([0, 1]);
});
