/** What finished sprints leave behind in the store: their numbers as posted, and what the statistics learn from. */
import type { NewPastSprint, PastSprint, PastTrace, RecordedValue } from '../history/past-sprint.ts';
import type { Sprint, SprintResult, Team } from '../team/team.ts';

/** A sprint that was closed or cancelled, with its latest result. */
export interface FinishedSprint {
  readonly sprint: Sprint;
  readonly result: SprintResult;
}

export interface ResultReading {
  latestResult(sprintId: string): Promise<SprintResult | undefined>;
  /** Closed (not cancelled) sprints with their latest result, by last day, oldest first. */
  closedSprintsOf(teamId: string): Promise<FinishedSprint[]>;
  /**
   * Velocity of the team's baseline sprint: the named one, else the first closed one with a velocity
   * above 0; never `exceptSprintId`. Undefined when there is none.
   */
  baselineVelocityPoints(team: Team, exceptSprintId: string): Promise<number | undefined>;
}

export interface ResultWriting {
  insert(result: SprintResult): Promise<void>;
}

export interface HistoryReading {
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
}

export interface HistoryWriting {
  /** Inserts what a finished sprint leaves behind, or replaces it when the sprint closes again. */
  savePastSprint(past: NewPastSprint): Promise<void>;
  /** Records the value of a sprint; a later record counts instead of the earlier ones, which are kept. */
  recordValue(record: RecordedValue): Promise<void>;
}
