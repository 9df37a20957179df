/** Bodies of work that teams keep, in the store, with the dates that were told of them. */
import type { BodyOfWork, ToldDates } from '../bodies/body-of-work.ts';

export interface BodyReading {
  /** All of the team's, in the order in which they are worked on. */
  bodiesOf(teamId: string): Promise<BodyOfWork[]>;
  /** Of all the team's, the earliest first. */
  toldDatesOf(teamId: string): Promise<ToldDates[]>;
  teamIdOfBody(bodyId: string): Promise<string | undefined>;
}

export interface BodyWriting {
  /** Keeps it, or what has changed of it. */
  save(body: BodyOfWork): Promise<void>;
  /** With all that was told of it. */
  remove(bodyId: string): Promise<void>;
  /** In place of what was told of the same body on the same day. */
  tell(told: readonly ToldDates[]): Promise<void>;
}
