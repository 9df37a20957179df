/**
 * Which of two models speaks of a running sprint: that of sums, or that of cards. Both are asked about every past sprint
 * as if it were still running, and the one that was nearer speaks.
 */
import { cardProjection, type EndedCards } from './card-projection.ts';
import { crps } from './crps.ts';
import type { Interval } from './points-distribution.ts';
import {
  type EndedSprint,
  NO_HISTORY,
  type ProjectionHistory,
  projectVelocity,
  withEndedSprints,
} from './project-velocity.ts';
import type { SprintSoFar } from './sprint-so-far.ts';
import type { WeightedPoints } from './weighted-points.ts';

/** A past sprint of which it is known how each card went. */
export interface CardSprint {
  readonly team: string;
  readonly soFar: SprintSoFar;
  readonly velocityPoints: number;
  readonly open: EndedCards;
}

/** One past sprint, by both models, before its end was known. CRPS and errors in points. */
export interface ContestCase {
  readonly sums: ModelScore;
  readonly cards: ModelScore;
}

export interface ModelScore {
  readonly crps: number;
  readonly error: number;
  /** Whether the middle four fifths of the distribution held the outcome. */
  readonly isHeld: boolean;
}

/** With fewer scored sprints the model of sums speaks: it is the one with a record elsewhere. */
export const LEAST_CONTEST_SPRINTS = 8;

/**
 * Walks through one team's past sprints, oldest first; every sprint is foretold from those before it. One after the other, so that
 * who asks may do something else in between.
 *
 * @param onlyTeach so many of the first ones are not scored
 */
export function* contestCases(past: readonly CardSprint[], onlyTeach: number): Generator<ContestCase> {
  let history: ProjectionHistory = NO_HISTORY;
  for (const [i, sprint] of past.entries()) {
    const { team, soFar, velocityPoints, open } = sprint;
    if (i >= onlyTeach) {
      const sums = projectVelocity(history, team, soFar);
      const cards = byCards(
        past.slice(0, i).map((before) => before.open),
        soFar,
        open,
        sums.distribution,
      );
      yield { sums: scoreOf(sums.distribution, velocityPoints), cards: scoreOf(cards, velocityPoints) };
    }
    const ended: EndedSprint = { team, soFar, velocityPoints };
    history = withEndedSprints(history, [ended]);
  }
}

/** The model of cards, with what that of sums expects of the open work as its belief where it knows no card. */
export function byCards(
  past: readonly EndedCards[],
  soFar: SprintSoFar,
  open: Parameters<typeof cardProjection>[1]['open'],
  sums: WeightedPoints,
): WeightedPoints {
  const openPoints = Math.max(0, soFar.cardPoints - soFar.finishedPoints);
  const expected = openPoints === 0 ? 0 : (sums.meanPoints - soFar.finishedPoints) / openPoints;
  // Never quite sure, so that the odds are finite.
  const finishShare = Math.min(0.98, Math.max(0.02, expected));
  return cardProjection(past, { finishedPoints: soFar.finishedPoints, open, finishShare });
}

/**
 * The model with the lower mean CRPS over the sprints scored.
 *
 * @example speaker([]) === 'sums'
 */
export function speaker(cases: readonly ContestCase[]): 'sums' | 'cards' {
  if (cases.length < LEAST_CONTEST_SPRINTS) return 'sums';
  const ahead = cases.reduce((sum, each) => sum + each.sums.crps - each.cards.crps, 0);
  return ahead > 0 ? 'cards' : 'sums';
}

function scoreOf(distribution: WeightedPoints, velocityPoints: number): ModelScore {
  const held: Interval = { low: distribution.quantile(0.1), high: distribution.quantile(0.9) };
  return {
    crps: crps(distribution, velocityPoints),
    error: Math.abs(distribution.quantile(0.5) - velocityPoints),
    isHeld: held.low <= velocityPoints && velocityPoints <= held.high,
  };
}
