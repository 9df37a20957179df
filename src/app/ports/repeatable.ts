/** What is stored, but may be done twice without harm, so that it is no part of what a request writes. */
import type { PlanInput } from '../planning/plan-input.ts';
import type { Actor } from '../team/team.ts';

/** What somebody typed into the plan form and has not committed to yet. One a team and person. */
export interface Drafts {
  save(teamId: string, userId: string, draft: PlanInput): Promise<void>;
  delete(teamId: string, userId: string): Promise<void>;
}

export interface DraftReading {
  draftOf(teamId: string, userId: string): Promise<PlanInput | undefined>;
}

/** Requests and events that have come in, which may come again. */
export interface SeenEvents {
  /** False when it has been seen before. */
  remember(eventId: string, at: Date): Promise<boolean>;
}

export interface EventReading {
  /** Whether it was remembered. */
  knowsEvent(eventId: string): Promise<boolean>;
}

/** Who has looked in on the bot: only the first time of each is kept. */
export interface Visits {
  homeOpened(actor: Actor, at: Date): Promise<void>;
  /** False when the person was welcomed before. */
  welcomed(actor: Actor, at: Date): Promise<boolean>;
  /** The welcome could not be sent. */
  notWelcomed(actor: Actor): Promise<void>;
}

export interface VisitReading {
  /** Those among the people of a workspace who have ever opened the home page. */
  homeOpenedBy(workspaceId: string, userIds: readonly string[]): Promise<string[]>;
}
