/** Sprints in the store: their cards, who is asked on which day, and what they leave behind. */

import type { Baseline, MeasuredSprint } from '../../sprint/baseline.ts';
import type { Day } from '../../sprint/calendar.ts';
import type {
  NewPastSprint,
  PastSprint,
  PastTime,
  PastTrace,
  RecordedValue,
} from '../history/past-sprint.ts';
import type { WatchedSprint } from '../history/watched-sprint.ts';
import type { PlanChange } from '../planning/plan-change.ts';
import type { PostedAt } from '../posting/posts.ts';
import type {
  Member,
  NewFact,
  Prompt,
  PromptState,
  RecordedFact,
  Sprint,
  SprintCard,
  SprintRecords,
  SprintResult,
  Team,
} from '../team/team.ts';

interface TeamInChannel {
  readonly team: Team;
  /** Those who left included, in order of name. */
  readonly members: Member[];
  /** Earliest first. */
  readonly openSprints: Sprint[];
  /** As `pastVersion` gives it. */
  readonly pastVersion: string | undefined;
}

export interface SprintWithTeam {
  readonly sprint: Sprint;
  readonly team: Team;
  /** Those who left included, in order of name. */
  readonly members: Member[];
}

export interface SprintReading {
  teamInChannel(workspaceId: string, channelId: string): Promise<TeamInChannel | undefined>;
  sprintWithTeam(sprintId: string): Promise<SprintWithTeam | undefined>;
  sprintById(sprintId: string): Promise<Sprint | undefined>;
  /** All sprints of the team, in any state, earliest first. */
  sprintsOf(teamId: string): Promise<Sprint[]>;
  /** Open sprints of the team, earliest first. */
  openSprintsOf(teamId: string): Promise<Sprint[]>;
  /** Of the latest sprints that were not cancelled, so many with different first days, the latest first. */
  latestSpans(teamId: string, most: number): Promise<Pick<Sprint, 'startsOn' | 'endsOn'>[]>;
  /** The closed or cancelled sprint with the latest last day. */
  latestFinishedSprint(teamId: string): Promise<Sprint | undefined>;
  /** What was corrected in the sprint's plan, in order. */
  planChangesOf(sprintId: string): Promise<PlanChange[]>;
  /** When the clock has something to do next; undefined: nothing is planned. */
  nextDueAt(): Promise<Date | undefined>;
}

export interface SprintWriting {
  insert(sprint: Sprint): Promise<void>;
  update(sprint: Sprint): Promise<void>;
  recordPlanChanges(changes: readonly PlanChange[]): Promise<void>;
  /** Writes the clock's fields of many sprints in one statement. */
  updateClocks(
    sprints: readonly Pick<Sprint, 'id' | 'nextPromptAt' | 'nextReminderAt' | 'lastCallAt'>[],
  ): Promise<void>;
}

export interface CardReading {
  recordsOf(sprintId: string): Promise<SprintRecords>;
  /**
   * Of these only what somebody may answer for or has answered for: their cards, those that nobody owns, and those that
   * are named. An answer then costs the same, however much there is in the sprint.
   */
  recordsAbout(sprintId: string, userId: string, cardIds: readonly string[]): Promise<SprintRecords>;
  /** The records of many sprints in one statement. */
  recordsOfMany(sprintIds: readonly string[]): Promise<Map<string, SprintRecords>>;
  /** Who came and went as owners of the sprint's cards, in order. */
  ownerMovesOf(sprintId: string): Promise<OwnerMove[]>;
}

/** Somebody became an owner of a card, or no longer is one. */
export interface OwnerMove {
  readonly cardId: string;
  readonly userId: string;
  readonly kind: 'added' | 'removed';
  readonly day: Day;
  readonly changedBy: string;
  readonly changedAt: Date;
}

export interface OwnerChange {
  readonly card: Pick<SprintCard, 'id' | 'ownerIds'>;
  /** In the order in which they are listed. */
  readonly ownerIds: readonly string[];
  /** Who changed it and when; undefined where somebody is erased, of whom nothing is to be kept. */
  readonly by: { readonly userId: string; readonly day: Day; readonly at: Date } | undefined;
}

