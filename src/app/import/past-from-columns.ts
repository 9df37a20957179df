/** What a sprint of which only sums are known leaves behind for the statistics. Pure; nothing unknown is made up. */
import type { RatioId, RatioSums } from '../../sprint/sprint-ratios.ts';
import { RATIO_IDS, RATIOS, ratioOfSums } from '../../sprint/sprint-ratios.ts';
import type { Ratio, ReasonCode } from '../../sprint/undefined-value.ts';
import { undefinedBecause } from '../../sprint/undefined-value.ts';
import type { PastRatios } from '../history/past-sprint.ts';
import type { FromRecords } from '../history/past-sprint-at-closing.ts';
import type { SprintLine, StatedRatios } from './sprint-line.ts';

export type KnownSums = Pick<
  SprintLine,
  | 'commitmentPoints'
  | 'pulledInPoints'
  | 'surprisePoints'
  | 'velocityPoints'
  | 'workedPoints'
  | 'committedFinishedPoints'
  | 'ratios'
>;

type NotImported = Extract<ReasonCode, `${string}-not-imported`>;

/** Why a sum isn't known; any other is one over cards. */
const NOT_IMPORTED: { readonly [Sum in keyof RatioSums]?: NotImported } = {
  committedFinishedPoints: 'finished-commitment-not-imported',
  pulledInPoints: 'pulled-in-work-not-imported',
  surprisePoints: 'surprise-work-not-imported',
  loadPoints: 'load-not-imported',
  velocityPoints: 'work-not-imported',
  workedPoints: 'work-not-imported',
};

/** @example pastFromColumns({ commitmentPoints: 20, velocityPoints: 10, pulledInPoints: 0, … }).ratios.keptShare === 0.5 */
export function pastFromColumns(sums: KnownSums): FromRecords {
  const { commitmentPoints, pulledInPoints, surprisePoints, velocityPoints, workedPoints } = sums;
  const committedFinishedPoints = committedFinished(sums);
  const loadPoints =
    pulledInPoints === undefined || surprisePoints === undefined
      ? undefined
      : commitmentPoints + pulledInPoints + surprisePoints;
  const known = {
    commitmentPoints,
    pulledInPoints,
    surprisePoints,
    velocityPoints,
    workedPoints,
    committedFinishedPoints,
  };
  return { ...known, ratios: ratiosOf({ ...known, loadPoints }, sums.ratios), trace: [], cards: [] };
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

/** The sums that a ratio may be made of, as far as the columns say them. */
type ColumnSums = { readonly [Sum in keyof RatioSums]?: number | undefined };

function ratiosOf(sums: ColumnSums, stated: StatedRatios): PastRatios {
  const ids = RATIO_IDS.filter((id) => id !== 'velocityGrowth');
  return Object.fromEntries(ids.map((id) => [id, ratioFrom(id, sums, stated[id])])) as PastRatios;
}

function ratioFrom(id: RatioId, sums: ColumnSums, stated: number | undefined): Ratio {
  const { part, less, whole, whenZero } = RATIOS[id];
  if (sums[whole] === 0) return undefinedBecause(whenZero);
  if (stated !== undefined) return stated;
  const unknown = [less, part, whole].find((sum) => sum !== undefined && sums[sum] === undefined);
  if (unknown !== undefined) return undefinedBecause(NOT_IMPORTED[unknown] ?? 'cards-not-imported');
  return ratioOfSums(id, sums as RatioSums);
}
