/** Confirms the baseline sprint, and says what changes with it. */
import type { BaselineChoice, BaselineNamed } from '../../app/history/name-baseline.ts';
import { formatPercent } from '../../sprint/percent.ts';
import { formatPointsWithUnit } from '../../sprint/points.ts';
import { typed } from '../../words/typed-text.ts';
import { section } from './block-builders.ts';
import { datedDay } from './closed-sprint-words.ts';
import { type MessageView, messageView } from './message-view.ts';

export function baselineNamedMessage({
  team,
  baseline,
  isFirst,
  before,
  latest,
}: BaselineNamed): MessageView {
  const which = `${sprintWords(baseline)}${isFirst ? ', the first sprint with a velocity' : ''}`;
  if (!before) {
    return messageView([
      section(`Velocity growth of ${typed(team.name)} is measured by ${which}, as it was before.`),
    ]);
  }
  const change = latest
    ? ` For ${typed(latest.name)}, the latest, it is then ${formatPercent(latest.growthAfter)} instead of ${formatPercent(latest.growthBefore)}.`
    : '';
  return messageView([
    section(
      `Velocity growth of ${typed(team.name)} is now measured by ${which}. Until now it was measured by ${sprintWords(before)}.${change}`,
    ),
    section(
      'Verdicts that were posted keep their numbers. The next ones, and the history, use the new baseline.',
    ),
  ]);
}

function sprintWords({ name, endsOn, velocityPoints }: BaselineChoice): string {
  return `${typed(name)} (ended ${datedDay(endsOn)}, ${formatPointsWithUnit(velocityPoints)} finished)`;
}
