/** Tells a signal from ordinary variation in the history of one number. It says that something changed, not what. */
import { isDefined, type Ratio, type UndefinedValue, undefinedBecause } from '../sprint/undefined-value.ts';
import type { Interval } from './points-distribution.ts';
import { median } from './quantile.ts';
import { rankSumChance } from './rank-sum.ts';

/**
 * The mean moving range of two values from a normal distribution, in standard deviations (2 ÷ √π = 1.128, as
 * rounded by NIST and most tables).
 */
const RANGE_OF_TWO = 1.128;
const LIMIT_DEVIATIONS = 3;
/** Of fewer values nothing is known but that they differ. */
export const LEAST_CHART_VALUES = 8;
/** Nobody would act on less: 5 percentage points. */
const LEAST_WIDTH = 0.05;
/** So many sprints in a row show a change. */
export const CHANGE_SPRINTS = 6;
/** They are held against so many before them at most: a year of two-week sprints together. */
const COMPARED_SPRINTS = 20;
/** The chance of such a difference without any cause. Of eight numbers at once, one in 25 looks would show one. */
const CHANGE_CHANCE = 0.005;
/** How far beyond all others a single value is a signal; fitted by simulation, see the tests. */
const FAR_BEYOND_OF_MANY = 1;
const FAR_BEYOND_OF_FEW = 50;
/** What rounding may do to a mean of equal values, as a share of the greatest. */
const ROUNDING = 1e-12;

export type SignalKind = 'above the limits' | 'below the limits' | 'rise' | 'fall';

export interface Signal {
  readonly kind: SignalKind;
  /** The value's place in the list given, from 0; of a rise or fall, where it was seen: its sixth value. */
  readonly index: number;
}

/** An individuals chart of the values since the last rise or fall. Units: those of the values; 1 means 100%. */
export interface ControlChart {
  /** How many defined values there are since then. */
  readonly values: number;
  /** The mean of the earlier values that the last rise or fall was seen against; undefined when there was none. */
  readonly meanBefore: number | undefined;
  readonly mean: number;
  readonly meanMovingRange: number;
  /** Where ordinary variation ends, unless the number itself ends before. */
  readonly limits: Interval;
  /** Of all values, ascending by index. */
  readonly signals: readonly Signal[];
  /** Of the last value that is defined. `unusual`: outside the limits, but not so far that it must be a signal. */
  readonly latest: {
    readonly index: number;
    readonly value: number;
    readonly reading: 'signal' | 'unusual' | 'ordinary variation';
    readonly kinds: readonly SignalKind[];
  };
}

interface Placed {
  readonly index: number;
  readonly value: number;
}

/**
 * An individuals (XmR) chart: mean, mean moving range, limits and signals.
 *
 * Formula: limits = mean ± 3 · mean moving range ÷ 1.128, and 0.05 from the mean at least; a moving range is the
 * distance between neighbours. Signals are of two kinds:
 * - a rise or fall: the latest six values differ from the up to twenty before them by the exact rank-sum test at 5 in
 *   1,000, and their means by 0.05 at least. The chart then begins anew with those six. It takes twelve values;
 * - a single value outside the limits that is also further from the median of the n others than the furthest of them
 *   on that side, times 1 + 50 ÷ n. Where none of them is on that side, no single value is a signal.
 *
 * Both hold for numbers of any shape: shares near their upper end, or surprise work that is 0 in most sprints, where
 * limits alone call up to a quarter of all sprints a signal. Values that are undefined are passed over, as if the
 * sprint hadn't been. Undefined below eight defined values.
 * How it misleads: with few sprints only a change of more than two standard deviations has an even chance to be seen
 * within six sprints; it takes sprints to be alike and independent; and it can't say whether ordinary variation is good
 * enough: that is what thresholds are for.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (limits); Wilcoxon's rank-sum test (change). The two
 * numbers of the last rule are our own, from a simulation that the tests repeat.
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
  const changes = changesIn(placed);
  const stretches = [0, ...changes.map(({ from }) => from)].map((from, i) =>
    placed.slice(from, changes[i]?.from),
  );
  const current = stretches.at(-1) as readonly Placed[];
  const { mean, meanMovingRange, low, high } = limitsOf(current);
  const signals = [
    ...changes.map(({ kind, seenAt }) => ({ kind, index: (placed[seenAt] as Placed).index })),
    ...stretches.flatMap(farValues),
  ].toSorted((a, b) => a.index - b.index);
  const kinds = signals.filter(({ index }) => index === last.index).map(({ kind }) => kind);
  const isOutside = last.value < low || last.value > high;
  return {
    values: current.length,
    meanBefore: changes.at(-1)?.meanBefore,
    mean,
    meanMovingRange,
    limits: {
      low: Math.max(low, range.low ?? Number.NEGATIVE_INFINITY),
      high: Math.min(high, range.high ?? Number.POSITIVE_INFINITY),
    },
    signals,
    latest: {
      ...last,
      reading: kinds.length > 0 ? 'signal' : isOutside ? 'unusual' : 'ordinary variation',
      kinds,
    },
  };
}

interface Change {
  readonly kind: 'rise' | 'fall';
  /** Places among the defined values. */
  readonly from: number;
  readonly seenAt: number;
  readonly meanBefore: number;
}

