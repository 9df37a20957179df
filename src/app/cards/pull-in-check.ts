/** Whether a card fits between now and the sprint's end: chances and the record of cards like it. Forbids nothing. */
import { relativeTime } from '../../forecast/availability.ts';
import { RECENT_SPRINTS } from '../../forecast/commitment-model.ts';
import {
  type PullInChance,
  type PullInRecord,
  pullInChance,
  pullInRecord,
} from '../../forecast/pull-in-chance.ts';
import { median } from '../../forecast/quantile.ts';
import { type LaterPart, stillFinishable } from '../../forecast/still-finishable.ts';
import { type ClosedCard, surpriseOdds } from '../../forecast/surprise-odds.ts';
import type { Day } from '../../sprint/calendar.ts';
import { type Reason, reason, type UndefinedValue } from '../../sprint/undefined-value.ts';
import type { SprintTime } from '../clock/sprint-time.ts';
import type { PastSprint } from '../history/past-sprint.ts';
import { closedCards, pastSprints, pulledInCards, tracePointAt } from '../history/team-history.ts';
import type { Transaction } from '../ports/store.ts';
import { type Sprint, type Team, workersOf } from '../team/team.ts';
import {
  LEAST_OWN_SPRINTS,
  type SprintProjection,
  sprintProjection,
  whyNoTimeAhead,
} from '../watching/sprint-projection.ts';
import type { SprintCardState } from './card-line.ts';

/** One size of card, as it would fare when pulled in now. */
export interface PullInSize {
  readonly estimatePoints: number;
  readonly chance: PullInChance | UndefinedValue;
  /** Cards of the past that were pulled in with about as much work a day, or all of them. */
  readonly record: PullInRecord | UndefinedValue;
}

/** What to weigh before a card is pulled in. Without enough history the record alone is left. */
export interface PullInCheck {
  /** In the order in which they were asked about. */
  readonly sizes: readonly PullInSize[];
  /** Points open in the sprint, which a card waits for unless it is done first. */
  readonly openPoints: number;
  /** The team's own closed sprints that speak. */
  readonly ownSprints: number;
  /** Cards pulled into them, and how many of those were finished. */
  readonly pulledIn: { readonly cards: number; readonly finished: number };
}

/**
 * @param states the sprint's cards without the one that is to come in
 * @param estimates the sizes that are asked about, in points
 */
export async function pullInCheck(
  tx: Transaction,
  team: Team,
  sprint: Sprint,
  { states, time, on }: { readonly states: readonly SprintCardState[]; time: SprintTime; on: Day },
  estimates: readonly number[],
): Promise<PullInCheck> {
  const past = await pastSprints(tx, team);
  const projection = await sprintProjection(tx, team, states, time);
  const { now, ownSprints } = projection;
  const openPoints = Math.max(0, now.cardPoints - now.finishedPoints);
  const because = whyNoTimeAhead(sprint, time, on) ?? whyTooLittleHistory(ownSprints);
  const members = workersOf(await tx.read.membersOf(team.id), sprint.id).length;
  const chances =
    because === undefined
      ? sizeChances(projection, openPoints, laterParts(past, time, members), closedCards(past), estimates)
      : estimates.map(() => ({ undefined: because }));
  const cards = pulledInCards(past);
  return {
    sizes: estimates.map((estimatePoints, i) => ({
      estimatePoints,
      chance: chances[i] as PullInSize['chance'],
      record: pullInRecord(cards, estimatePoints, time.leftWithToday),
    })),
    openPoints,
    ownSprints,
    pulledIn: { cards: cards.length, finished: cards.filter(({ finished }) => finished).length },
  };
}

function whyTooLittleHistory(ownSprints: number): Reason | undefined {
  if (ownSprints >= LEAST_OWN_SPRINTS) return undefined;
  return reason('few-sprints', { needed: LEAST_OWN_SPRINTS, known: ownSprints, having: 'closed' });
}

/** The chance of each size, with what surprise work cards of that size tend to hold. */
function sizeChances(
  { distribution, now }: SprintProjection,
  openPoints: number,
  later: readonly LaterPart[],
  closed: readonly ClosedCard[],
  estimates: readonly number[],
): PullInChance[] {
  const finishable = stillFinishable(distribution, now, later);
  const odds = surpriseOdds(closed, estimates);
  const usualSurprise = median(
    closed.map(({ surprisePoints }) => surprisePoints).filter((points) => points > 0),
  );
  const surpriseOf = (estimatePoints: number): { share: number; points: number } | undefined => {
    if ('undefined' in odds) return undefined;
    const own = odds.sizes.find((size) => size.estimatePoints === estimatePoints);
    // A size that never held any borrows the usual surprise of all sizes, as it borrows their odds.
    const points = typeof own?.medianSurprisePoints === 'number' ? own.medianSurprisePoints : usualSurprise;
    return own && typeof points === 'number' ? { share: own.likelyShare, points } : undefined;
  };
  return estimates.map((estimatePoints) =>
    pullInChance(
      { estimatePoints, aheadPoints: openPoints - now.underwayPoints, surprise: surpriseOf(estimatePoints) },
      finishable,
    ),
  );
}

/** What the latest sprints did from this moment on, scaled to the length of this one. */
export function laterParts(
  past: readonly PastSprint[],
  { elapsedShare, total }: Pick<SprintTime, 'elapsedShare' | 'total'>,
  members: number,
): LaterPart[] {
  const recent = past.slice(-RECENT_SPRINTS);
  const { factors } = relativeTime(recent, {
    workingDays: total,
    memberDays: undefined,
    memberDaysWhenAllThere: total * members,
  });
  return recent.flatMap((sprint, i) => {
    const part = laterPart(sprint, elapsedShare);
    const factor = factors[i];
    if (!part || factor === undefined) return [];
    return [
      {
        ...part,
        workedPoints: part.workedPoints * factor,
        evenPoints: part.evenPoints * factor,
      },
    ];
  });
}

function laterPart(sprint: PastSprint, elapsedShare: number): LaterPart | undefined {
  const { trace, velocityPoints } = sprint;
  const shareLeft = 1 - elapsedShare;
  const then = tracePointAt(trace, elapsedShare);
  const end = trace.at(-1);
  if (then && end && velocityPoints !== undefined) {
    return {
      workedPoints: Math.max(
        0,
        velocityPoints + end.underwayPoints - then.finishedPoints - then.underwayPoints,
      ),
      evenPoints: velocityPoints * shareLeft,
      // Work that was pulled in after that moment had only the time that was left then.
      hadTimeToSpare: end.finishedPoints >= end.cardPoints && end.cardPoints <= then.cardPoints,
    };
  }
  // An imported sprint was not watched, so it is taken to have gone evenly.
  if (velocityPoints === undefined) return undefined;
  const pulledInPoints = sprint.pulledInPoints ?? 0;
  const evenPoints = velocityPoints * shareLeft;
  return {
    workedPoints: evenPoints,
    evenPoints,
    hadTimeToSpare: pulledInPoints === 0 && velocityPoints >= sprint.commitmentPoints,
  };
}
