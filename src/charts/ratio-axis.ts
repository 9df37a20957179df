/** Chooses where an axis of shares begins and ends and where its grid lines stand. Pure. */
import type { Interval } from '../forecast/interval.ts';

/** Shares: 1 means 100%. */
export interface RatioAxis extends Interval {
  readonly step: number;
}

const mostSteps = 4;
/** A narrower axis would make much of little. */
const leastSpan = 0.2;

/**
 * The least round step (1, 2 or 5 times a power of ten percent) that spans both ends in at most four steps, and at least 20%. Such an
 * axis need not begin at 0, for it carries points and lines, no columns.
 */
export function ratioAxis(span: Interval): RatioAxis {
  const { low, high } = widened(span);
  for (let power = 1; ; power *= 10) {
    for (const factor of [1, 2, 5]) {
      const percent = factor * power;
      // A hair of slack, so that 0.2 · 100 counts as 20.
      const from = Math.floor((low * 100) / percent + 1e-9);
      const to = Math.max(from + 1, Math.ceil((high * 100) / percent - 1e-9));
      if (to - from <= mostSteps) {
        return { low: (from * percent) / 100, high: (to * percent) / 100, step: percent / 100 };
      }
    }
  }
}

/** Downwards, as far as what is above 0 allows. */
function widened({ low, high }: Interval): Interval {
  if (high - low >= leastSpan) return { low, high };
  const wider = low >= 0 ? Math.max(0, high - leastSpan) : high - leastSpan;
  return { low: wider, high: Math.max(high, wider + leastSpan) };
}