/** Rises and falls, as they were seen sprint by sprint; each is compared with the values since the one before. */
function changesIn(placed: readonly Placed[]): Change[] {
  const values = placed.map(({ value }) => value);
  const changes: Change[] = [];
  for (let seenAt = 2 * CHANGE_SPRINTS - 1; seenAt < values.length; seenAt += 1) {
    const from = seenAt + 1 - CHANGE_SPRINTS;
    const since = changes.at(-1)?.from ?? 0;
    if (from - since < CHANGE_SPRINTS) continue;
    const before = values.slice(Math.max(since, from - COMPARED_SPRINTS), from);
    const latest = values.slice(from, seenAt + 1);
    const meanBefore = meanOf(before);
    const rise = meanOf(latest) - meanBefore;
    if (Math.abs(rise) < LEAST_WIDTH || Math.sign(rise) !== directionOf(before, latest)) continue;
    if (rankSumChance(before, latest) > CHANGE_CHANCE) continue;
    changes.push({ kind: rise > 0 ? 'rise' : 'fall', from, seenAt, meanBefore });
  }
  return changes;
}

/** 1 where most later values are greater than most earlier ones, -1 where they are less. */
function directionOf(before: readonly number[], latest: readonly number[]): number {
  let direction = 0;
  for (const late of latest) for (const early of before) direction += Math.sign(late - early);
  return Math.sign(direction);
}

function limitsOf(stretch: readonly Placed[]) {
  const values = stretch.map(({ value }) => value);
  const mean = meanOf(values);
  const meanMovingRange = meanOf(values.slice(1).map((value, i) => Math.abs(value - (values[i] as number))));
  const slack = ROUNDING * Math.max(...values.map(Math.abs));
  const reach = Math.max((LIMIT_DEVIATIONS * meanMovingRange) / RANGE_OF_TWO, LEAST_WIDTH) + slack;
  return { mean, meanMovingRange, low: mean - reach, high: mean + reach };
}

/** Single values that lie far beyond all others of their stretch. */
function farValues(stretch: readonly Placed[]): Signal[] {
  if (stretch.length < LEAST_CHART_VALUES) return [];
  const { low, high } = limitsOf(stretch);
  return stretch.flatMap(({ index, value }): Signal[] => {
    if (value >= low && value <= high) return [];
    const others = stretch.filter((other) => other.index !== index).map((other) => other.value);
    const middle = median(others) as number;
    const beyond = FAR_BEYOND_OF_MANY + FAR_BEYOND_OF_FEW / others.length;
    const [up, down] = [Math.max(...others) - middle, middle - Math.min(...others)];
    if (up > 0 && value > high && value - middle > beyond * up) return [{ kind: 'above the limits', index }];
    if (down > 0 && value < low && middle - value > beyond * down)
      return [{ kind: 'below the limits', index }];
    return [];
  });
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
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
