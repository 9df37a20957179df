/** The verdict at a sprint's end: was the commitment kept, and if not, which test failed by how much. */
import type { SprintRatios } from './sprint-ratios.ts';
import type { Thresholds } from './thresholds.ts';
import { isDefined } from './undefined-value.ts';

export type Verdict = 'kept' | 'missed' | 'no plan';

/** A test of the verdict that failed. Shares and ratios: 1 means 100%. */
export interface FailedTest {
  readonly id: 'keptShare' | 'surpriseRatio';
  readonly value: number;
  readonly threshold: number;
  /** How far the value lies on the wrong side; above 0. */
  readonly distance: number;
}

export interface VerdictResult {
  readonly verdict: Verdict;
  readonly failedTests: readonly FailedTest[];
}

/** What a team judges its sprints by. */
export interface VerdictRules {
  readonly thresholds: Pick<Thresholds, 'keptShareAtLeast' | 'surpriseRatioAtMost'>;
  /** False: the kept share alone decides. Missing: surprise work counts. */
  readonly surpriseInVerdict?: boolean | undefined;
}

/**
 * `kept` when the kept share reaches its floor and the surprise ratio, where it counts, stays within its ceiling,
 * otherwise `missed`; `no plan` when there was no commitment. A value that lies on its threshold passes.
 */
export function verdictOf(
  ratios: Pick<SprintRatios, 'keptShare' | 'surpriseRatio'>,
  { thresholds, surpriseInVerdict = true }: VerdictRules,
): VerdictResult {
  const { keptShare, surpriseRatio } = ratios;
  if (!isDefined(keptShare) || !isDefined(surpriseRatio)) return { verdict: 'no plan', failedTests: [] };
  const failedTests: FailedTest[] = [];
  const floor = thresholds.keptShareAtLeast;
  if (keptShare < floor) {
    failedTests.push({ id: 'keptShare', value: keptShare, threshold: floor, distance: floor - keptShare });
  }
  const ceiling = thresholds.surpriseRatioAtMost;
  if (surpriseInVerdict && surpriseRatio > ceiling) {
    failedTests.push({
      id: 'surpriseRatio',
      value: surpriseRatio,
      threshold: ceiling,
      distance: surpriseRatio - ceiling,
    });
  }
  return { verdict: failedTests.length > 0 ? 'missed' : 'kept', failedTests };
}
