/** Why no commitment serves a team well, and what would help, as its own sprints show. Speaks of sprints, of nobody. */
import type { Thresholds } from '../sprint/thresholds.ts';
import { type Reason, reason } from '../sprint/undefined-value.ts';
import { finishEvidence, type SprintEvidence } from './commitment-evidence.ts';
import { type CommitmentModel, FIRM_SPRINTS } from './commitment-model.ts';

/** What would help, the one that the most sprints speak for first. `sprints` of `of` show it. */
export type Remedy =
  /** The surprise ratio was above its ceiling. */
  | { readonly code: 'less-surprise'; readonly sprints: number; readonly of: number }
  /** The sprint was missed, and its largest card that was begun would have kept it. */
  | { readonly code: 'smaller-cards'; readonly sprints: number; readonly of: number }
  | { readonly code: 'more-sprints'; readonly firmSprints: number }
  /** The sprints show nothing but that they differ: the least and most finished, in points. */
  | { readonly code: 'ask-what-differed'; readonly lowPoints: number; readonly highPoints: number };

export interface Unserved {
  readonly why: Reason;
  readonly remedies: readonly Remedy[];
}

/** A remedy must show in so many sprints: two, and one in four. */
const LEAST_SHOWN = { sprints: 2, share: 0.25 };

type RemedyThresholds = Pick<Thresholds, 'keptShareAtLeast' | 'surpriseRatioAtMost'>;

/** In how many sprints of those that know it the surprise ratio was above its ceiling. */
export function surpriseAboveCeiling(
  used: readonly SprintEvidence[],
  { surpriseRatioAtMost: ceiling }: Pick<Thresholds, 'surpriseRatioAtMost'>,
): { sprints: number; of: number } {
  const ratios = used.flatMap(({ surprisePoints, commitmentPoints }) =>
    surprisePoints === undefined ? [] : [surprisePoints / commitmentPoints],
  );
  return { sprints: ratios.filter((ratio) => ratio > ceiling).length, of: ratios.length };
}

function missedByOneCard(
  used: readonly SprintEvidence[],
  { keptShareAtLeast: floor }: Pick<Thresholds, 'keptShareAtLeast'>,
): { sprints: number; of: number } {
  const known = used.flatMap(({ commitmentPoints, committedFinishedPoints: finished, largestOpenPoints }) =>
    finished === undefined || largestOpenPoints === undefined
      ? []
      : [{ finished, needed: floor * commitmentPoints, open: largestOpenPoints }],
  );
  const missed = known.filter(({ finished, needed, open }) => finished < needed && finished + open >= needed);
  return { sprints: missed.length, of: known.length };
}

/** Why the low end lies above the high end: work pulled in early in every second sprint, or sprints that differ too much. */
export function unservedBy({ used }: CommitmentModel, thresholds: RemedyThresholds): Unserved {
  const early = used.filter(
    ({ commitmentPoints, pulledInPoints, committedFinishedPoints, velocityPoints }) =>
      (pulledInPoints ?? 0) > 0 &&
      (committedFinishedPoints ?? velocityPoints ?? commitmentPoints) < commitmentPoints,
  ).length;
  if (2 * early >= used.length) {
    const why = reason('pulled-in-before-finishing', { sprints: early, of: used.length });
    return { why, remedies: [] };
  }
  const shown = [
    { code: 'less-surprise' as const, ...surpriseAboveCeiling(used, thresholds) },
    { code: 'smaller-cards' as const, ...missedByOneCard(used, thresholds) },
  ]
    .filter(({ sprints, of }) => sprints >= LEAST_SHOWN.sprints && sprints >= LEAST_SHOWN.share * of)
    .toSorted((a, b) => b.sprints / b.of - a.sprints / a.of);
  const remedies: Remedy[] = shown.length > 0 ? shown : [whatElse(used)];
  return { why: reason('varies-too-much'), remedies };
}

function whatElse(used: readonly SprintEvidence[]): Remedy {
  if (used.length < FIRM_SPRINTS) return { code: 'more-sprints', firmSprints: FIRM_SPRINTS };
  const finished = used.flatMap((sprint) => finishEvidence(sprint)?.low ?? []);
  const [lowPoints, highPoints] = [Math.min(...finished), Math.max(...finished)];
  return { code: 'ask-what-differed', lowPoints, highPoints };
}
