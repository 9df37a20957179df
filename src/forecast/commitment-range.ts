/**
 * How much to commit to: enough not to idle, little enough to keep. It advises; the team decides.
 */
import type { Thresholds } from '../sprint/thresholds.ts';
import { type Reason, reason, type UndefinedValue, undefinedBecause } from '../sprint/undefined-value.ts';
import type { ComingTime } from './availability.ts';
import type { SprintEvidence } from './commitment-evidence.ts';
import { type CommitmentModel, commitmentModel } from './commitment-model.ts';

/** The chance of being kept that the range aims for; that of pulling in too much is the rest up to 1. */
export const KEPT_CHANCE = 0.8;
/** Points come in halves. */
const HALF_POINT = 0.5;
/** Against rounding: a bound that is whole by design must not lose half a point to the last digit. */
const SLACK = 1e-7;

export type RangeThresholds = Pick<
  Thresholds,
  'keptShareAtLeast' | 'pullInRatioAtMost' | 'surpriseRatioAtMost'
>;

/** Why the low end lies above the high end, and what to do. */
export interface CrossedRange {
  readonly why: Reason;
  /**
   * The commitment at which being kept and not pulling in too much have the same chance, and that chance (0 to 1).
   * Undefined where the high end is the better guide, since another commitment would not change the reason.
   */
  readonly compromise: { readonly points: number; readonly chance: number } | undefined;
}

export interface CommitmentRange {
  /** The lowest commitment after which at most 2 in 10 sprints pull in more than the ceiling. */
  readonly lowPoints: number | UndefinedValue;
  /** The highest commitment that at least 8 in 10 sprints keep. */
  readonly highPoints: number | UndefinedValue;
  /** Set when the low end lies above the high end: then there is no range to commit to. */
  readonly crossed: CrossedRange | undefined;
  /** Sprints with a commitment that the range is made from. */
  readonly sprints: number;
  /** In how many of them the surprise ratio was above its ceiling: no commitment changes that. */
  readonly surpriseAboveCeiling: { readonly sprints: number; readonly of: number };
  readonly missing: CommitmentModel['missing'];
  readonly model: CommitmentModel;
}

/** The chance (0 to 1) that so large a commitment is kept: that its kept share reaches the floor. */
export function chanceKept(
  { finishes }: CommitmentModel,
  commitmentPoints: number,
  thresholds: RangeThresholds,
): number | UndefinedValue {
  if ('undefined' in finishes) return finishes;
  if (commitmentPoints === 0) return undefinedBecause('nothing-committed');
  const needed = thresholds.keptShareAtLeast * commitmentPoints;
  return needed === 0 ? 1 : 1 - finishes.distribution.cdf(needed);
}

/** The chance (0 to 1) that after so large a commitment the pull-in ratio exceeds its ceiling. */
export function chancePulledInTooMuch(
  { takesIn }: CommitmentModel,
  commitmentPoints: number,
  thresholds: RangeThresholds,
): number | UndefinedValue {
  if ('undefined' in takesIn) return takesIn;
  if (commitmentPoints === 0) return undefinedBecause('nothing-committed');
  return 1 - takesIn.distribution.cdf((1 + thresholds.pullInRatioAtMost) * commitmentPoints);
}

function highEnd({ finishes }: CommitmentModel, floor: number): number | UndefinedValue {
  if ('undefined' in finishes) return finishes;
  if (floor === 0) return undefinedBecause('floor-is-zero');
  const surely = Math.min(finishes.distribution.quantile(1 - KEPT_CHANCE), finishes.mostSeenPoints);
  return Math.floor(surely / floor / HALF_POINT + SLACK) * HALF_POINT;
}

function lowEnd({ takesIn }: CommitmentModel, ceiling: number): number | UndefinedValue {
  if ('undefined' in takesIn) return takesIn;
  return (
    Math.ceil(takesIn.distribution.quantile(KEPT_CHANCE) / (1 + ceiling) / HALF_POINT - SLACK) * HALF_POINT
  );
}

