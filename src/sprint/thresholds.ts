/** The lines that a ratio may cross, each adjustable by the team. Shares and ratios: 1 means 100%. */

/**
 * Each with its usual value, which is common practice without a published source, and the highest that it may have; the
 * lowest is 0. A share can never exceed 1, so that a threshold above it is most likely a percentage mistyped.
 */
export const THRESHOLDS = {
  keptShareAtLeast: { usual: 0.8, most: 1 },
  surpriseRatioAtMost: { usual: 0.2, most: 100 },
  pullInRatioAtMost: { usual: 0.2, most: 100 },
  planShareAtLeast: { usual: 0.8, most: 1 },
  estimateAccuracyAtLeast: { usual: 0.8, most: 1 },
  estimateAccuracyAtMost: { usual: 0.95, most: 1 },
  /** At the first mark most teams can steer themselves. */
  velocityGrowthFirstMark: { usual: 2.4, most: 100 },
  velocityGrowthLongRangeMark: { usual: 5, most: 100 },
};

export type ThresholdName = keyof typeof THRESHOLDS;
export const THRESHOLD_NAMES = Object.keys(THRESHOLDS) as readonly ThresholdName[];

export type Thresholds = { readonly [Name in ThresholdName]: number };

export const DEFAULT_THRESHOLDS = thresholdsFrom((name) => THRESHOLDS[name].usual);

export function thresholdsFrom(make: (name: ThresholdName) => number): Thresholds {
  return Object.fromEntries(THRESHOLD_NAMES.map((name) => [name, make(name)])) as Thresholds;
}

export type ThresholdsProblem =
  | { readonly code: 'threshold-out-of-range'; readonly name: string; readonly most: number }
  | { readonly code: 'accuracy-crossed' }
  | { readonly code: 'growth-marks-crossed' };

/** The reason why a team can't have these thresholds together, or undefined when it can. */
export function whyNotThresholds(thresholds: Thresholds): ThresholdsProblem | undefined {
  for (const name of THRESHOLD_NAMES) {
    const value = thresholds[name];
    const { most } = THRESHOLDS[name];
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
