/** The verdict in sentences. They speak of the team's work and of nobody in it. */
import type { VerdictContent } from '../app/closing/verdict-content.ts';
import type { SprintSummary } from '../sprint/summary.ts';
import { isDefined } from '../sprint/undefined-value.ts';
import type { FailedTest } from '../sprint/verdict.ts';
import { against, percent } from './amounts.ts';
import { say } from './say.ts';

/** `kept. Finished 23 of 25 points committed (92%).`, as plain text. */
export function verdictSentence({ verdict, totals, ratios }: SprintSummary): string {
  if (verdict.verdict === 'no plan' || !isDefined(ratios.keptShare)) {
    return say('verdict-no-plan', { finished: totals.velocityPoints });
  }
  const failed = verdict.failedTests.find(({ id }) => id === 'keptShare');
  return say('verdict-sentence', {
    verdict: verdict.verdict,
    finished: totals.committedFinishedPoints,
    committed: totals.commitmentPoints,
    share: failed ? against(failed.value, failed.threshold).value : percent(ratios.keptShare),
  });
}

/** `The kept share is 60%, 20 percentage points below its floor of 80%.`, as plain text. */
export function failedTestSentence({ id, value, threshold }: FailedTest): string {
  return say('verdict-failed', { test: id, ...against(value, threshold) });
}

/** Whether the numbers are the last word; undefined when the sprint was closed once and for all. */
export function reopenedSentence({ reopened, version }: VerdictContent): string | undefined {
  if (reopened === 'open') return say('verdict-open-again');
  return reopened === 'closed-again' ? say('verdict-corrected', { version }) : undefined;
}
