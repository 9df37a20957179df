/**
 * How much to commit to: enough not to idle, little enough to keep. It advises; the team decides.
 */
import type { Thresholds } from '../sprint/thresholds.ts';
import { isDefined, type UndefinedValue, undefinedBecause } from '../sprint/undefined-value.ts';
import type { ComingTime } from './availability.ts';
import type { SprintEvidence } from './commitment-evidence.ts';
import { type CommitmentModel, commitmentModel } from './commitment-model.ts';
import { surpriseAboveCeiling, type Unserved, unservedBy } from './commitment-remedies.ts';

/** The chance of being kept that the advice aims for; that of running out of work is the rest up to 1. */
export const KEPT_CHANCE = 0.8;
/** What is advised should be as likely as not to be finished whole. */
const WHOLE_CHANCE = 0.5;
/** Against rounding: a bound that is whole by design must not lose half a point to the last digit. */
const SLACK = 1e-7;

export type RangeThresholds = Pick<
  Thresholds,
  'keptShareAtLeast' | 'pullInRatioAtMost' | 'surpriseRatioAtMost'
>;

/** What a commitment means; chances from 0 to 1, none of which rises with the commitment. */
export interface CommitmentChances {
  /** That its kept share reaches the floor. */
  readonly kept: number | UndefinedValue;
  /** That all of it gets finished. */
  readonly finishedWhole: number | UndefinedValue;
  /** That the team runs out of work: that the pull-in ratio exceeds its ceiling. */
  readonly ranOut: number | UndefinedValue;
}

export interface AdvisedCommitment {
  /** Whole points. */
  readonly points: number;
  readonly chances: CommitmentChances;
  /** Set where no commitment is both likely to be kept and unlikely to run out. */
  readonly unserved: Unserved | undefined;
}

export interface CommitmentRange {
  /** The lowest commitment after which at most 2 in 10 sprints run out of work. */
  readonly lowPoints: number | UndefinedValue;
  /** The highest commitment that at least 8 in 10 sprints keep. */
  readonly highPoints: number | UndefinedValue;
  /** The one number to start from: between the ends, or a compromise where the low end lies above the high one. */
  readonly advised: AdvisedCommitment | UndefinedValue;
  /** Sprints with a commitment that the range is made from. */
  readonly sprints: number;
  /** In how many of them the surprise ratio was above its ceiling: no commitment changes that. */
  readonly surpriseAboveCeiling: { readonly sprints: number; readonly of: number };
  readonly missing: CommitmentModel['missing'];
  readonly model: CommitmentModel;
}

/** The chances of a commitment of so many points; undefined for 0, and where the past doesn't say enough. */
export function commitmentChances(
  { finishes, takesIn }: CommitmentModel,
  points: number,
  { keptShareAtLeast: floor, pullInRatioAtMost: ceiling }: RangeThresholds,
): CommitmentChances {
  if (points === 0) {
    const none = undefinedBecause('nothing-committed');
    return { kept: none, finishedWhole: none, ranOut: none };
  }
  const reaches = (share: number) => ('undefined' in finishes ? finishes : finishes.reaches(share, points));
  return {
    kept: reaches(floor),
    finishedWhole: reaches(1),
    ranOut: 'undefined' in takesIn ? takesIn : takesIn.exceeds(1 + ceiling, points),
  };
}

