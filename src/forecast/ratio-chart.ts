/** The control chart of one of a team's ratios. */
import type { RatioId } from '../sprint/sprint-ratios.ts';
import type { Ratio, UndefinedValue } from '../sprint/undefined-value.ts';
import type { ControlChart } from './control-chart.ts';
import { controlChart } from './control-chart.ts';
import type { Interval } from './interval.ts';

/** What each ratio can be at all (docs/ratios.md), so that no limit promises what can't happen. */
const POSSIBLE: Readonly<Record<RatioId, Partial<Interval>>> = {
  keptShare: { low: 0, high: 1 },
  pullInRatio: { low: 0 },
  surpriseRatio: { low: 0 },
  planShare: { low: 0, high: 1 },
  estimateAccuracy: { high: 1 },
  onScaleShare: { low: 0, high: 1 },
  finishShare: { low: 0 },
  velocityGrowth: { low: 0 },
};

/** @param values one a sprint, oldest first */
export function ratioChart(ratio: RatioId, values: readonly Ratio[]): ControlChart | UndefinedValue {
  return controlChart(values, POSSIBLE[ratio]);
}
