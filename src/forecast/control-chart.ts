/** Tells a signal from ordinary variation in the history of one number. It says that something changed, not what. */
import { isDefined, type Ratio, type UndefinedValue, undefinedBecause } from '../sprint/undefined-value.ts';
import type { Interval } from './points-distribution.ts';

/**
 * The mean moving range of two values from a normal distribution, in standard deviations (2 ÷ √π = 1.128, as
 * rounded by NIST and most tables).
 */
const RANGE_OF_TWO = 1.128;
const LIMIT_DEVIATIONS = 3;
/** Chance of such a run without any cause: 1 in 128. */
export const RUN_LENGTH = 8;
/**
 * Below eight values one outlier in their midst stretches the limits so far that it can't be outside, and a run of
 * eight cannot be.
 */
export const LEAST_CHART_VALUES = 8;
/** What rounding may do to a mean of equal values, as a share of the greatest. */
const ROUNDING = 1e-12;

export type SignalKind =
  | 'above the limits'
  | 'below the limits'
  | 'run above the mean'
  | 'run below the mean';

export interface Signal {
  readonly kind: SignalKind;
  /** The value's place in the list given, from 0; of a run, of its eighth and every later value. */
  readonly index: number;
}

/** An individuals chart. Units: those of the values. */
export interface ControlChart {
  /** How many values were defined. */
  readonly values: number;
  readonly mean: number;
  readonly meanMovingRange: number;
  /** Where ordinary variation ends, unless the number itself ends before. */
  readonly limits: Interval;
  /** Ascending by index. */
  readonly signals: readonly Signal[];
  /** Of the last value that is defined. */
  readonly latest: {
    readonly index: number;
    readonly value: number;
    readonly reading: 'signal' | 'ordinary variation';
    readonly kinds: readonly SignalKind[];
  };
}

interface Placed {
  readonly index: number;
  readonly value: number;
}

/** The run that each value ends: its length, and the side of the mean (0 for a value on the mean). */
function runs(sides: readonly number[]): { side: number; length: number }[] {
  let length = 0;
  return sides.map((side, i) => {
    length = side !== 0 && side === sides[i - 1] ? length + 1 : 1;
    return { side, length };
  });
}

/**
 * An individuals (XmR) chart: mean, mean moving range, limits and signals.
 *
 * Formula: limits = mean ± 3 · mean moving range ÷ 1.128; a moving range is the distance between neighbours.
 * A signal is a value outside the limits, or the eighth and any later one in a row on the same side of the mean.
 * Values that are undefined are passed over, as if the sprint hadn't been. Undefined below eight defined values.
 * How it misleads: a team that improves steadily gives runs, which is good news and not a fault; numbers with a
 * floor at 0 are lopsided, so that the upper limit is crossed a little more often than 3 in 1,000; and it can't
 * say whether ordinary variation is good enough: that is what thresholds are for.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (limits) and 6.3.2 (runs).
 *
 * @param range what the number can be at all, e.g. from 0 to 1 for a share; limits are cut off there.
 * @example controlChart([1, 2, 1, 2, 1, 2, 1, 2]).latest.reading === 'ordinary variation'
 */
export function controlChart(
  values: readonly Ratio[],
  range: Partial<Interval> = {},
): ControlChart | UndefinedValue {
  const placed = values.flatMap((value, index): Placed[] => (isDefined(value) ? [{ index, value }] : []));
  const last = placed.at(-1);
  if (last === undefined || placed.length < LEAST_CHART_VALUES) {
    return undefinedBecause('no-signal-yet', { needed: LEAST_CHART_VALUES, known: placed.length });
  }
  const mean = placed.reduce((sum, { value }) => sum + value, 0) / placed.length;
  const movingRanges = placed.slice(1).map(({ value }, i) => Math.abs(value - (placed[i] as Placed).value));
  const meanMovingRange = movingRanges.reduce((sum, one) => sum + one, 0) / movingRanges.length;
  const reach = (LIMIT_DEVIATIONS * meanMovingRange) / RANGE_OF_TWO;
  const slack = ROUNDING * Math.max(...placed.map(({ value }) => Math.abs(value)));

  const sides = placed.map(({ value }) => (Math.abs(value - mean) <= slack ? 0 : Math.sign(value - mean)));
  const endedRuns = runs(sides);
  const kindsAt = (position: number): SignalKind[] => {
    const { value } = placed[position] as Placed;
    const run = endedRuns[position] as { side: number; length: number };
    const kinds: SignalKind[] = [];
    if (value > mean + reach + slack) kinds.push('above the limits');
    if (value < mean - reach - slack) kinds.push('below the limits');
    if (run.length >= RUN_LENGTH) kinds.push(run.side > 0 ? 'run above the mean' : 'run below the mean');
    return kinds;
  };
  const signals = placed.flatMap(({ index }, position) => kindsAt(position).map((kind) => ({ kind, index })));
  const latestKinds = kindsAt(placed.length - 1);
  return {
    values: placed.length,
    mean,
    meanMovingRange,
    limits: {
      low: Math.max(mean - reach, range.low ?? Number.NEGATIVE_INFINITY),
      high: Math.min(mean + reach, range.high ?? Number.POSITIVE_INFINITY),
    },
    signals,
    latest: {
      ...last,
      reading: latestKinds.length > 0 ? 'signal' : 'ordinary variation',
      kinds: latestKinds,
    },
  };
}

/** Mean and limits of a control chart that are shown: not those at which the number itself ends. Shares: 1 means 100%. */
export interface OrdinaryLimits {
  readonly mean: number;
  /** Undefined where the number ends before its variation does (at 0 or 100%), or where nothing varies. */
  readonly low: number | undefined;
  readonly high: number | undefined;
}

/** Undefined where there are too few values. */
export function ordinaryLimits(chart: ControlChart | UndefinedValue): OrdinaryLimits | undefined {
  if ('undefined' in chart) return undefined;
  const { mean, limits, meanMovingRange } = chart;
  if (meanMovingRange === 0) return { mean, low: undefined, high: undefined };
  return {
    mean,
    low: limits.low === 0 ? undefined : limits.low,
    high: limits.high === 1 ? undefined : limits.high,
  };
}
