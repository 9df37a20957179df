/** The verdict in sentences. They speak of the team's work and of nobody in it. */
import type { VerdictContent } from '../../app/posting/message-content.ts';
import { formatPercent } from '../../sprint/percent.ts';
import { formatPoints, formatPointsWithUnit } from '../../sprint/points.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import type { FailedTest } from '../../sprint/verdict.ts';
import { against } from '../../words/amounts.ts';

/** `kept. 23 of 25 points promised were finished (92%).`, as plain text. */
export function verdictSentence({ verdict, totals, ratios }: SprintSummary): string {
  if (verdict.verdict === 'no plan' || !isDefined(ratios.keptShare)) {
    return `no plan. Nothing was promised; ${finishedWords(totals.velocityPoints)}.`;
  }
  const failed = verdict.failedTests.find(({ id }) => id === 'keptShare');
  const share = failed ? against(failed.value, failed.threshold).value : formatPercent(ratios.keptShare);
  const of = `${formatPoints(totals.committedFinishedPoints)} of ${formatPointsWithUnit(totals.commitmentPoints)}`;
  return `${verdict.verdict}. ${of} promised ${totals.committedFinishedPoints === 1 ? 'was' : 'were'} finished (${share}).`;
}

function finishedWords(points: number): string {
  return `${formatPointsWithUnit(points)} ${points === 1 ? 'was' : 'were'} finished`;
}

const TESTS: Readonly<Record<FailedTest['id'], { readonly name: string; readonly side: string }>> = {
  keptShare: { name: 'The kept share', side: 'below its floor' },
  surpriseRatio: { name: 'The surprise ratio', side: 'above its ceiling' },
};

/** `The kept share is 60%, 20 percentage points below its floor of 80%.` */
export function failedTestSentence({ id, value, threshold }: FailedTest): string {
  const text = against(value, threshold);
  const { name, side } = TESTS[id];
  return `${name} is ${text.value}, ${text.distance} ${side} of ${text.threshold}.`;
}

/** Whether the numbers are the last word; empty when the sprint was closed once and for all. */
export function reopenedSentence({ reopened, version }: VerdictContent): string {
  if (reopened === 'open') return 'It is open again for corrections, so these numbers may still change.';
  if (reopened === 'closed-again')
    return `It was reopened for corrections. These are the corrected numbers (version ${version}).`;
  return '';
}
