/** How alike two sprints were at the same share of their time. */
import type { SprintSoFar } from './sprint-so-far.ts';

/** What is known of a sprint that was not watched day by day: only what it began with. */
export type SprintStart = Pick<SprintSoFar, 'cardPoints'>;

/** The features that are compared. Shares are of the card points. */
export interface SprintTraits {
  readonly logSize: number;
  /** Undefined when nobody noted how far the sprint had come. */
  readonly finishedShare: number | undefined;
  readonly underwayShare: number | undefined;
}

/**
 * The differences that count as one step of unlikeness. A load twice as large is about one step (ln 2 ÷ 0.75); so
 * are three tenths of the load finished, or underway. Chosen as round numbers; the error of the projection hardly
 * changes between half and twice as much (docs/forecasts.md).
 */
const STEP_LOG_SIZE = 0.75;
const STEP_SHARE = 0.3;

/** Log of the size, with one point added so that an empty sprint has one too. */
export function traitsOf(sprint: SprintSoFar | SprintStart): SprintTraits {
  const known = 'finishedPoints' in sprint ? sprint : undefined;
  const size = Math.max(sprint.cardPoints, known?.finishedPoints ?? 0);
  const per = Math.max(size, 1);
  return {
    logSize: Math.log1p(size),
    finishedShare: known && known.finishedPoints / per,
    underwayShare: known && known.underwayPoints / per,
  };
}

/**
 * From 1 (alike) to 0: how much a past sprint says about this one.
 *
 * Formula: exp(−½·Σ (difference ÷ step)²) over log size, finished share and underway share; a share that is not
 * known counts as one step away.
 * Units: none. Always defined.
 * How it misleads: two sprints of equal shape may differ in everything that is not counted in points.
 *
 * @example likeness(traitsOf({ cardPoints: 20 }), traitsOf({ cardPoints: 20 })) === Math.exp(-1)
 */
export function likeness(a: SprintTraits, b: SprintTraits): number {
  const size = (a.logSize - b.logSize) / STEP_LOG_SIZE;
  return Math.exp(
    -0.5 *
      (size * size +
        squaredSteps(a.finishedShare, b.finishedShare) +
        squaredSteps(a.underwayShare, b.underwayShare)),
  );
}

function squaredSteps(a: number | undefined, b: number | undefined): number {
  if (a === undefined || b === undefined) return 1;
  const steps = (a - b) / STEP_SHARE;
  return steps * steps;
}
