/** The team's own trend: every ratio over its closed sprints, with what is ordinary and what is not. */
import { controlChart } from '../../forecast/control-chart.ts';
import { RATIO_IDS, RATIOS, type RatioId, type RatioLine } from '../../sprint/sprint-ratios.ts';
import type { Thresholds } from '../../sprint/thresholds.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import { baselineOfPast } from '../history/baseline-of.ts';
import { growthOfPast } from '../history/growth-of-past.ts';
import { type PastSprint, pastVerdict } from '../history/past-sprint.ts';
import { ratioValues } from '../history/ratio-values.ts';
import { marginOfPast, oncePerPast } from '../history/team-history.ts';
import type { GoalMet, Team } from '../team/team.ts';
import type { GoalsMet, HistoryAdvice, RatioHistory } from './advice.ts';

type Lines = Pick<RatioHistory, 'floor' | 'ceiling' | 'marks'>;

/** @param past oldest first */
export function historyOf(
  team: Pick<Team, 'thresholds' | 'baselineSprintId' | 'baselineRule'>,
  past: readonly PastSprint[],
): Pick<HistoryAdvice, 'past' | 'ratios' | 'velocityBaseline' | 'growth' | 'margin'> {
  const baseline = baselineOfPast(team, past);
  return {
    past,
    ratios: RATIO_IDS.map((ratio) =>
      ratioHistory(
        ratio,
        ratioTrends(past).of(ratio, baseline?.baseline.velocityPoints),
        linesOf(ratio, team.thresholds),
      ),
    ),
    velocityBaseline: baseline,
    growth: past.some(({ recordedValue }) => recordedValue !== undefined)
      ? growthOfPast(team, past).growth
      : undefined,
    margin: marginOfPast(past),
  };
}

/** Beside how often the commitment was kept in the same sprints. */
export function goalsMet(
  team: Pick<Team, 'thresholds' | 'surpriseInVerdict'>,
  past: readonly PastSprint[],
): GoalsMet | undefined {
  const known = past.filter(({ goalMet }) => goalMet !== undefined);
  if (known.length === 0) return undefined;
  const count = (met: GoalMet) => known.filter(({ goalMet }) => goalMet === met).length;
  const kept = known.filter((sprint) => pastVerdict(sprint, team) === 'kept').length;
  return { sprints: known.length, met: count('yes'), partly: count('partly'), kept };
}

type Trend = Pick<RatioHistory, 'values' | 'chart'>;

/** What is ordinary for each ratio. Of velocity growth the latest is kept: it changes with what the team measures by. */
const ratioTrends = oncePerPast((past) => {
  const known = new Map<RatioId, Trend & { readonly baselineVelocityPoints: number | undefined }>();
  return {
    of(ratio: RatioId, baselineVelocityPoints: number | undefined): Trend {
      const before = known.get(ratio);
      if (before && before.baselineVelocityPoints === baselineVelocityPoints) return before;
      const values = ratioValues(ratio, past, baselineVelocityPoints);
      const trend = { baselineVelocityPoints, values, chart: controlChart(values, RATIOS[ratio].possible) };
      known.set(ratio, trend);
      return trend;
    },
  };
});

function ratioHistory(ratio: RatioId, { values, chart }: Trend, lines: Lines): RatioHistory {
  const { floor = Number.NEGATIVE_INFINITY, ceiling = Number.POSITIVE_INFINITY } = lines;
  const crossedAt = values.flatMap((value, i) =>
    isDefined(value) && (value < floor || value > ceiling) ? [i] : [],
  );
  return { ratio, values, ...lines, chart, crossedAt };
}

function linesOf(ratio: RatioId, thresholds: Thresholds): Lines {
  const on = (side: RatioLine['side']): number[] =>
    RATIOS[ratio].lines.flatMap((line) =>
      line.side === side && !line.onlyAsSignal ? (thresholds[line.threshold] ?? []) : [],
    );
  return { floor: on('floor')[0], ceiling: on('ceiling')[0], marks: on('mark') };
}
