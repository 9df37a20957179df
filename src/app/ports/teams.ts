/** Teams and their members in the store. */
import type { Actor, Member, Team } from '../team/team.ts';

export interface TeamReading {
  teamById(teamId: string): Promise<Team | undefined>;
  teamByChannel(workspaceId: string, channelId: string): Promise<Team | undefined>;
  /** Teams of which the person is an active member. */
  teamsOf(actor: Actor): Promise<Team[]>;
  /** Teams of which the person is the product owner, whether a member or not. */
  teamsOwnedBy(actor: Actor): Promise<Team[]>;
  /** All members, those who left included, in order of name. */
  membersOf(teamId: string): Promise<Member[]>;
  /** The ids of the active members of each of these teams, in one statement. */
  activeMemberIds(teamIds: readonly string[]): Promise<Map<string, ReadonlySet<string>>>;
}

export interface TeamWriting {
  /**
   * Inserts the team or replaces its settings (by id).
   * @throws Refusal `channel-has-a-team` when another team has the channel.
   */
  save(team: Team): Promise<void>;
  /** Inserts or updates these members; the others stay as they are. */
  saveMembers(teamId: string, members: readonly Member[]): Promise<void>;
}
