/** What the experiments of a finished sprint came to: the number before, the number now, and whether that is out of the ordinary. */
import { type ControlChart, controlChart, type Signal } from '../../forecast/control-chart.ts';
import { RATIOS } from '../../sprint/sprint-ratios.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import { isDefined, type Ratio } from '../../sprint/undefined-value.ts';
import { baselineFor } from '../history/baseline-of.ts';
import { ratioValues } from '../history/ratio-values.ts';
import { pastSprints } from '../history/team-history.ts';
import type { Transaction } from '../ports/store.ts';
import type { Sprint, Team } from '../team/team.ts';
import type { Experiment } from './experiment.ts';

export interface ExperimentResult {
  readonly experiment: Experiment;
  /** In the sprint that had closed last when it began; undefined when none had. */
  readonly before: Ratio | undefined;
  readonly now: Ratio;
  /**
   * Whether there is a signal in this sprint, or a lasting rise or fall since the experiment began; undefined while there
   * are too few sprints to know.
   */
  readonly beyondOrdinary: boolean | undefined;
}

/**
 * Of the experiments that were being tried when the sprint closed first, in the order in which they began. As with the notes,
 * it looks at sprints up to this one only.
 *
 * @param summary the sprint's numbers as they are posted
 */
export async function experimentResults(
  tx: Transaction,
  team: Team,
  sprint: Sprint,
  summary: SprintSummary,
): Promise<ExperimentResult[]> {
  const experiments = triedIn(sprint, await tx.read.experimentsOf(team.id));
  if (experiments.length === 0) return [];
  const known = await pastSprints(tx, team);
  const past = known.filter(({ sprintId, endsOn }) => sprintId !== sprint.id && endsOn <= sprint.endsOn);
  const found = await baselineFor(tx.read, team, sprint.id);
  const baseline = found === 'not-yet' ? undefined : found;
  return experiments.map((experiment) => {
    const { ratio, afterSprintId } = experiment;
    const values = ratioValues(ratio, past, baseline?.velocityPoints);
    const now = summary.ratios[ratio];
    const chart = controlChart([...values, now], RATIOS[ratio].possible);
    const begun = past.findIndex(({ sprintId }) => sprintId === afterSprintId);
    return {
      experiment,
      before: values[begun],
      now,
      beyondOrdinary: isDefined(now) && !('undefined' in chart) ? hasSignalSince(chart, begun) : undefined,
    };
  });
}

function hasSignalSince({ signals, latest }: ControlChart, begun: number): boolean {
  const isChange = ({ kind, index }: Signal): boolean =>
    (kind === 'rise' || kind === 'fall') && index > begun;
  return latest.reading === 'signal' || signals.some(isChange);
}

/** Those that had begun, and not ended, when the sprint closed; a sprint that was cancelled or imported has no verdict to say it. */
export function triedIn(
  { closedAt, state, importedAt }: Pick<Sprint, 'closedAt' | 'state' | 'importedAt'>,
  experiments: readonly Experiment[],
): Experiment[] {
  if (closedAt === undefined || state === 'cancelled' || importedAt !== undefined) return [];
  return experiments.filter(
    ({ begunAt, ended }) => begunAt < closedAt && (ended === undefined || ended.at >= closedAt),
  );
}
