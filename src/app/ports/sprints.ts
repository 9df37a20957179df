/** Sprints in the store. */
import type { Member, Sprint, Team } from '../team/team.ts';

export interface TeamInChannel {
  readonly team: Team;
  /** Those who left included, in order of name. */
  readonly members: Member[];
  /** Earliest first. */
  readonly openSprints: Sprint[];
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
  /** The closed or cancelled sprint with the latest last day. */
  latestFinishedSprint(teamId: string): Promise<Sprint | undefined>;
  /** When the clock has something to do next; undefined: nothing is planned. */
  nextDueAt(): Promise<Date | undefined>;
}

export interface SprintWriting {
  insert(sprint: Sprint): Promise<void>;
  update(sprint: Sprint): Promise<void>;
  /** Writes the clock's fields of many sprints in one statement. */
  updateClocks(
    sprints: readonly Pick<Sprint, 'id' | 'nextPromptAt' | 'nextReminderAt' | 'lastCallAt'>[],
  ): Promise<void>;
}
