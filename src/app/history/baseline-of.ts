/** What the velocity of a team's sprint is compared with, by the rule that the team chose. */
import {
  type Baseline,
  baselineFrom,
  type MeasuredSprint,
  medianBaseline,
  type PastBaseline,
} from '../../sprint/baseline.ts';
import { Memory } from '../memory.ts';
import type { Reading } from '../ports/store.ts';
import type { Team } from '../team/team.ts';
import type { PastSprint } from './past-sprint.ts';

/** Whether something can be measured by the sprint: points were finished in it, and it is known how many. */
export function canBeBaseline({ velocityPoints }: Pick<PastSprint, 'velocityPoints'>): boolean {
  return velocityPoints !== undefined && velocityPoints > 0;
}

/**
 * For a sprint that runs, or that closes.
 *
 * @param closing what it leaves behind: it may be one of the team's first three itself
 * @returns undefined where it may become the baseline itself; `not-yet` before there are three sprints for a median
 */
export async function baselineFor(
  read: Reading,
  team: Team,
  sprintId: string,
  closing?: MeasuredSprint & { readonly endsOn: string },
): Promise<Baseline | 'not-yet' | undefined> {
  if (!usesMedian(team)) return read.baselineOf(team, sprintId);
  const others = await read.firstSprintsOf(team.id, sprintId);
  const all = closing ? [...others, closing].sort((a, b) => a.endsOn.localeCompare(b.endsOn)) : others;
  return medianBaseline(all) ?? 'not-yet';
}

/** Teams are few that look at their status between two changes of their past. */
const baselines = new Memory<Baseline | 'not-yet' | undefined>(1_000);

/**
 * The same for a sprint that runs.
 *
 * @param pastVersion of the workspace's past, read before in the same transaction; undefined: nothing is kept
 */
export function rememberedBaseline(
  read: Reading,
  team: Team,
  sprintId: string,
  pastVersion: string | undefined,
): Promise<Baseline | 'not-yet' | undefined> {
  const { id, baselineSprintId = null, baselineRule } = team;
  const key = pastVersion && JSON.stringify([pastVersion, id, baselineSprintId, baselineRule, sprintId]);
  return baselines.get(key, () => baselineFor(read, team, sprintId));
}

/**
 * For sprints that are closed: the sprint that the team named, or the median of the first three where it chose that, else
 * the first one with a velocity above 0; undefined when there is none. The store's `baselineOf` follows the same rule.
 *
 * @param past oldest first
 */
export function baselineOfPast(
  team: Pick<Team, 'baselineSprintId' | 'baselineRule'>,
  past: readonly Pick<PastSprint, 'sprintId' | keyof MeasuredSprint>[],
): PastBaseline | undefined {
  const first = past.findIndex(canBeBaseline);
  if (usesMedian(team)) {
    const baseline = medianBaseline(past);
    return baseline && { baseline, from: first, sprintId: undefined };
  }
  const named = past.findIndex(
    (sprint) => sprint.sprintId === team.baselineSprintId && canBeBaseline(sprint),
  );
  const from = named >= 0 ? named : first;
  const sprint = past[from];
  return sprint && { baseline: baselineFrom(sprint), from, sprintId: sprint.sprintId };
}

function usesMedian({
  baselineSprintId,
  baselineRule,
}: Pick<Team, 'baselineSprintId' | 'baselineRule'>): boolean {
  return baselineSprintId === undefined && baselineRule === 'first-three';
}
