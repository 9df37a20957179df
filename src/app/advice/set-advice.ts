/** What a set of cards is worth as a commitment: its chances, and the card that endangers it most. */
import { type SetChance, setChances } from '../../forecast/set-chances.ts';
import type { CardLine } from '../cards/card-line.ts';
import type { RangeAdvice } from './advice.ts';

export interface SetReading {
  readonly points: number;
  /** The floor of the kept share. */
  readonly floor: number;
  readonly chance: SetChance;
  /** Whether nothing less than all of them reaches the floor, so that both chances are one. */
  readonly isAllNeeded: boolean;
  /** One of the cards without which the others are kept most likely. */
  readonly endangering: { readonly card: CardLine; readonly chanceWithout: SetChance } | undefined;
  /** Closed sprints that say how much the team finishes. */
  readonly sprints: number;
}

/** Against rounding. */
const SLACK = 1e-9;

/** Undefined without points, and where too few sprints say how much the team finishes. */
export function readSet(
  cards: readonly CardLine[],
  { range, thresholds: { keptShareAtLeast: floor } }: Pick<RangeAdvice, 'range' | 'thresholds'>,
): SetReading | undefined {
  if ('undefined' in range || 'undefined' in range.model.finishes) return undefined;
  const { amountOf, sprints } = range.model.finishes;
  const sizes = cards.map(({ estimatePoints }) => estimatePoints);
  const chances = setChances(amountOf, sizes, floor);
  if (!chances) return undefined;
  const { kept, all, without } = chances;
  const card = cards.find(({ estimatePoints }) => estimatePoints === without?.estimatePoints);
  return {
    points: sizes.reduce((sum, size) => sum + size, 0),
    floor,
    chance: { kept, all },
    isAllNeeded: kept - all < SLACK,
    endangering: without && card && { card, chanceWithout: without },
    sprints,
  };
}
