/** The team's own trend: every ratio over its closed sprints, with what is ordinary and what is not. */
import { marginOfError } from '../../forecast/margin-of-error.ts';
import { ratioChart } from '../../forecast/ratio-chart.ts';
import { RATIO_IDS, type RatioId } from '../../sprint/sprint-ratios.ts';
import type { Thresholds } from '../../sprint/thresholds.ts';
import type { Ratio } from '../../sprint/undefined-value.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import { baselineIndex } from '../history/baseline-sprint.ts';
import { growthOfPast } from '../history/growth-of-past.ts';
import type { PastSprint } from '../history/past-sprint.ts';
import { ratioValues } from '../history/ratio-values.ts';
import { marginSprints } from '../history/team-history.ts';
import type { Team } from '../team/team.ts';
import type { HistoryAdvice, RatioHistory } from './advice.ts';

type Lines = Pick<RatioHistory, 'floor' | 'ceiling' | 'marks'>;

/** @param past oldest first */
export function historyOf(
  team: Pick<Team, 'thresholds' | 'baselineSprintId'>,
  past: readonly PastSprint[],
): Pick<HistoryAdvice, 'past' | 'ratios' | 'baselineSprintId' | 'growth' | 'margin'> {
  const baseline = past[baselineIndex(team, past) ?? past.length];
  const lines = linesOf(team.thresholds);
  return {
    past,
    ratios: RATIO_IDS.map((ratio) =>
      ratioHistory(ratio, ratioValues(ratio, past, baseline?.velocityPoints), lines[ratio]),
    ),
    baselineSprintId: baseline?.sprintId,
    growth: past.some(({ recordedValue }) => recordedValue !== undefined)
      ? growthOfPast(team, past).growth
      : undefined,
    margin: marginOfError(marginSprints(past)),
  };
}

function ratioHistory(ratio: RatioId, values: readonly Ratio[], lines: Lines): RatioHistory {
  const { floor = Number.NEGATIVE_INFINITY, ceiling = Number.POSITIVE_INFINITY } = lines;
  const crossedAt = values.flatMap((value, i) =>
    isDefined(value) && (value < floor || value > ceiling) ? [i] : [],
  );
  return { ratio, values, ...lines, chart: ratioChart(ratio, values), crossedAt };
}

function linesOf(thresholds: Thresholds): Readonly<Record<RatioId, Lines>> {
  const lines = (floor: number | undefined, ceiling: number | undefined): Lines => ({
    floor,
    ceiling,
    marks: [],
  });
  const none = lines(undefined, undefined);
  return {
    keptShare: lines(thresholds.keptShareAtLeast, undefined),
    surpriseRatio: lines(undefined, thresholds.surpriseRatioAtMost),
    pullInRatio: lines(undefined, thresholds.pullInRatioAtMost),
    planShare: lines(thresholds.planShareAtLeast, undefined),
    estimateAccuracy: lines(thresholds.estimateAccuracyAtLeast, thresholds.estimateAccuracyAtMost),
    onScaleShare: none,
    finishShare: none,
    velocityGrowth: {
      ...none,
      marks: [thresholds.velocityGrowthFirstMark, thresholds.velocityGrowthLongRangeMark],
    },
  };
}
