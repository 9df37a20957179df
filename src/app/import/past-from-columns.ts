/** What a sprint of which only sums are known leaves behind for the statistics. Pure; nothing unknown is made up. */
import { estimateAccuracy } from '../../sprint/ratios/estimate-accuracy.ts';
import { finishShare } from '../../sprint/ratios/finish-share.ts';
import { keptShare } from '../../sprint/ratios/kept-share.ts';
import { planShare } from '../../sprint/ratios/plan-share.ts';
import { pullInRatio } from '../../sprint/ratios/pull-in-ratio.ts';
import { surpriseRatio } from '../../sprint/ratios/surprise-ratio.ts';
import type { Ratio } from '../../sprint/undefined-value.ts';
import { undefinedBecause } from '../../sprint/undefined-value.ts';
import type { PastRatios } from '../history/past-sprint.ts';
import type { FromRecords } from '../history/past-sprint-at-closing.ts';
import type { SprintLine } from './sprint-line.ts';

export type KnownSums = Pick<
  SprintLine,
  | 'commitmentPoints'
  | 'pulledInPoints'
  | 'surprisePoints'
  | 'velocityPoints'
  | 'workedPoints'
  | 'committedFinishedPoints'
  | 'estimateAccuracy'
  | 'onScaleShare'
>;

const NO_CARDS = undefinedBecause('cards-not-imported');

/** @example pastFromColumns({ commitmentPoints: 20, velocityPoints: 10, pulledInPoints: 0, … }).ratios.keptShare === 0.5 */
export function pastFromColumns(sums: KnownSums): FromRecords {
  const { commitmentPoints, pulledInPoints, surprisePoints, velocityPoints, workedPoints } = sums;
  const committedFinishedPoints = committedFinished(sums);
  return {
    commitmentPoints,
    pulledInPoints,
    surprisePoints,
    velocityPoints,
    workedPoints,
    committedFinishedPoints,
    ratios: ratiosOf({ ...sums, committedFinishedPoints }),
    trace: [],
    cards: [],
  };
}

/** As it is said, or as it follows from the other sums without any doubt. */
function committedFinished(sums: KnownSums): number | undefined {
  const { commitmentPoints, pulledInPoints, velocityPoints, committedFinishedPoints } = sums;
  if (committedFinishedPoints !== undefined) return committedFinishedPoints;
  if (commitmentPoints === 0 || velocityPoints === 0) return 0;
  if (velocityPoints === undefined || pulledInPoints === undefined) return undefined;
  if (pulledInPoints === 0) return velocityPoints;
  return velocityPoints === commitmentPoints + pulledInPoints ? commitmentPoints : undefined;
}

function ratiosOf(sums: KnownSums): PastRatios {
  const { commitmentPoints, pulledInPoints, surprisePoints, velocityPoints, workedPoints } = sums;
  const { committedFinishedPoints } = sums;
  const overCommitment = (
    points: number | undefined,
    unknown:
      | 'finished-commitment-not-imported'
      | 'pulled-in-work-not-imported'
      | 'surprise-work-not-imported',
    ratio: (known: number) => Ratio,
  ): Ratio => {
    if (commitmentPoints === 0) return undefinedBecause('no-commitment');
    return points === undefined ? undefinedBecause(unknown) : ratio(points);
  };
  const loadPoints =
    pulledInPoints === undefined || surprisePoints === undefined
      ? undefined
      : commitmentPoints + pulledInPoints + surprisePoints;
  return {
    keptShare: overCommitment(committedFinishedPoints, 'finished-commitment-not-imported', (known) =>
      keptShare({ committedFinishedPoints: known, commitmentPoints }),
    ),
    pullInRatio: overCommitment(pulledInPoints, 'pulled-in-work-not-imported', (known) =>
      pullInRatio({ pulledInPoints: known, commitmentPoints }),
    ),
    surpriseRatio: overCommitment(surprisePoints, 'surprise-work-not-imported', (known) =>
      surpriseRatio({ surprisePoints: known, commitmentPoints }),
    ),
    planShare:
      loadPoints === undefined
        ? undefinedBecause('load-not-imported')
        : planShare({ commitmentPoints, loadPoints }),
    estimateAccuracy:
      loadPoints === 0
        ? estimateAccuracy({ estimateErrorPoints: 0, loadPoints })
        : (sums.estimateAccuracy ?? NO_CARDS),
    onScaleShare: sums.onScaleShare ?? NO_CARDS,
    finishShare:
      velocityPoints === undefined || workedPoints === undefined
        ? undefinedBecause('work-not-imported')
        : finishShare({ velocityPoints, workedPoints }),
  };
}
