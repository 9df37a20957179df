/** The latest sprints of a history, since a picture has no room for all, and what is ordinary in them. Pure. */
import type { HistoryAdvice, RatioHistory } from '../app/advice/advice.ts';
import type { PastSprint } from '../app/history/past-sprint.ts';
import type { ControlChart } from '../forecast/control-chart.ts';
import type { Growth } from '../forecast/value-growth.ts';
import type { Day } from '../sprint/calendar.ts';
import { isDefined, type UndefinedValue } from '../sprint/undefined-value.ts';

/** A year of two-week sprints. */
export const mostHistorySprints = 26;

/** Places count from the first sprint shown. Limits and signals come from all sprints, shown or not. */
export interface ShownRatio extends Omit<RatioHistory, 'crossedAt'> {
  readonly signalsAt: ReadonlySet<number>;
  readonly crossedAt: ReadonlySet<number>;
}

export interface HistoryWindow {
  readonly past: readonly PastSprint[];
  /** Sprints before those shown. */
  readonly earlier: number;
  readonly ratios: readonly ShownRatio[];
  readonly growth: readonly Growth[] | undefined;
  /** Last days of the sprints that velocity growth, and growth beside the recorded value, are measured by. */
  readonly baselineEnds: { readonly velocity: Day | undefined; readonly growth: Day | undefined };
}

export function historyWindow({ past, ratios, growth, baselineSprintId }: HistoryAdvice): HistoryWindow {
  const earlier = Math.max(0, past.length - mostHistorySprints);
  const shown = past.slice(earlier);
  return {
    past: shown,
    earlier,
    ratios: ratios.map((ratio) => shownRatio(ratio, earlier)),
    growth: growth?.slice(earlier),
    baselineEnds: {
      velocity: past.find(({ sprintId }) => sprintId === baselineSprintId)?.endsOn,
      growth: past[growth?.findIndex(({ velocityGrowth }) => isDefined(velocityGrowth)) ?? -1]?.endsOn,
    },
  };
}

function shownRatio(history: RatioHistory, earlier: number): ShownRatio {
  const { chart, crossedAt, values } = history;
  const placed = (indices: readonly number[]) =>
    new Set(indices.map((index) => index - earlier).filter((index) => index >= 0));
  return {
    ...history,
    values: values.slice(earlier),
    signalsAt: placed('undefined' in chart ? [] : chart.signals.map(({ index }) => index)),
    crossedAt: placed(crossedAt),
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
