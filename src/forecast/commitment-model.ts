/** What a team's closed sprints say about how much of a commitment it finishes and how much work it takes in. */
import { type UndefinedValue, undefinedBecause } from '../sprint/undefined-value.ts';
import { type AssumedMembers, type ComingTime, type RelativeTime, relativeTime } from './availability.ts';
import { censoredPredictive, type UsualAmount } from './censored-predictive.ts';
import { finishEvidence, type SprintEvidence, takeInEvidence } from './commitment-evidence.ts';
import { fallingChances } from './falling-chances.ts';
import { type PlanAmounts, type PlayedPlan, planAmounts } from './plan-amounts.ts';
import type { PointsDistribution } from './points-distribution.ts';
import { median } from './quantile.ts';

/** With fewer the answer would be more belief than data. */
export const LEAST_SPRINTS = 3;
/** From here on the team's own sprints clearly outweigh the beliefs of the model. */
export const FIRM_SPRINTS = 6;
/** About half a year of two-week sprints: what lies further back is about another team. */
export const RECENT_SPRINTS = 12;

/** Standard deviation, as a share, of what is believed about the mean before any data: next to nothing. */
const LEVEL_SPREAD = 0.7;

/** An amount of the coming sprint, which goes with how much is committed to. */
export interface LearnedAmount {
  readonly amountOf: PlanAmounts;
  /** The chance that a commitment brings at least such a share of itself; it falls as the commitment grows. */
  readonly reaches: (share: number, points: number) => number;
  /** The chance that it brings more than such a share of itself; it falls as well. */
  readonly exceeds: (share: number, points: number) => number;
  /** Sprints that said something about it. */
  readonly sprints: number;
  /** The most that any of them is known to have reached, scaled to the coming sprint. */
  readonly mostSeenPoints: number;
}

export interface CommitmentModel {
  /** How much of a commitment the team will finish, if it is large enough. */
  readonly finishes: LearnedAmount | UndefinedValue;
  /** How much the team will take in, commitment and pulled-in work together. */
  readonly takesIn: LearnedAmount | UndefinedValue;
  /** The sprints used, in order. */
  readonly used: readonly SprintEvidence[];
  /** What they are scaled to. */
  readonly scaledTo: Pick<RelativeTime, 'measuredBy' | 'comingTime'>;
  readonly missing: readonly MissingEvidence[];
}

/** Something that the model doesn't know, and what it assumes in its place. */
export type MissingEvidence =
  | { readonly code: 'few-sprints'; readonly sprints: number; readonly firmSprints: number }
  | { readonly code: 'finish-not-recorded'; readonly sprints: number; readonly of: number }
  /** Neither days off nor members away: every sprint counts the same. */
  | { readonly code: 'working-time-unknown' }
  /** Only working days count. */
  | { readonly code: 'members-away-unknown' }
  /** In some sprints it isn't known who was there; what was taken instead. */
  | {
      readonly code: 'past-members-unknown';
      readonly sprints: number;
      readonly of: number;
      readonly taken: AssumedMembers;
    }
  /** Everybody is taken to be there. */
  | { readonly code: 'coming-absence-unknown' };

function learn(
  played: readonly PlayedPlan[],
  belief: UsualAmount,
  usualPlanPoints: number,
  having: 'finished-points' | 'pulled-in-points',
): LearnedAmount | UndefinedValue {
  if (played.length < LEAST_SPRINTS) {
    return undefinedBecause('few-sprints', { needed: LEAST_SPRINTS, known: played.length, having });
  }
  const amounts = played.map(({ amount }) => amount);
  const amountOf = planAmounts(censoredPredictive(amounts, belief), played, usualPlanPoints);
  const mostSeenPoints = Math.max(...amounts.map(({ low }) => low));
  // The largest but one: a single odd sprint must not make the steps long for all.
  const [, large] = played
    .map(({ planPoints, amount }) => Math.max(planPoints, amount.low))
    .sort((a, b) => b - a);
  const reachPoints = 2 * (large as number);
  const falling = (chanceOf: typeof chanceOfAtLeast) =>
    rememberedBy((share) =>
      fallingChances((points) => {
        const amount = amountOf(points);
        return { chance: chanceOf(amount, share * points), weight: amount.weight };
      }, reachPoints),
    );
  const [reaches, exceeds] = [falling(chanceOfAtLeast), falling(chanceOfMore)];
  return {
    amountOf,
    reaches: (share, points) => reaches(share)(points),
    exceeds: (share, points) => exceeds(share)(points),
    sprints: played.length,
    mostSeenPoints,
  };
}

