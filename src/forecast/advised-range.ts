/** What a commitment range advises, sorted into the few ways in which it can be drawn and said. Pure. */

import type { Reason, UndefinedValue } from '../sprint/undefined-value.ts';
import type { CommitmentRange, CrossedRange } from './commitment-range.ts';

export type AdvisedRange =
  | { readonly kind: 'range'; readonly lowPoints: number; readonly highPoints: number }
  | { readonly kind: 'at most'; readonly highPoints: number; readonly why: Reason }
  | { readonly kind: 'at least'; readonly lowPoints: number; readonly why: Reason }
  /** The ends cross, and between them lies a middle way. `chance` from 0 to 1. */
  | {
      readonly kind: 'middle way';
      readonly lowPoints: number;
      readonly highPoints: number;
      readonly points: number;
      readonly chance: number;
      readonly why: Reason;
    }
  /** The ends cross, and the high one is the better guide. */
  | {
      readonly kind: 'crossed';
      readonly lowPoints: number;
      readonly highPoints: number;
      readonly why: Reason;
    }
  | { readonly kind: 'none'; readonly why: Reason };

export function advisedRange(range: CommitmentRange | UndefinedValue): AdvisedRange {
  if ('undefined' in range) return { kind: 'none', why: range.undefined };
  const { lowPoints, highPoints, crossed } = range;
  if (typeof highPoints === 'number' && typeof lowPoints === 'number') {
    return crossed === undefined
      ? { kind: 'range', lowPoints, highPoints }
      : crossedRange(crossed, lowPoints, highPoints);
  }
  if (typeof highPoints === 'number') {
    return { kind: 'at most', highPoints, why: (lowPoints as UndefinedValue).undefined };
  }
  if (typeof lowPoints === 'number') return { kind: 'at least', lowPoints, why: highPoints.undefined };
  return { kind: 'none', why: highPoints.undefined };
}

function crossedRange(
  { why, compromise }: CrossedRange,
  lowPoints: number,
  highPoints: number,
): AdvisedRange {
  if (highPoints === 0) return { kind: 'none', why };
  const ends = { lowPoints, highPoints, why };
  return compromise === undefined
    ? { kind: 'crossed', ...ends }
    : { kind: 'middle way', ...ends, ...compromise };
}

/** An end of the coming range, or what takes the place of one. */
export interface RangeEnd {
  readonly kind:
    | 'at-least'
    | 'at-most'
    | 'exactly'
    | 'about'
    | 'low-end'
    | 'high-end'
    | 'no-low-end'
    | 'no-high-end';
  readonly points: number;
}

/** From low to high. */
export function rangeEnds(advised: AdvisedRange): RangeEnd[] {
  const ends = (...all: [RangeEnd['kind'], number][]) => all.map(([kind, points]) => ({ kind, points }));
  switch (advised.kind) {
    case 'range': {
      const { lowPoints: low, highPoints: high } = advised;
      return low === high ? ends(['exactly', low]) : ends(['at-least', low], ['at-most', high]);
    }
    case 'at most':
      return ends(['no-low-end', advised.highPoints], ['at-most', advised.highPoints]);
    case 'at least':
      return ends(['at-least', advised.lowPoints], ['no-high-end', advised.lowPoints]);
    case 'crossed':
      return ends(['at-most', advised.highPoints], ['low-end', advised.lowPoints]);
    case 'middle way':
      return ends(
        ['high-end', advised.highPoints],
        ['about', advised.points],
        ['low-end', advised.lowPoints],
      );
    case 'none':
      return [];
  }
}
