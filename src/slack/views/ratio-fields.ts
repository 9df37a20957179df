/** The ratios of a sprint as short facts: the number first, then what it is made of. */

import { formatPoints, formatPointsWithUnit } from '../../sprint/points.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import type { Ratio } from '../../sprint/undefined-value.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import type { FailedTest } from '../../sprint/verdict.ts';
import { against } from '../../words/amounts.ts';
import { ratioText } from '../../words/undefined.ts';
import { bold } from './block-builders.ts';
import { counted } from './sprint-words.ts';

/** One field for each ratio, in a fixed order. */
export function ratioFields(summary: SprintSummary): string[] {
  const { totals, ratios, verdict } = summary;
  const points = formatPoints;
  const exact = (id: FailedTest['id']): string | undefined => {
    const failed = verdict.failedTests.find((test) => test.id === id);
    return failed && against(failed.value, failed.threshold).value;
  };
  return [
    field(
      'Kept share',
      ratios.keptShare,
      `${points(totals.committedFinishedPoints)} of ${formatPointsWithUnit(totals.commitmentPoints)} promised`,
      exact('keptShare'),
    ),
    field(
      'Surprise ratio',
      ratios.surpriseRatio,
      `${formatPointsWithUnit(totals.surprisePoints)} of surprise work`,
      exact('surpriseRatio'),
    ),
    field('Pull-in ratio', ratios.pullInRatio, `${formatPointsWithUnit(totals.pulledInPoints)} pulled in`),
    field(
      'Plan share',
      ratios.planShare,
      `${points(totals.commitmentPoints)} of ${formatPointsWithUnit(totals.loadPoints)} of load were planned`,
    ),
    field(
      'Estimate accuracy',
      ratios.estimateAccuracy,
      `estimates off by ${formatPointsWithUnit(totals.estimateErrorPoints)}`,
    ),
    field(
      'On-scale share',
      ratios.onScaleShare,
      `${totals.onScaleCards} of ${counted(totals.finishedCards, 'finished card')} as large as estimated`,
    ),
    field(
      'Finish share',
      ratios.finishShare,
      `${formatPointsWithUnit(totals.velocityPoints)} finished, ${points(totals.workedPoints)} worked`,
    ),
    field('Velocity growth', ratios.velocityGrowth, 'velocity beside the baseline sprint'),
  ];
}

function field(name: string, ratio: Ratio, madeOf: string, exactText?: string): string {
  const heading = bold(name);
  if (!isDefined(ratio)) return `${heading}\n${ratioText(ratio)}`;
  return `${heading}\n${exactText ?? ratioText(ratio)} (${madeOf})`;
}

/** `Load 30 points: 25 committed, 3 pulled in, 2 surprise work. Velocity 23 points.` */
export function loadSentence({ totals }: SprintSummary): string {
  const parts = [
    `${formatPoints(totals.commitmentPoints)} committed`,
    `${formatPoints(totals.pulledInPoints)} pulled in`,
    `${formatPoints(totals.surprisePoints)} surprise work`,
  ];
  return `Load ${formatPointsWithUnit(totals.loadPoints)}: ${parts.join(', ')}. Velocity ${formatPointsWithUnit(totals.velocityPoints)}.`;
}
