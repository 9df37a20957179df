/** The ratios of a sprint as short facts: the number first, then what it is made of. */
import { RATIO_IDS, type RatioId } from '../sprint/sprint-ratios.ts';
import type { SprintSummary } from '../sprint/summary.ts';
import { isDefined } from '../sprint/undefined-value.ts';
import { against } from './amounts.ts';
import { say } from './say.ts';
import { ratioText } from './undefined.ts';

export interface RatioFact {
  readonly title: string;
  /** `92% (23 of 25 points committed)`, or why there is no such ratio. */
  readonly fact: string;
}

/** One for each ratio, as plain text. */
export function ratioFacts(summary: SprintSummary): RatioFact[] {
  return RATIO_IDS.map((ratio) => ({ title: say('ratio-title', { ratio }), fact: fact(ratio, summary) }));
}

function fact(id: RatioId, { ratios, verdict, totals }: SprintSummary): string {
  const ratio = ratios[id];
  if (!isDefined(ratio)) return ratioText(ratio);
  const failed = verdict.failedTests.find((test) => test.id === id);
  const value = failed ? against(failed.value, failed.threshold).value : ratioText(ratio);
  return say('ratio-fact', { value, madeOf: madeOf(id, totals) });
}

function madeOf(id: RatioId, totals: SprintSummary['totals']): string {
  switch (id) {
    case 'keptShare':
      return say(`ratio-of-${id}`, {
        finished: totals.committedFinishedPoints,
        committed: totals.commitmentPoints,
      });
    case 'surpriseRatio':
      return say(`ratio-of-${id}`, { surprise: totals.surprisePoints });
    case 'pullInRatio':
      return say(`ratio-of-${id}`, { pulledIn: totals.pulledInPoints });
    case 'planShare':
      return say(`ratio-of-${id}`, { committed: totals.commitmentPoints, load: totals.loadPoints });
    case 'estimateAccuracy':
      return say(`ratio-of-${id}`, { off: totals.estimateErrorPoints });
    case 'onScaleShare':
      return say(`ratio-of-${id}`, { onScale: totals.onScaleCards, cards: totals.finishedCards });
    case 'finishShare':
      return say(`ratio-of-${id}`, { finished: totals.velocityPoints, worked: totals.workedPoints });
    case 'velocityGrowth':
      return say(`ratio-of-${id}`);
  }
}

/** `Load 30 points: 25 committed, 3 pulled in, 2 surprise work. Velocity 23 points.`, as plain text. */
export function loadSentence({ totals }: SprintSummary): string {
  return say('ratio-load', {
    load: totals.loadPoints,
    committed: totals.commitmentPoints,
    pulledIn: totals.pulledInPoints,
    surprise: totals.surprisePoints,
    velocity: totals.velocityPoints,
  });
}
