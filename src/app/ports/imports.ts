/** What an import needs of the store. */
import type { BodyOfWork, ToldDates } from '../bodies/body-of-work.ts';
import type { NewPastSprint } from '../history/past-sprint.ts';
import type { NewFact, Sprint, SprintCard, Team } from '../team/team.ts';

/** Some of what is imported, little enough to be written at once. In the order of the pieces nothing is missed that it refers to. */
export interface ImportPiece {
  readonly sprints: readonly Sprint[];
  readonly past: readonly NewPastSprint[];
  readonly values: readonly { readonly sprintId: string; readonly value: number }[];
  readonly cards: readonly SprintCard[];
  /** In the order in which they were stated. */
  readonly facts: readonly NewFact[];
  readonly bodies: readonly BodyOfWork[];
  readonly told: readonly ToldDates[];
}

/** How the ids of a team's places begin: what erases the team finds them by it. */
export const asidePrefix = (teamId: string): string => `import-${teamId}-`;

/**
 * An import is prepared aside, piece by piece, so that no transaction is long: a team that nobody has, in a workspace that is
 * none, holds it until it is brought in at once. So nothing of it is seen before, by anybody. What stays there when a process
 * ends is taken out later. As nobody sees it, it may be written twice.
 */
export interface ImportsAside {
  /** Makes the place. @param team whose import it is */
  begin(asideId: string, team: Team): Promise<void>;
  put(asideId: string, piece: ImportPiece, byUserId: string, at: Date): Promise<void>;
  /** Takes one sprint or body of work out of the place, and in the end the place itself. @returns false when it is gone */
  takeOut(asideId: string): Promise<boolean>;
  /** Places that were made before this instant. */
  leftBefore(before: Date): Promise<string[]>;
}

export interface ImportWriting {
  /** Makes all that is prepared there the team's. @returns how many sprints */
  bringIn(asideId: string, team: Team): Promise<number>;
}
