/** What the ratios are called in charts. */
import type { RatioName } from '../app/advice.ts';

export const ratioNames: Readonly<Record<RatioName, string>> = {
  keptShare: 'Kept share',
  pullInRatio: 'Pull-in ratio',
  surpriseRatio: 'Surprise ratio',
  planShare: 'Plan share',
  estimateAccuracy: 'Estimate accuracy',
  onScaleShare: 'On-scale share',
  finishShare: 'Finish share',
  velocityGrowth: 'Velocity growth',
};
