/** The limits of a control chart that are told: not those at which the number itself ends. Pure. */
import type { ControlChart } from '../forecast/control-chart.ts';
import type { UndefinedValue } from '../sprint/undefined-value.ts';
import { wholePercent, wholePercentSpan } from '../sprint/whole-percent.ts';

/** Shares: 1 means 100%. */
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

/** `74% or more`, `up to 35%`, `60 to 96%`; undefined where no limit is told. */
export function ordinaryText({ low, high }: OrdinaryLimits): string | undefined {
  if (low !== undefined && high !== undefined) return wholePercentSpan({ low, high });
  if (low !== undefined) return `${wholePercent(low)} or more`;
  return high === undefined ? undefined : `up to ${wholePercent(high)}`;
}
