/** By how much a body of work tends to grow while a team does it, from the work that came in after planning. */
import { type UndefinedValue, undefinedBecause } from '../sprint/undefined-value.ts';

export interface GrowingSprint {
  readonly commitmentPoints: number;
  /** Undefined where it was not recorded. */
  readonly pulledInPoints: number | undefined;
}

export interface MeasuredGrowth {
  /** Of the work that the sprints took in, the share that was not planned. */
  readonly share: number;
  /** Standard deviation of the share of as many coming sprints. */
  readonly deviation: number;
  readonly sprints: number;
}

export const LEAST_SPRINTS_FOR_GROWTH = 3;
/** As many as the commitment range looks back at. */
const LATEST_SPRINTS = 12;

/**
 * The share of what a team takes in that nobody had foreseen at planning: of every point that it finishes, so much goes
 * to work that is not part of the backlog yet.
 *
 * Formula: p = Σ pulled-in work ÷ Σ (commitment + pulled-in work) over the latest twelve sprints; deviation
 * s·√(2 ÷ n), with s that of the sprints' own shares (n − 1): how far the mean of n coming sprints lies from that of n
 * past ones. Surprise work and drift are not in it: velocity counts cards by their estimates, so work that turns out
 * larger already shows in a lower pace, and would count twice.
 * Units: a share from 0 to 1. Undefined below three sprints with work whose pulled-in part is known.
 * How it misleads: a team that is ahead pulls in cards of the same backlog, which is no growth.
 * Source: common practice; none published.
 *
 * @example measuredGrowth([{ commitmentPoints: 8, pulledInPoints: 2 }, { commitmentPoints: 8, pulledInPoints: 2 }, { commitmentPoints: 8, pulledInPoints: 2 }]).share === 0.2
 */
export function measuredGrowth(sprints: readonly GrowingSprint[]): MeasuredGrowth | UndefinedValue {
  const known = sprints
    .flatMap(({ commitmentPoints, pulledInPoints }) =>
      pulledInPoints !== undefined && commitmentPoints + pulledInPoints > 0
        ? [{ came: pulledInPoints, all: commitmentPoints + pulledInPoints }]
        : [],
    )
    .slice(-LATEST_SPRINTS);
  const n = known.length;
  if (n < LEAST_SPRINTS_FOR_GROWTH) {
    return undefinedBecause('few-sprints', {
      needed: LEAST_SPRINTS_FOR_GROWTH,
      known: n,
      having: 'closed',
    });
  }
  const sum = (of: (sprint: { came: number; all: number }) => number): number =>
    known.reduce((total, sprint) => total + of(sprint), 0);
  const share = sum(({ came }) => came) / sum(({ all }) => all);
  const mean = sum(({ came, all }) => came / all) / n;
  const variance = sum(({ came, all }) => (came / all - mean) ** 2) / (n - 1);
  return { share, deviation: Math.sqrt((2 * variance) / n), sprints: n };
}