/** The commitment at which being kept and not pulling in too much have the same chance. */
function compromise(
  model: CommitmentModel,
  from: number,
  to: number,
  thresholds: RangeThresholds,
): { points: number; chance: number } {
  let [low, high] = [from, to];
  while (high - low > HALF_POINT / 100) {
    const middle = (low + high) / 2;
    const kept = chanceKept(model, middle, thresholds) as number;
    const pulledInTooMuch = chancePulledInTooMuch(model, middle, thresholds) as number;
    if (kept > 1 - pulledInTooMuch) low = middle;
    else high = middle;
  }
  const points = Math.round(low / HALF_POINT) * HALF_POINT;
  const kept = chanceKept(model, points, thresholds) as number;
  const spared = 1 - (chancePulledInTooMuch(model, points, thresholds) as number);
  return { points, chance: Math.min(kept, spared) };
}

function crossing(
  model: CommitmentModel,
  lowPoints: number,
  highPoints: number,
  thresholds: RangeThresholds,
): CrossedRange {
  const { used } = model;
  if (highPoints === 0) return { why: reason('too-little-finished'), compromise: undefined };
  const both = used.filter(
    ({ commitmentPoints, pulledInPoints, committedFinishedPoints, velocityPoints }) =>
      (pulledInPoints ?? 0) > 0 &&
      (committedFinishedPoints ?? velocityPoints ?? commitmentPoints) < commitmentPoints,
  ).length;
  if (2 * both >= used.length) {
    return {
      why: reason('pulled-in-before-finishing', { sprints: both, of: used.length }),
      compromise: undefined,
    };
  }
  return {
    why: reason('varies-too-much'),
    compromise: compromise(model, highPoints, lowPoints, thresholds),
  };
}

/**
 * The range to commit to.
 *
 * The high end is the largest commitment C with P(F ≥ floor · C) ≥ 80%, where F is how much of a commitment the
 * team will finish and the floor that of the kept share. F's distribution comes from the team's own closed sprints
 * (`finishEvidence`, `censoredPredictive`), scaled to the working time of the coming sprint. It is never counted on
 * to be more than the most that was finished in a sprint so far: what nobody has seen can't be counted on.
 * The low end is the smallest C with P(T > (1 + ceiling) · C) ≤ 20%, where T is how much the team takes in
 * altogether (`takeInEvidence`) and the ceiling that of the pull-in ratio.
 * Units: points, multiples of 0.5, the high end rounded down and the low end up.
 * Undefined, with what is missing, below three sprints that say so much; each end on its own.
 * How far off: of 5,400 generated teams (timid, fair, bold and wavering; a spread of 12, 25 and 40%; 3, 6 and 12
 * sprints) 84% kept the high end (90% of the steady, 80% of the unsteady ones), and 18% pulled in too much after
 * the low end; a test repeats it on fewer teams. Where the spread is above about a quarter the ends usually cross.
 * How it misleads: it assumes that sprints are independent, that the team doesn't change, and that what it finishes
 * doesn't depend on what it commits to, though a team that is far overloaded finishes less, and one with much time
 * may stretch its work; it takes pulled-in work as a sign of spare time, which urgent work isn't. The verdict's other test,
 * the surprise ratio, is only counted (`surpriseAboveCeiling`).
 * Source: ours; the model's parts are standard (censored normal observations, Bayes' rule).
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
  const lowPoints = lowEnd(model, thresholds.pullInRatioAtMost);
  const highPoints = highEnd(model, thresholds.keptShareAtLeast);
  const isCrossed = typeof lowPoints === 'number' && typeof highPoints === 'number' && lowPoints > highPoints;
  const known = model.used.filter(({ surprisePoints }) => surprisePoints !== undefined);
  return {
    lowPoints,
    highPoints,
    crossed: isCrossed ? crossing(model, lowPoints, highPoints, thresholds) : undefined,
    sprints: model.used.length,
    surpriseAboveCeiling: {
      sprints: known.filter(
        (sprint) =>
          (sprint.surprisePoints as number) / sprint.commitmentPoints > thresholds.surpriseRatioAtMost,
      ).length,
      of: known.length,
    },
    missing: model.missing,
    model,
  };
}
