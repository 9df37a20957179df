/** What the use cases about people's data need from the store, inside a transaction. */
import type { Actor, Team } from '../team/team.ts';
import type { PersonalData } from './personal-data.ts';

/** A team that a person belongs to, or did. */
export interface PersonsTeam {
  readonly team: Team;
  readonly isFacilitator: boolean;
  /** Active members besides the person, and those among them who facilitate. */
  readonly otherMembers: number;
  readonly otherFacilitators: number;
}

export interface PeopleQueries {
  /** Everything that is stored under the person's id in their workspace; of nobody else. */
  personalData(actor: Actor): Promise<PersonalData>;
  /** The teams in which the person is or was a member, or is the product owner; in order of name. */
  teamsOfPerson(actor: Actor): Promise<PersonsTeam[]>;
  /** Holds those teams and their open sprints until the transaction ends, so that nobody writes of the person meanwhile. */
  lockTeamsOfPerson(actor: Actor): Promise<void>;
  /**
   * Takes the person out of every table, for good: what they said becomes the team's, without its notes.
   *
   * @param names what the teams know the person by; taken out of what others typed as well
   */
  erasePerson(actor: Actor, names: readonly string[]): Promise<void>;
  /** Takes the person off these cards. */
  removeOwner(cardIds: readonly string[], userId: string): Promise<void>;
  /** Marks what was to be sent to these people about the team's sprints, and was not, as skipped. */
  skipUnsentPostsTo(teamId: string, userIds: readonly string[]): Promise<void>;

  /**
   * Holds finished sprints whose team keeps details no longer. Rows that another process holds are passed over.
   *
   * @param now the calendar is UTC's: a day more or less is no matter over months
   */
  claimSprintsToReduce(now: Date, limit: number): Promise<{ team: Team; sprintId: string }[]>;
  /** Deletes all of the sprint but its totals. @throws when it is not over, or its totals are not kept */
  reduceSprint(sprintId: string, at: Date): Promise<void>;
  /**
   * Deletes drafts and posts about no sprint that are older than the team's retention, members who left and of whom
   * nothing else is stored, and events of more than a day ago. @returns how many rows; at most `limit` of each kind
   */
  dropOldRecords(now: Date, limit: number): Promise<number>;
}
