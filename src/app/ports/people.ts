/** What the store holds of people, and for how long. */
import type { PersonalData } from '../privacy/personal-data.ts';
import type { Actor, Team } from '../team/team.ts';

/** A team that a person belongs to, or did. */
export interface PersonsTeam {
  readonly team: Team;
  readonly isFacilitator: boolean;
  /** Active members besides the person, and those among them who facilitate. */
  readonly otherMembers: number;
  readonly otherFacilitators: number;
}

export interface PeopleReading {
  /** Everything that is stored under the person's id in their workspace; of nobody else. */
  personalData(actor: Actor): Promise<PersonalData>;
  /** The teams in which the person is or was a member, or is the product owner; in order of name. */
  teamsOfPerson(actor: Actor): Promise<PersonsTeam[]>;
}

export interface PeopleWriting {
  /**
   * Takes the person out of every table, for good: what they said becomes the team's, without its notes.
   *
   * @param names what the teams know the person by; taken out of what others typed as well
   */
  erase(actor: Actor, names: readonly string[]): Promise<void>;
}

export interface RetentionWriting {
  /** Deletes all of the sprint but its totals. @throws when it is not over, or its totals are not kept */
  reduceSprint(sprintId: string, at: Date): Promise<void>;
  /**
   * Deletes drafts and posts about no sprint that are older than the team's retention, members who left and of whom
   * nothing else is stored, and events of more than a day ago. @returns how many rows; at most `limit` of each kind
   */
  dropOldRecords(now: Date, limit: number): Promise<number>;
}
