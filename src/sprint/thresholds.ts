/** The lines that a ratio may cross, each adjustable by the team. Shares and ratios: 1 means 100%. */

interface Threshold {
  /** Common practice without a published source; undefined: off until a team sets it. */
  readonly usual: number | undefined;
  /** The lowest is 0. A share can never exceed 1, so that a threshold above it is most likely a percentage mistyped. */
  readonly most: number;
}

export const THRESHOLDS = {
  keptShareAtLeast: { usual: 0.8, most: 1 },
  surpriseRatioAtMost: { usual: 0.2, most: 100 },
  pullInRatioAtMost: { usual: 0.2, most: 100 },
  planShareAtLeast: { usual: 0.8, most: 1 },
  estimateAccuracyAtLeast: { usual: 0.8, most: 1 },
  estimateAccuracyAtMost: { usual: 0.95, most: 1 },
  /** A team that knows why its velocity grows may set marks for it; points that only stretch would reach them too. */
  velocityGrowthFirstMark: { usual: undefined, most: 100 },
  velocityGrowthLongRangeMark: { usual: undefined, most: 100 },
} as const satisfies Record<string, Threshold>;

export type ThresholdName = keyof typeof THRESHOLDS;
export const THRESHOLD_NAMES = Object.keys(THRESHOLDS) as readonly ThresholdName[];

export type Thresholds = {
  readonly [Name in ThresholdName]: (typeof THRESHOLDS)[Name]['usual'] extends number
    ? number
    : number | undefined;
};

export const DEFAULT_THRESHOLDS = thresholdsFrom((name) => THRESHOLDS[name].usual);

/** @param make undefined for one that is off */
export function thresholdsFrom(make: (name: ThresholdName) => number | undefined): Thresholds {
  return Object.fromEntries(THRESHOLD_NAMES.map((name) => [name, make(name)])) as Thresholds;
}

export function canBeOff(name: ThresholdName): boolean {
  return THRESHOLDS[name].usual === undefined;
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
    if (value === undefined && canBeOff(name)) continue;
    if (value === undefined || !Number.isFinite(value) || value < 0 || value > most) {
      return { code: 'threshold-out-of-range', name, most };
    }
  }
  if (thresholds.estimateAccuracyAtLeast > thresholds.estimateAccuracyAtMost) {
    return { code: 'accuracy-crossed' };
  }
  const { velocityGrowthFirstMark: first = 0, velocityGrowthLongRangeMark: longRange = first } = thresholds;
  if (first > longRange) {
    return { code: 'growth-marks-crossed' };
  }
  return undefined;
}
