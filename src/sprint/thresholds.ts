/** The lines that a ratio may cross, each adjustable by the team. Shares and ratios: 1 means 100%. */

export interface Thresholds {
  readonly keptShareAtLeast: number;
  readonly surpriseRatioAtMost: number;
  readonly pullInRatioAtMost: number;
  readonly planShareAtLeast: number;
  readonly estimateAccuracyAtLeast: number;
  readonly estimateAccuracyAtMost: number;
  /** At the first mark most teams can steer themselves. */
  readonly velocityGrowthFirstMark: number;
  /** The long-range mark. */
  readonly velocityGrowthLongRangeMark: number;
}

/** Common practice, no published source. */
export const DEFAULT_THRESHOLDS: Thresholds = {
  keptShareAtLeast: 0.8,
  surpriseRatioAtMost: 0.2,
  pullInRatioAtMost: 0.2,
  planShareAtLeast: 0.8,
  estimateAccuracyAtLeast: 0.8,
  estimateAccuracyAtMost: 0.95,
  velocityGrowthFirstMark: 2.4,
  velocityGrowthLongRangeMark: 5,
};

/** Shares that can never exceed 1, so that a threshold above it is most likely a percentage mistyped. */
const SHARES: readonly string[] = [
  'keptShareAtLeast',
  'planShareAtLeast',
  'estimateAccuracyAtLeast',
  'estimateAccuracyAtMost',
] satisfies readonly (keyof Thresholds)[];

/** The highest value that a threshold may have; the lowest is 0. */
export function largestThreshold(name: string): 1 | 100 {
  return SHARES.includes(name) ? 1 : 100;
}

export type ThresholdsProblem =
  | { readonly code: 'threshold-out-of-range'; readonly name: string; readonly most: number }
  | { readonly code: 'accuracy-crossed' }
  | { readonly code: 'growth-marks-crossed' };

/** The reason why a team can't have these thresholds together, or undefined when it can. */
export function whyNotThresholds(thresholds: Thresholds): ThresholdsProblem | undefined {
  for (const [name, value] of Object.entries(thresholds)) {
    const most = largestThreshold(name);
    if (!Number.isFinite(value) || value < 0 || value > most) {
      return { code: 'threshold-out-of-range', name, most };
    }
  }
  if (thresholds.estimateAccuracyAtLeast > thresholds.estimateAccuracyAtMost) {
    return { code: 'accuracy-crossed' };
  }
  if (thresholds.velocityGrowthFirstMark > thresholds.velocityGrowthLongRangeMark) {
    return { code: 'growth-marks-crossed' };
  }
  return undefined;
}