export interface CardWriting {
  insert(cards: readonly SprintCard[]): Promise<void>;
  /** What the card is called, and its estimate as long as nobody has answered for it. */
  correct(card: Pick<SprintCard, 'id' | 'title' | 'link' | 'key' | 'estimatePoints'>): Promise<void>;
  /** Who owns these cards from now on; who came and went is recorded. */
  changeOwners(changes: readonly OwnerChange[]): Promise<void>;
  /** Gives the facts back with their places in the order. */
  insertFacts(facts: readonly NewFact[]): Promise<RecordedFact[]>;
}

export type AskedPrompt = Pick<Prompt, 'sprintId' | 'userId' | 'day' | 'postId'>;

/** Who is asked on which day, and how they met it. */
export interface PromptReading {
  promptOf(sprintId: string, userId: string, day: Day): Promise<Prompt | undefined>;
  /** Of all days of the sprint. */
  promptsOfPerson(sprintId: string, userId: string): Promise<Prompt[]>;
  promptsOf(days: readonly { sprintId: string; day: Day }[]): Promise<Prompt[]>;
  /** The prompts that a delivered post asked, reminded of or called last about, one a team. */
  promptsByPost(workspaceId: string, at: PostedAt): Promise<Prompt[]>;
  /** The same for a post that may not be delivered yet. */
  promptsOfPost(postId: string): Promise<Prompt[]>;
}

/** A prompt with what was posted about it. */
type PostedPrompt = AskedPrompt & Pick<Prompt, 'reminderPostId' | 'lastCallPostId'>;

export interface PromptWriting {
  /** Inserts prompts in state `asked`; gives back those that did not exist yet. */
  insert(prompts: readonly AskedPrompt[]): Promise<AskedPrompt[]>;
  /**
   * Inserts the prompt or sets its state, and brings what was posted about it up to date: what asked, reminded and called
   * last.
   *
   * @param prompt as it was read under the team's lock, under which it stays the same
   * @returns how many posts these are
   */
  setState(prompt: PostedPrompt, state: PromptState, answeredAt: Date): Promise<number>;
  /** Keeps which posts reminded of prompts, or called last about days of which some were not asked about. */
  called(kind: 'reminder' | 'last-call', prompts: readonly AskedPrompt[]): Promise<void>;
}

/** A sprint that was closed or cancelled, with its latest result. */
interface FinishedSprint {
  readonly sprint: Sprint;
  readonly result: SprintResult;
}

export interface ResultReading {
  latestResult(sprintId: string): Promise<SprintResult | undefined>;
  /** Closed (not cancelled) sprints with their latest result, by last day, oldest first. */
  closedSprintsOf(teamId: string): Promise<FinishedSprint[]>;
  /**
   * The team's baseline sprint: the named one, else the first closed one with a velocity above 0; never
   * `exceptSprintId`. Undefined when there is none.
   */
  baselineOf(team: Team, exceptSprintId: string): Promise<Baseline | undefined>;
  /** The team's first three closed sprints with a velocity above 0, oldest first; never `exceptSprintId`. */
  firstSprintsOf(
    teamId: string,
    exceptSprintId: string,
  ): Promise<(MeasuredSprint & { readonly endsOn: Day })[]>;
}

export interface ResultWriting {
  insert(result: SprintResult): Promise<void>;
}

/** What the statistics learn from. */
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
  /** So many of the team's latest sprints of which it is known how each card went, oldest first. */
  watchedSprintsOf(teamId: string, most: number): Promise<WatchedSprint[]>;
  /** So many of the latest watched sprints of the other teams of its workspace, by last day, oldest first. */
  pastTimesOfOthers(team: Pick<Team, 'id' | 'workspaceId'>, most: number): Promise<PastTime[]>;
  /**
   * Another text after every change of what `pastSprintsOf`, `pastTracesOf`, `watchedSprintsOf` and `sprintsWithoutPast` give
   * for a team of the workspace.
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
