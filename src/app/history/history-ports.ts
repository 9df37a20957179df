/** What the statistics need from the store, inside a transaction: what finished sprints leave behind. */
import type { Sprint, Team } from '../team/team.ts';
import type { NewPastSprint, PastSprint, PastTrace, RecordedValue } from './past-sprint.ts';

export interface HistoryQueries {
  /** Inserts what a finished sprint leaves behind, or replaces it when the sprint closes again. */
  savePastSprint(past: NewPastSprint): Promise<void>;
  /** The team's closed sprints (imported ones included, cancelled ones not), by last day, oldest first. */
  pastSprintsOf(teamId: string): Promise<PastSprint[]>;
  /**
   * Closed sprints that have left nothing behind yet: those that closed before there was such a record.
   *
   * @param amongLatest look at so many by last day; undefined: at all, which takes the longer the more there are
   */
  sprintsWithoutPast(teamId: string, amongLatest?: number): Promise<Sprint[]>;
  /**
   * How the latest closed sprints went, oldest first: so many of the team's own, and so many watched ones of the other
   * teams of its workspace. Of each trace the point at that share of the working days, to the nearest day.
   */
  pastTracesOf(
    team: Pick<Team, 'id' | 'workspaceId'>,
    most: { readonly own: number; readonly others: number },
    elapsedShare: number,
  ): Promise<PastTrace[]>;
  /**
   * Another text after every change of what `pastTracesOf` and `sprintsWithoutPast` give for a team of the workspace.
   * Undefined: not known, as when nothing has changed since there are such texts.
   */
  pastVersion(workspaceId: string): Promise<string | undefined>;
  /** Records the value of a sprint; a later record counts instead of the earlier ones, which are kept. */
  recordValue(record: RecordedValue): Promise<void>;
}
