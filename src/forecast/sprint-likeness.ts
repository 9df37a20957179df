/** How alike two sprints were at the same share of their time. */
import type { SprintSoFar } from './sprint-so-far.ts';

/** What is known of a sprint that was not watched day by day: only what it began with. */
export interface SprintStart extends Pick<SprintSoFar, 'cardPoints'> {
  /** Of its time, at the moment that is asked about; from 0 to 1. */
  readonly elapsedShare: number;
}

/** The features that are compared. Shares are of the card points. */
export interface SprintTraits {
  readonly logSize: number;
  /** Of what is open; these three are undefined when nobody noted how far the sprint had come. */
  readonly logOpen: number | undefined;
  readonly finishedShare: number | undefined;
  readonly underwayShare: number | undefined;
}

/**
 * The differences that count as one step of unlikeness: open work that is 1.6 times as much, 15 hundredths of the
 * cards' points finished, and three tenths underway. Chosen as round numbers; the error of the projection hardly
 * changes between half and twice as much (docs/forecasts.md).
 */
const STEP_LOG_SIZE = 0.5;
const STEP_FINISHED_SHARE = 0.15;
const STEP_UNDERWAY_SHARE = 0.3;

/** Logs of points, with one point added so that an empty sprint has one too. */
export function traitsOf(sprint: SprintSoFar | SprintStart): SprintTraits {
  const known = 'finishedPoints' in sprint ? sprint : undefined;
  const size = Math.max(sprint.cardPoints, known?.finishedPoints ?? 0);
  const per = Math.max(size, 1);
  return {
    logSize: Math.log1p(size),
    logOpen: known && Math.log1p(size - known.finishedPoints),
    finishedShare: known && known.finishedPoints / per,
    underwayShare: known && known.underwayPoints / per,
  };
}

/**
 * From 1 (alike) towards 0: how much a past sprint says about this one.
 *
 * Formula: (1 + ¼·Σ (difference ÷ step)²)⁻² over the log of the open points, the finished share and the underway share;
 * a share that is not known counts as one step away, and the whole sizes are compared where what was open is not known.
 * The tail is long: where no sprint is alike, those least unlike still speak.
 * Units: none. Always defined.
 * How it misleads: two sprints of equal shape may differ in everything that is not counted in points.
 * Source: the kernel is Student's (with three degrees of freedom, as a density); the choice is ours.
 *
 * @example likeness(traitsOf({ cardPoints: 20, elapsedShare: 0 }), traitsOf({ cardPoints: 20, elapsedShare: 0 })) === 4 / 9
 */
export function likeness(a: SprintTraits, b: SprintTraits): number {
  const size =
    a.logOpen === undefined || b.logOpen === undefined ? a.logSize - b.logSize : a.logOpen - b.logOpen;
  const steps =
    (size / STEP_LOG_SIZE) ** 2 +
    squaredSteps(a.finishedShare, b.finishedShare, STEP_FINISHED_SHARE) +
    squaredSteps(a.underwayShare, b.underwayShare, STEP_UNDERWAY_SHARE);
  return 1 / (1 + steps / 4) ** 2;
}

function squaredSteps(a: number | undefined, b: number | undefined, step: number): number {
  return a === undefined || b === undefined ? 1 : ((a - b) / step) ** 2;
}
