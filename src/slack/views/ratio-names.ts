/** What the ratios are called in sentences. */
import type { RatioName } from '../../app/advice.ts';

export const RATIO_NAMES: Readonly<Record<RatioName, string>> = {
  keptShare: 'kept share',
  surpriseRatio: 'surprise ratio',
  pullInRatio: 'pull-in ratio',
  planShare: 'plan share',
  estimateAccuracy: 'estimate accuracy',
  onScaleShare: 'on-scale share',
  finishShare: 'finish share',
  velocityGrowth: 'velocity growth',
};
