import { describe, expect, test } from 'vitest';
import type { Interval } from '../../src/forecast/points-distribution.ts';
import { medianInterval } from '../../src/forecast/surprise-odds.ts';
import { spreadsheet } from './spreadsheet.ts';

describe('the interval of a median', () => {
  test('of the published nine velocities is 34 to 41', () => {
    // Cohn, conference slides, 2012 (primary text read).
    expect(medianInterval([41, 27, 34, 39, 35, 38, 40, 40, 45])).toEqual({ low: 34, high: 41 });
  });

  test('leaves out at most 2.5% on either side, and no less than it could, by a spreadsheet’s binomial', () => {
    const counts = Array.from({ length: 95 }, (_, i) => i + 6);
    const ranks = counts.map(
      (n) => (medianInterval(Array.from({ length: n }, (_, i) => i + 1)) as Interval).low,
    );
    const outside = spreadsheet(
      counts.map((n, i) => `BINOM.DIST(${(ranks[i] as number) - 1},${n},0.5,TRUE())`),
    );
    const oneFurtherIn = spreadsheet(counts.map((n, i) => `BINOM.DIST(${ranks[i]},${n},0.5,TRUE())`));
    for (const [i, n] of counts.entries()) {
      expect(outside[i], String(n)).toBeLessThanOrEqual(0.025);
      expect(oneFurtherIn[i], String(n)).toBeGreaterThan(0.025);
    }
  });

  test('lies as far from the greatest as from the least, in ranks', () => {
    for (const n of [6, 9, 30, 2500]) {
      const { low, high } = medianInterval(Array.from({ length: n }, (_, i) => i + 1)) as Interval;
      expect(high).toBe(n + 1 - low);
    }
  });

  test('of 2,500 values lies where the normal approximation says', () => {
    // Ranks n/2 ± 1.96·√n/2 = 1250 ± 49.
    const { low } = medianInterval(Array.from({ length: 2500 }, (_, i) => i + 1)) as Interval;
    expect(Math.abs(low - 1201)).toBeLessThanOrEqual(1);
  });

  test('says what is missing below six values', () => {
    expect(medianInterval([1, 2, 3, 4, 5])).toEqual({
      undefined: { code: 'few-values', needed: 6, known: 5 },
    });
  });
});
