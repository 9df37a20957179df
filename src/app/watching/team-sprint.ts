import type { SprintCardState } from '../cards/card-line.ts';
import type { Member, Sprint, Team } from '../team/team.ts';

/** A sprint with its cards and the people who were ever in its team: what its burndown and its outlook are made from. */
export interface TeamSprint {
  readonly team: Team;
  readonly members: readonly Member[];
  readonly sprint: Sprint;
  readonly states: readonly SprintCardState[];
}
