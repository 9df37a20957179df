/** Past sprints of which it is known how each card went. */
import { type CardEvenings, openCardsAt } from '../../forecast/card-evenings.ts';
import type { CardSprint } from '../../forecast/contest.ts';
import type { TracePoint } from './past-sprint.ts';

export interface WatchedSprint {
  readonly teamId: string;
  readonly velocityPoints: number;
  /** Its state after 0, 1, 2 … of its working days, as in its past. */
  readonly trace: readonly TracePoint[];
  readonly cardEvenings: readonly CardEvenings[];
}

/** As the models want them: each at that share of its working days, to the nearest day. Without cards there is nothing to say. */
export function watchedSprints(sprints: readonly WatchedSprint[], elapsedShare: number): CardSprint[] {
  return sprints.flatMap(({ teamId, velocityPoints, trace, cardEvenings }) => {
    const evening = Math.round(elapsedShare * (trace.length - 1));
    const soFar = trace[evening];
    if (soFar === undefined || soFar.cardPoints === 0) return [];
    return [{ team: teamId, soFar, velocityPoints, open: openCardsAt(cardEvenings, evening) }];
  });
}