function rememberedBy<T>(forShare: (share: number) => T): (share: number) => T {
  const known = new Map<number, T>();
  return (share) => {
    const value = known.get(share) ?? forShare(share);
    known.set(share, value);
    return value;
  };
}

/** Points come in halves, so at least so many are more than a quarter point below. */
const QUARTER_POINT = 0.25;
/** Against rounding: a bound that is whole by design must not lose half a point to the last digit. */
const SLACK = 1e-7;

function chanceOfAtLeast({ cdf }: Pick<PointsDistribution, 'cdf'>, points: number): number {
  const least = Math.ceil(2 * points - SLACK) / 2;
  return least <= 0 ? 1 : 1 - cdf(least - QUARTER_POINT);
}

function chanceOfMore({ cdf }: Pick<PointsDistribution, 'cdf'>, points: number): number {
  return 1 - cdf(Math.floor(2 * points + SLACK) / 2 + QUARTER_POINT);
}

/** What each sprint that says something of an amount began with and brought, scaled to the coming sprint. */
function playedPlans(
  used: readonly SprintEvidence[],
  factors: readonly number[],
  evidence: typeof finishEvidence,
): PlayedPlan[] {
  return used.flatMap((sprint, i) => {
    const factor = factors[i] as number;
    const amount = evidence(sprint);
    if (!amount) return [];
    return [
      {
        planPoints: sprint.commitmentPoints * factor,
        amount: { low: amount.low * factor, high: amount.high * factor },
      },
    ];
  });
}

function whatIsMissing(used: readonly SprintEvidence[], time: RelativeTime): MissingEvidence[] {
  const of = used.length;
  const missing: MissingEvidence[] = [];
  if (of < FIRM_SPRINTS) missing.push({ code: 'few-sprints', sprints: of, firmSprints: FIRM_SPRINTS });
  const withoutFinish = used.filter((sprint) => sprint.committedFinishedPoints === undefined).length;
  if (withoutFinish > 0) missing.push({ code: 'finish-not-recorded', sprints: withoutFinish, of });
  if (time.measuredBy === 'sprints') return [...missing, { code: 'working-time-unknown' }];
  if (time.measuredBy === 'working-days') return [...missing, { code: 'members-away-unknown' }];
  if (time.assumed) {
    const { sprints, members: taken } = time.assumed;
    missing.push({ code: 'past-members-unknown', sprints, of, taken });
  }
  if (time.isComingAssumed) missing.push({ code: 'coming-absence-unknown' });
  return missing;
}

/**
 * Learns from the last twelve closed sprints with a commitment. Past amounts are scaled to the working time of the
 * coming sprint (`relativeTime`); sprints without any working time are left out.
 * Undefined below three such sprints, and when the coming sprint holds no working time.
 *
 * @param past in order, the last one the latest; without cancelled sprints.
 */
export function commitmentModel(
  past: readonly SprintEvidence[],
  coming: ComingTime,
): CommitmentModel | UndefinedValue {
  if (coming.memberDays === 0 || coming.workingDays === 0) {
    return undefinedBecause('nobody-there');
  }
  const committed = past.filter(
    ({ commitmentPoints, memberDays, workingDays }) =>
      commitmentPoints > 0 && memberDays !== 0 && workingDays !== 0,
  );
  const used = committed.slice(-RECENT_SPRINTS);
  if (used.length < LEAST_SPRINTS) {
    return undefinedBecause('few-sprints', {
      needed: LEAST_SPRINTS,
      known: used.length,
      having: 'commitment',
    });
  }
  const time = relativeTime(used, coming);
  const factors = time.factors.map((factor) => factor ?? 1);
  // A team takes in about what it can finish, so both beliefs start from there.
  const usual = median(
    used.map(
      (sprint, i) =>
        (sprint.velocityPoints ?? sprint.committedFinishedPoints ?? sprint.commitmentPoints) *
        (factors[i] as number),
    ),
  ) as number;
  const usualPlanPoints = median(
    used.map((sprint, i) => sprint.commitmentPoints * (factors[i] as number)),
  ) as number;
  // Where most sprints finished nothing, only the commitment shows the team's scale.
  const belief = { centrePoints: usual > 0 ? usual : usualPlanPoints, levelSpread: LEVEL_SPREAD };
  return {
    finishes: learn(playedPlans(used, factors, finishEvidence), belief, usualPlanPoints, 'finished-points'),
    takesIn: learn(playedPlans(used, factors, takeInEvidence), belief, usualPlanPoints, 'pulled-in-points'),
    used,
    scaledTo: { measuredBy: time.measuredBy, comingTime: time.comingTime },
    missing: whatIsMissing(used, time),
  };
}
