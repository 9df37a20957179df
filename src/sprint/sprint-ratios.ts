/** All ratios of a sprint at once. */
import { estimateAccuracy } from './ratios/estimate-accuracy.ts';
import { finishShare } from './ratios/finish-share.ts';
import { keptShare } from './ratios/kept-share.ts';
import { onScaleShare } from './ratios/on-scale-share.ts';
import { planShare } from './ratios/plan-share.ts';
import { pullInRatio } from './ratios/pull-in-ratio.ts';
import { surpriseRatio } from './ratios/surprise-ratio.ts';
import { velocityGrowth } from './ratios/velocity-growth.ts';
import type { SprintTotals } from './totals.ts';
import type { Ratio } from './undefined-value.ts';

export interface SprintRatios {
  readonly keptShare: Ratio;
  readonly pullInRatio: Ratio;
  readonly surpriseRatio: Ratio;
  readonly planShare: Ratio;
  readonly estimateAccuracy: Ratio;
  readonly onScaleShare: Ratio;
  readonly finishShare: Ratio;
  readonly velocityGrowth: Ratio;
}

export type RatioId = keyof SprintRatios;

/** In the order in which they are shown: the verdict's tests, how planning went, estimates, flow, growth. */
export const RATIO_IDS: readonly RatioId[] = [
  'keptShare',
  'surpriseRatio',
  'pullInRatio',
  'planShare',
  'estimateAccuracy',
  'onScaleShare',
  'finishShare',
  'velocityGrowth',
];

/** @param baselineVelocityPoints see `velocityGrowth`. */
export function sprintRatios(totals: SprintTotals, baselineVelocityPoints: number | undefined): SprintRatios {
  return {
    keptShare: keptShare(totals),
    pullInRatio: pullInRatio(totals),
    surpriseRatio: surpriseRatio(totals),
    planShare: planShare(totals),
    estimateAccuracy: estimateAccuracy(totals),
    onScaleShare: onScaleShare(totals),
    finishShare: finishShare(totals),
    velocityGrowth: velocityGrowth(totals.velocityPoints, baselineVelocityPoints),
  };
}
