/** What a transaction holds until it ends, so that nobody else changes it. Holding twice is holding once. */
import type { Post } from '../posting/posts.ts';
import type { Actor, Sprint, Team } from '../team/team.ts';
import type { MessageRemoval } from './removals.ts';
import type { SprintWithTeam } from './sprints.ts';
import type { Watch } from './watches.ts';

/** Each waits until no other transaction holds it. */
export interface Locks {
  team(teamId: string): Promise<void>;
  /** Locks the sprint's team: what is asked for after it, even beside it, is read under the lock. */
  sprintWithTeam(sprintId: string): Promise<SprintWithTeam | undefined>;
  /** The person's teams and their open sprints, so that nobody writes about the person. */
  teamsOfPerson(actor: Actor): Promise<void>;
}

/** An open sprint for which the clock has something to do, with its team. */
export interface DueSprint {
  readonly team: Team;
  readonly sprint: Sprint;
}

/** A sprint that was left open when its team ended. */
export interface EndedSprint extends DueSprint {
  readonly endedAt: Date;
}

/** A watched sprint that is to be looked at. */
export interface DueWatch extends DueSprint {
  readonly watch: Watch;
}

/** How much is claimed at once. */
export interface Portion {
  readonly limit: number;
  /** Ids of what is passed over, sprints or teams, whichever is claimed. */
  readonly except?: readonly string[];
}

/** Work that is due and that nobody else holds: rows that another process holds are skipped, so none is done twice. */
export interface Claims {
  promptsDue(now: Date, portion: Portion): Promise<DueSprint[]>;
  remindersDue(now: Date, portion: Portion): Promise<DueSprint[]>;
  lastCallsDue(now: Date, portion: Portion): Promise<DueSprint[]>;
  closingsDue(now: Date, portion: Portion): Promise<DueSprint[]>;
  watchesDue(now: Date, portion: Portion): Promise<DueWatch[]>;
  /**
   * Teams whose people were not looked up on this day of UTC, and that are asked until then; or not within a day, and a minute of
   * their own has come. Marks them as looked up.
   *
   * @param limit of all workspaces, and of each
   */
  teamsToLookUp(
    now: Date,
    until: Date,
    limit: { readonly all: number; readonly ofWorkspace: number },
  ): Promise<Pick<Team, 'id' | 'workspaceId' | 'productOwnerId'>[]>;
  /**
   * A post that has something to be sent, which is `sending` from then on. Undefined when there is nothing to send, or another
   * deliverer has it: the row is locked, or it is `sending` since less than a minute by the database's own clock.
   *
   * @param now when the first attempt begins, if this is the first
   * @returns the post as it was before
   */
  post(postId: string, now: Date): Promise<Post | undefined>;
  /**
   * Finished sprints whose team keeps details no longer.
   *
   * @param now the calendar is UTC's: a day more or less is no matter over months
   */
  sprintsToReduce(now: Date, portion: Portion): Promise<{ team: Team; sprintId: string }[]>;
  /** Conversations in which messages of the bot's are still to be deleted. */
  removalsDue(now: Date, limit: number): Promise<MessageRemoval[]>;
  /** Open sprints of teams that ended, or whose workspace removed the bot, longer ago than that is easily taken back. */
  sprintsOfEnded(now: Date, portion: Portion): Promise<EndedSprint[]>;
  /** Teams that ended, or whose workspace removed the bot, longer ago than they are kept. */
  teamsToErase(now: Date, portion: Portion): Promise<Team[]>;
}