/** The largest whole number of points up to a limit at which something holds that holds for all below it; else 0. */
function largest(limit: number, holds: (points: number) => boolean): number {
  let [low, high] = [0, Math.ceil(limit) + 1];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

function highEnd(model: CommitmentModel, thresholds: RangeThresholds): number | UndefinedValue {
  const { finishes } = model;
  if ('undefined' in finishes) return finishes;
  const { keptShareAtLeast: floor } = thresholds;
  // With a floor of nothing every commitment is kept, and finishing it is all that can be aimed for.
  if (floor === 0) return usuallyFinished(model, thresholds);
  return largest(finishes.mostSeenPoints / floor, (points) => {
    const isSeen = floor * points <= finishes.mostSeenPoints + SLACK;
    return isSeen && (commitmentChances(model, points, thresholds).kept as number) >= KEPT_CHANCE;
  });
}

/** The highest commitment that is as likely as not to be finished whole. */
function usuallyFinished(model: CommitmentModel, thresholds: RangeThresholds): number {
  return largest(
    Number.MAX_SAFE_INTEGER,
    (points) => (commitmentChances(model, points, thresholds).finishedWhole as number) >= WHOLE_CHANCE,
  );
}

function lowEnd(model: CommitmentModel, thresholds: RangeThresholds): number | UndefinedValue {
  const { takesIn } = model;
  if ('undefined' in takesIn) return takesIn;
  const runsOut = (points: number) =>
    (commitmentChances(model, points, thresholds).ranOut as number) > 1 - KEPT_CHANCE;
  return largest(Number.MAX_SAFE_INTEGER, runsOut) + 1;
}

/** Where both chances that count are the most alike, so that neither is worse than it must be. */
function compromise(model: CommitmentModel, lowPoints: number, thresholds: RangeThresholds): number {
  const worst = (points: number): number => {
    const { kept, ranOut } = commitmentChances(model, points, thresholds);
    return Math.min(kept as number, 1 - (ranOut as number));
  };
  const below = largest(lowPoints, (points) => {
    const { kept, ranOut } = commitmentChances(model, points, thresholds);
    return (kept as number) > 1 - (ranOut as number);
  });
  return below > 0 && worst(below) >= worst(below + 1) ? below : below + 1;
}

function advise(
  model: CommitmentModel,
  lowPoints: number | UndefinedValue,
  highPoints: number | UndefinedValue,
  thresholds: RangeThresholds,
): AdvisedCommitment | UndefinedValue {
  if (!isDefined(highPoints)) return highPoints;
  const usual = usuallyFinished(model, thresholds);
  if (usual === 0 || (highPoints === 0 && !isDefined(lowPoints))) {
    return undefinedBecause('too-little-finished');
  }
  const of = (points: number, unserved?: Unserved): AdvisedCommitment => ({
    points,
    chances: commitmentChances(model, points, thresholds),
    unserved,
  });
  if (!isDefined(lowPoints)) return of(Math.min(highPoints, usual));
  if (lowPoints <= highPoints) return of(Math.min(highPoints, Math.max(lowPoints, usual)));
  const unserved = unservedBy(model, thresholds);
  // Where work is pulled in before the rest is finished, a larger commitment would not be finished either.
  return unserved.why.code === 'pulled-in-before-finishing'
    ? of(highPoints === 0 ? usual : Math.min(highPoints, usual), unserved)
    : of(compromise(model, lowPoints, thresholds), unserved);
}

/**
 * The range to commit to, and the one number in it to start from.
 *
 * The high end is the largest commitment C with P(F ≥ floor · C) ≥ 80%, where F is how much of a commitment the team will
 * finish and the floor that of the kept share. F's distribution comes from the team's own closed sprints
 * (`finishEvidence`, `censoredPredictive`, `planAmounts`), scaled to the member-days of the coming sprint, those with a
 * commitment like C first, and its chances are made to fall with C (`fallingChances`). It is never counted on to be more
 * than the most that was finished in a sprint so far: what nobody has seen can't be counted on.
 * The low end is the smallest C with P(T > (1 + ceiling) · C) ≤ 20%, where T is how much the team takes in altogether
 * (`takeInEvidence`) and the ceiling that of the pull-in ratio.
 * Advised is the largest C between them with P(F ≥ C) ≥ 50%, else the low end. Where the low end lies above the high one,
 * it is the C with the largest min(P(F ≥ floor · C), P(T ≤ (1 + ceiling) · C)), or as without a low end where the team
 * pulls work in before it finishes what it has.
 * Units: whole points. At least x means more than x − ¼, since points come in halves.
 * Undefined, with what is missing, below three sprints that say so much; each end on its own, and the advice with the
 * high end: how likely a commitment is to be kept must be known. No advice either where not even a point gets finished
 * as often as not.
 * How far off: docs/forecasts.md; a test repeats it on generated teams.
 * How it misleads: it assumes that sprints are independent, that the team doesn't change other than in size, and that
 * a commitment of the size of an earlier one stands for as much time, where it may be for show; it takes pulled-in work as
 * a sign of spare time, which urgent work isn't. The verdict's other test, the surprise ratio, is only counted
 * (`surpriseAboveCeiling`).
 * Source: ours; the model's parts are standard (censored and contaminated normal observations, Bayes' rule).
 *
 * @param past in order, the last one the latest; only the last twelve with a commitment are used.
 * @example commitmentRange([], { workingDays: 10, memberDays: 50, memberDaysWhenAllThere: 50 }, { keptShareAtLeast: 0.8, pullInRatioAtMost: 0.2, surpriseRatioAtMost: 0.2 }).undefined.code === 'few-sprints'
 */
export function commitmentRange(
  past: readonly SprintEvidence[],
  coming: ComingTime,
  thresholds: RangeThresholds,
): CommitmentRange | UndefinedValue {
  const model = commitmentModel(past, coming);
  if ('undefined' in model) return model;
  const lowPoints = lowEnd(model, thresholds);
  const highPoints = highEnd(model, thresholds);
  return {
    lowPoints,
    highPoints,
    advised: advise(model, lowPoints, highPoints, thresholds),
    sprints: model.used.length,
    surpriseAboveCeiling: surpriseAboveCeiling(model.used, thresholds),
    missing: model.missing,
    model,
  };
}
