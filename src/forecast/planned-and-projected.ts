/**
 * What a sprint that has hardly begun will have finished: by its projection, and by what was known when it was planned, so that
 * the first day's status doesn't tell another chance than the planning did.
 */
import type { PointsDistribution } from './points-distribution.ts';

/** Only the chances of an amount are known, not the amounts of a chance. */
export type Amount = Pick<PointsDistribution, 'cdf'>;

/** How loudly the planning speaks at the start … */
const PLAN_SHARE_AT_START = 0.5;
/** … and from which share of the time on it is silent: by then the sprint itself says more. */
const PLAN_IS_SILENT_FROM = 0.4;

/** Points come in halves: at most so many are less than a quarter point more. */
const QUARTER_POINT = 0.25;
/** Below this chance a ratio of two chances is noise. */
const NEGLIGIBLE = 1e-9;

/**
 * How much of what is foretold comes from the planning: ½·(1 − elapsed ÷ 0.4), and 0 from there on.
 *
 * @param elapsedShare of the sprint's time, 0 to 1
 * @example planShare(0) === 0.5
 */
export function planShare(elapsedShare: number): number {
  return PLAN_SHARE_AT_START * Math.max(0, 1 - elapsedShare / PLAN_IS_SILENT_FROM);
}

/**
 * The points finished by the sprint's end, as planning and projection see them together.
 *
 * Formula: P(V ≤ x) = s·P(F ≤ x | F ≥ finished) + (1 − s)·P(projection ≤ x), with F what the team was taken to finish of its
 * commitment (`planAmounts`) and s the planning's share (`planShare`). All that follows from it, chances over whole cards
 * too, is then the same mean of what both say.
 * Units: points, in halves. Without a planning, and later on, it is the projection.
 * How it misleads: of how the sprint has gone so far the planning knows only what is finished.
 * Source: a linear pool of two forecasts; Stone, "The opinion pool", 1961 (memory). The shares are ours, from real sprints
 * (docs/forecasts.md).
 *
 * @param planned how much the team was taken to finish of its commitment; undefined when nobody could say
 * @example plannedAndProjected({ cdf: () => 0.5 }, { cdf: () => 1 }, { finishedPoints: 0, elapsedShare: 0 }).cdf(3) === 0.75
 */
export function plannedAndProjected(
  projected: Amount,
  planned: Amount | undefined,
  { finishedPoints, elapsedShare }: { readonly finishedPoints: number; readonly elapsedShare: number },
): Amount {
  const share = planShare(elapsedShare);
  if (planned === undefined || share === 0) return projected;
  const atMost = (points: number): number => planned.cdf(Math.floor(2 * points) / 2 + QUARTER_POINT);
  const less = finishedPoints > 0 ? atMost(finishedPoints - 0.5) : 0;
  if (1 - less < NEGLIGIBLE) return projected;
  const ofPlan = (points: number): number =>
    points < finishedPoints ? 0 : Math.max(0, atMost(points) - less) / (1 - less);
  return { cdf: (points) => share * ofPlan(points) + (1 - share) * projected.cdf(points) };
}
