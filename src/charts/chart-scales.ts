/** Where axes end, and how labels beside an axis keep apart. Pure. */
import type { Interval } from '../forecast/points-distribution.ts';

/** As ECharts takes them. */
export interface NiceAxis {
  readonly type: 'value';
  readonly min: number;
  readonly max: number;
  readonly interval: number;
}

/** The least round step (1, 2 or 5 times a power of ten times `unit`) that spans both ends in so many steps at most. */
function niceAxis({ low, high }: Interval, mostSteps: number, unit: number): NiceAxis {
  for (let power = 1; ; power *= 10) {
    for (const factor of [1, 2, 5]) {
      const step = factor * power;
      // A hair of slack, so that 0.2 / 0.01 counts as 20.
      const from = Math.floor(low / unit / step + 1e-9);
      const to = Math.max(from + 1, Math.ceil(high / unit / step - 1e-9));
      const exactly = (steps: number) => Number((steps * step * unit).toPrecision(12));
      if (to - from <= mostSteps)
        return { type: 'value', min: exactly(from), max: exactly(to), interval: exactly(1) };
    }
  }
}

/** From 0, in at most five steps of whole points. Two points keep an empty sprint readable. */
export function pointsAxis(highestPoints: number): NiceAxis {
  return niceAxis({ low: 0, high: Math.max(highestPoints, 2) }, 5, 1);
}

/** A narrower axis of shares would make much of little. */
const leastSpan = 0.2;

/**
 * In at most four steps, over 20% at least, widened downwards as far as what is above 0 allows. It need not begin at 0,
 * for it carries points and lines, no columns.
 */
export function sharesAxis(shares: readonly number[]): NiceAxis {
  const [low, high] = [Math.min(...shares), Math.max(...shares)];
  const wider = high - low >= leastSpan ? low : low >= 0 ? Math.max(0, high - leastSpan) : high - leastSpan;
  return niceAxis({ low: wider, high: Math.max(high, wider + leastSpan) }, 4, 0.01);
}

/**
 * Moves heights apart, so that labels there do not touch: in their order, at least `gap` from neighbour to neighbour,
 * and between the ends as long as all of them fit there.
 */
export function spread(wanted: readonly number[], gap: number, { low, high }: Interval): number[] {
  const order = wanted.map((height, index) => ({ height, index })).sort((a, b) => a.height - b.height);
  const spaced: number[] = [];
  // Up from the low end, then down from the high one: the second pass only undoes what the first pushed too far.
  let least = low;
  for (const one of order) {
    one.height = Math.max(one.height, least);
    least = one.height + gap;
  }
  let most = high;
  for (const { height, index } of order.toReversed()) {
    spaced[index] = Math.min(height, most);
    most = (spaced[index] as number) - gap;
  }
  return spaced;
}
