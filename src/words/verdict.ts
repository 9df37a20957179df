/** The verdict in sentences. They speak of the team's work and of nobody in it. */
import type { VerdictContent } from '../app/closing/verdict-content.ts';
import type { SprintSummary } from '../sprint/summary.ts';
import { isDefined, type Ratio } from '../sprint/undefined-value.ts';
import { type AgainstText, against, percent } from './amounts.ts';
import { say } from './say.ts';

/** `kept. Finished 23 of 25 points committed (92%).`, as plain text. */
export function verdictSentence({ verdict, totals, ratios }: SprintSummary): string {
  if (verdict.verdict === 'no plan' || !isDefined(ratios.keptShare)) {
    return say('verdict-no-plan', { finished: totals.velocityPoints });
  }
  const keptShare = verdict.failedTests.find(({ id }) => id === 'keptShare');
  const finished = {
    finished: totals.committedFinishedPoints,
    committed: totals.commitmentPoints,
    share: keptShare ? against(keptShare.value, keptShare.threshold).value : percent(ratios.keptShare),
  };
  const [first, second] = verdict.failedTests;
  if (!first) return say('verdict-kept', finished);
  const failed = second ? 'both' : first.id;
  return say('verdict-missed', { ...finished, failed, surprise: totals.surprisePoints });
}

/** `Sprint goal met: Skippers see the tide`; undefined when there is no goal, and nobody has said anything of it. */
export function goalSentence({ goalOutcome, sprint: { goal } }: VerdictContent): string | undefined {
  const { met, note = '' } = goalOutcome ?? {};
  if (goal.trim() === '' && met === undefined) return undefined;
  const words =
    goal.trim() === '' && met !== undefined
      ? say('verdict-goal-unnamed', { met })
      : say('verdict-goal', { met: met ?? 'unsaid', goal });
  return note === '' ? words : `${words} ${say('verdict-goal-note', { note })}`;
}

/** Whether the numbers are the last word; undefined when the sprint was closed once and for all. */
export function reopenedSentence({ reopened, version }: VerdictContent): string | undefined {
  if (reopened === 'open') return say('verdict-open-again');
  return reopened === 'closed-again' ? say('verdict-corrected', { version }) : undefined;
}

/** What was finished, surprise, what was pulled in, velocity: a line each with its limit, as plain text. */
export function fourNumbers({ summary, thresholds }: VerdictContent): string[] {
  const { totals, ratios, verdict } = summary;
  const missed = verdict.failedTests.find(({ id }) => id === 'keptShare');
  const finished: Judged | undefined = isDefined(ratios.keptShare)
    ? {
        is: missed ? 'beyond' : 'within',
        ...against(ratios.keptShare, missed?.threshold ?? thresholds.keptShareAtLeast),
      }
    : undefined;
  const surprise = belowCeiling(ratios.surpriseRatio, thresholds.surpriseRatioAtMost);
  const pulledIn = belowCeiling(ratios.pullInRatio, thresholds.pullInRatioAtMost);
  const {
    committedFinishedPoints,
    commitmentPoints,
    surprisePoints,
    driftPoints,
    pulledInPoints,
    velocityPoints,
  } = totals;
  return [
    finished
      ? say('verdict-finished', {
          ...finished,
          finished: committedFinishedPoints,
          committed: commitmentPoints,
        })
      : say('verdict-finished-no-plan', { finished: velocityPoints }),
    surprise
      ? say('verdict-surprise', { ...surprise, points: surprisePoints, drift: driftPoints })
      : say('verdict-surprise-no-plan', { points: surprisePoints, drift: driftPoints }),
    pulledIn
      ? say('verdict-pulled-in', { ...pulledIn, points: pulledInPoints })
      : say('verdict-pulled-in-no-plan', { points: pulledInPoints }),
    velocityLine(summary),
  ];
}

function velocityLine({ totals, ratios, baseline, growthPerMemberDay: growth }: SprintSummary): string {
  const velocity = say('verdict-velocity', {
    points: totals.velocityPoints,
    value: isDefined(ratios.velocityGrowth) ? percent(ratios.velocityGrowth) : '',
    baseline: typeof baseline === 'object' ? 'named' : (baseline ?? 'none'),
    baselineName: typeof baseline === 'object' ? baseline.name : '',
  });
  return growth === undefined ? velocity : say('verdict-velocity-per-member-day', { velocity, growth });
}

/** A number beside its limit. */
type Judged = AgainstText & { readonly is: 'within' | 'beyond' };

function belowCeiling(ratio: Ratio, ceiling: number): Judged | undefined {
  if (!isDefined(ratio)) return undefined;
  return { is: ratio > ceiling ? 'beyond' : 'within', ...against(ratio, ceiling) };
}
