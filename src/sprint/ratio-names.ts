/** What the ratios are called, for the middle of a sentence. */
import type { SprintRatios } from './sprint-ratios.ts';

export const RATIO_NAMES: Readonly<Record<keyof SprintRatios, string>> = {
  keptShare: 'kept share',
  pullInRatio: 'pull-in ratio',
  surpriseRatio: 'surprise ratio',
  planShare: 'plan share',
  estimateAccuracy: 'estimate accuracy',
  onScaleShare: 'on-scale share',
  finishShare: 'finish share',
  velocityGrowth: 'velocity growth',
};

/** The same for a heading or the beginning of a line. */
export function ratioTitle(ratio: keyof SprintRatios): string {
  const name = RATIO_NAMES[ratio];
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}`;
}
