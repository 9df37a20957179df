/** What the store holds of teams and people, and for how long. */

import type { PersonalKind, PersonalRecord, PersonalSum } from '../privacy/personal-data.ts';
import type { Actor, Member, Team } from '../team/team.ts';

export interface TeamReading {
  teamById(teamId: string): Promise<Team | undefined>;
  teamByChannel(workspaceId: string, channelId: string): Promise<Team | undefined>;
  /** Teams of which the person is an active member; without those that were ended. */
  teamsOf(actor: Actor): Promise<Team[]>;
  /** Teams of which the person is the product owner, whether a member or not; without those that were ended. */
  teamsOwnedBy(actor: Actor): Promise<Team[]>;
  /** All teams of the workspace, those that were ended included, in order of id. */
  teamsOfWorkspace(workspaceId: string): Promise<Team[]>;
  /** All members, those who left included, in order of name. */
  membersOf(teamId: string): Promise<Member[]>;
  /** Those who are on each of these teams now, in order of name; in one statement. */
  peopleOf(teamIds: readonly string[]): Promise<Map<string, Member[]>>;
}

/** What is stored without anybody using it. */
export interface EndedTeamReading {
  /** Workspaces of which something is stored, in order of id. */
  tenants(): Promise<Tenant[]>;
  /** Teams that go on although their channel has been closed to the bot since before then. */
  teamsWithoutChannel(closedBefore: Date): Promise<Team[]>;
  /** Teams that go on and keep details for a time only, and that had no sprint since then. */
  idleTeams(since: Date): Promise<Team[]>;
}

export interface TeamWriting {
  /**
   * Inserts the team or replaces its settings (by id).
   * @throws Refusal `channel-has-a-team` when another team has the channel.
   */
  save(team: Team): Promise<void>;
  /** Notes that the channel is closed to the bot, since then unless it was noted before. */
  noteChannelClosed(teamId: string, at: Date): Promise<void>;
  noteChannelOpen(teamId: string): Promise<void>;
  /** Inserts or updates these members; the others stay as they are. */
  saveMembers(teamId: string, members: readonly Member[]): Promise<void>;
}

export interface PeopleReading {
  /** How much is stored under the person's id in their workspace; of nobody else. Kinds of which there is nothing are left out. */
  personalSums(actor: Actor): Promise<PersonalSum[]>;
  /** The records of one kind, in order of their days. */
  personalRecords(actor: Actor, kind: PersonalKind): Promise<PersonalRecord[]>;
  /** The teams in which the person is or was a member, or is the product owner; in order of name. */
  teamsOfPerson(actor: Actor): Promise<Team[]>;
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
  /** Deletes all of an imported sprint, its totals included. @throws when it was not imported */
  removeImport(sprintId: string): Promise<void>;
  /**
   * Deletes drafts and posts about no sprint that are older than the team's retention, members who left and of whom
   * nothing else is stored, days off of before then, events of more than a day ago, and visits of more than a year ago by people on no team. @returns how many rows; at most `limit` of each kind
   */
  dropOldRecords(now: Date, limit: number): Promise<number>;
  /** Deletes everything of the team, for good, its queued deliveries included. */
  eraseTeam(teamId: string): Promise<ErasedRows>;
  /** Deletes what is left of a workspace without teams. */
  eraseWorkspace(workspaceId: string): Promise<ErasedRows>;
  /** The same for all that removed the bot before then and of whose teams none is left. @returns how many rows */
  dropEmptyWorkspaces(removedBefore: Date): Promise<number>;
}

/** How many rows of each table went. */
export type ErasedRows = Readonly<Record<string, number>>;

/** A workspace of which something is stored. */
export interface Tenant {
  readonly workspaceId: string;
  /** Undefined where it isn't known, as in a bot for one workspace. */
  readonly workspaceName: string | undefined;
  readonly teamCount: number;
}
