/** How often cards of each size held surprise work: for planning as a whole, and for the big cards of a plan. */
import { type SurpriseOdds, surpriseOdds } from '../../forecast/surprise-odds.ts';
import type { UndefinedValue } from '../../sprint/undefined-value.ts';
import type { CardLine } from '../cards/card-line.ts';
import type { PastSprint } from '../history/past-sprint.ts';
import { closedCards, oncePerPast } from '../history/team-history.ts';
import type { OddsAdvice } from './advice.ts';

/** Of how many of the plan's sizes the odds are shown: the largest hold the most points, and more would not be read. */
const BIG_SIZES = 3;

/** Cards of one size in a plan, with the odds of that size. */
export interface BigCards {
  readonly odds: SurpriseOdds;
  /** Their numbers in the plan, ascending. */
  readonly cardNumbers: readonly number[];
}

const oddsOfAllSizes = oncePerPast((past) => surpriseOdds(closedCards(past)));

/** @param past oldest first */
export function oddsOf(past: readonly PastSprint[]): Pick<OddsAdvice, 'odds' | 'sprintsWithCards'> {
  return {
    odds: oddsOfAllSizes(past),
    sprintsWithCards: past.filter(({ cards }) => cards.length > 0).length,
  };
}

/** The odds of the three largest sizes in a plan, largest first; cards of 0 points are not big ones. */
export function bigCardsOf(
  cards: readonly Pick<CardLine, 'number' | 'estimatePoints'>[],
  past: readonly PastSprint[],
): readonly BigCards[] | UndefinedValue {
  const bySize = Map.groupBy(cards, ({ estimatePoints }) => estimatePoints);
  const sizes = [...bySize.keys()].filter((points) => points > 0).sort((a, b) => b - a);
  const big = sizes.slice(0, BIG_SIZES);
  const bySizeOdds = surpriseOdds(closedCards(past), big);
  if ('undefined' in bySizeOdds) return bySizeOdds;
  return big.flatMap((points) => {
    const odds = bySizeOdds.sizes.find(({ estimatePoints }) => estimatePoints === points);
    const cardNumbers = (bySize.get(points) ?? []).map(({ number }) => number).sort((a, b) => a - b);
    return odds ? [{ odds, cardNumbers }] : [];
  });
}
