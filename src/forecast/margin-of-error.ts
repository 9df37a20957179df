/** How far commitments and estimates of the past were off, so that one can plan with a margin. Judges nobody. */
import { isDefined, type Ratio, type UndefinedValue, undefinedBecause } from '../sprint/undefined-value.ts';
import type { Interval } from './points-distribution.ts';
import { quantile } from './quantile.ts';

/** Fewer say nothing of how far off the next one may be. */
export const LEAST_SPRINTS_FOR_MARGIN = 5;
/** A team of long ago is another team: about a year of two-week sprints. */
export const MARGIN_SPRINTS = 24;

/** How far off one kind of number was. 1 means 100%. */
export interface Margin {
  readonly sprints: number;
  readonly median: number;
  /** The middle eight tenths of the sprints lay here, or all of them: see `isWholeSpan`. */
  readonly usual: Interval;
  /** With so few sprints their middle eight tenths can't be told from the lowest and the highest of them. */
  readonly isWholeSpan: boolean;
}

export interface MarginOfError {
  /** Velocity ÷ commitment. */
  readonly ofCommitments: Margin | UndefinedValue;
  /** Estimate accuracy: 1 − Σ|estimate error| ÷ load. */
  readonly ofEstimates: Margin | UndefinedValue;
}

/** From seven values on the 10% quantile of type 8, at (n + ⅓)·0.1 + ⅓, lies within them. */
const LEAST_SPRINTS_FOR_EIGHT_TENTHS = 7;

export interface MarginSprint {
  readonly commitmentPoints: number;
  readonly velocityPoints: number | undefined;
  readonly estimateAccuracy: Ratio;
}

/**
 * The margin of error of commitments and of estimates, from the latest 24 sprints.
 *
 * Formula: median and the 10% and 90% quantiles (type 8: nearly free of bias) of velocity ÷ commitment, and of the
 * estimate accuracy. Sprints without a commitment, or without the number, are left out.
 * Units: shares, 1 means 100%. Undefined below five sprints; of five and six the whole span.
 * How it misleads: it describes the past and promises nothing; pulled-in work that was finished counts in the
 * velocity, so a team that under-commits seems to do more than it promised, which is the point of telling it.
 * Source: common practice for the quantiles; Hyndman and Fan 1996 for their type.
 *
 * @param sprints oldest first.
 * @example marginOfError([]).ofCommitments.undefined.code === 'few-sprints'
 */
export function marginOfError(sprints: readonly MarginSprint[]): MarginOfError {
  const latest = sprints.slice(-MARGIN_SPRINTS);
  return {
    ofCommitments: marginOf(
      latest.flatMap(({ commitmentPoints, velocityPoints }) =>
        commitmentPoints > 0 && velocityPoints !== undefined ? [velocityPoints / commitmentPoints] : [],
      ),
    ),
    ofEstimates: marginOf(latest.map(({ estimateAccuracy }) => estimateAccuracy).filter(isDefined)),
  };
}

function marginOf(shares: readonly number[]): Margin | UndefinedValue {
  if (shares.length < LEAST_SPRINTS_FOR_MARGIN) {
    return undefinedBecause('few-sprints', {
      needed: LEAST_SPRINTS_FOR_MARGIN,
      known: shares.length,
      having: 'number',
    });
  }
  const at = (chance: number): number => quantile(shares, chance, 8) as number;
  return {
    sprints: shares.length,
    median: at(0.5),
    usual: { low: at(0.1), high: at(0.9) },
    isWholeSpan: shares.length < LEAST_SPRINTS_FOR_EIGHT_TENTHS,
  };
}
