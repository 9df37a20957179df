/** Whether a card fits between now and the sprint's end: chances and the record of cards like it. Forbids nothing. */
import {
  type PullInChance,
  type PullInRecord,
  pullInChance,
  pullInRecord,
} from '../../forecast/pull-in-chance.ts';
import { median } from '../../forecast/quantile.ts';
import { stillFinishable } from '../../forecast/still-finishable.ts';
import { type ClosedCard, surpriseOdds } from '../../forecast/surprise-odds.ts';
import type { WorkChance } from '../../forecast/whole-cards.ts';
import type { Day } from '../../sprint/calendar.ts';
import { type Reason, reason, type UndefinedValue } from '../../sprint/undefined-value.ts';
import type { SprintTime } from '../clock/sprint-time.ts';
import { closedCards, pastSprints, pulledInCards } from '../history/team-history.ts';
import type { Transaction } from '../ports/store.ts';
import { outcomeAhead, whyNothingAhead } from '../watching/load-outlook.ts';
import { LEAST_OWN_SPRINTS, sprintProjection } from '../watching/sprint-projection.ts';
import type { TeamSprint } from '../watching/team-sprint.ts';

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
 * As the status would tell it with the card in the sprint.
 *
 * @param running its cards without the one that is to come in
 * @param estimates the sizes that are asked about, in points
 */
export async function pullInCheck(
  tx: Transaction,
  running: TeamSprint,
  { time, on }: { readonly time: SprintTime; readonly on: Day },
  estimates: readonly number[],
): Promise<PullInCheck> {
  const { team, states } = running;
  const pastVersion = await tx.read.pastVersion(team.workspaceId);
  const past = await pastSprints(tx, team, pastVersion);
  const projection = await sprintProjection(tx, team, states, time, pastVersion);
  const { now, ownSprints } = projection;
  const openPoints = Math.max(0, now.cardPoints - now.finishedPoints);
  const because = (await whyNothingAhead(tx, running, time, on)) ?? whyTooLittleHistory(ownSprints);
  const chancesOf = async (): Promise<PullInChance[]> => {
    const { velocityWith } = await outcomeAhead(tx, running, projection, time, on, pastVersion);
    const aheadPoints = openPoints - now.underwayPoints;
    return sizeChances(stillFinishable(now, velocityWith), aheadPoints, closedCards(past), estimates);
  };
  const chances = because === undefined ? await chancesOf() : estimates.map(() => ({ undefined: because }));
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
  finishable: WorkChance,
  aheadPoints: number,
  closed: readonly ClosedCard[],
  estimates: readonly number[],
): PullInChance[] {
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
    pullInChance({ estimatePoints, aheadPoints, surprise: surpriseOf(estimatePoints) }, finishable),
  );
}
