/** Confirms a recorded value, and says how it has grown beside velocity, and what that does not say. */
import type { ValueRecorded } from '../../app/history/record-value.ts';
import { formatPercent } from '../../sprint/percent.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import { typed } from '../../words/typed-text.ts';
import { reasonSentence } from '../../words/undefined.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import { actions, button, context, section } from './block-builders.ts';
import { datedDay, formatValue } from './closed-sprint-words.ts';
import { type MessageView, messageView } from './message-view.ts';

const NOT_SAID =
  'What this does not say: value often comes sprints after the work, and from much besides the team’s work. That both grow does not mean that one made the other grow.';

export function valueRecordedMessage(recorded: ValueRecorded): MessageView {
  const value = encodeValue({ channelId: recorded.team.channelId });
  return messageView([
    section(recordedWords(recorded)),
    section(growthWords(recorded)),
    context(NOT_SAID),
    actions([
      button('Record another value', { actionId: ACTIONS.openValueForm, value }),
      button('History', { actionId: ACTIONS.showHistory, value }),
    ]),
  ]);
}

function recordedWords({ sprint, value, previousValue }: ValueRecorded): string {
  const name = `${typed(sprint.name)} (ended ${datedDay(sprint.endsOn)})`;
  if (previousValue === value) return `${name} has the value ${formatValue(value)} already; nothing changed.`;
  const before =
    previousValue === undefined
      ? ''
      : ` It takes the place of ${formatValue(previousValue)}, which is kept on record.`;
  return `Recorded for ${name}: ${formatValue(value)}.${before}`;
}

function growthWords({ sprint, value, growth, measuredBy }: ValueRecorded): string {
  if (!measuredBy) {
    return 'Growth can be told once a closed sprint in which points were finished has a value above 0.';
  }
  const { valueGrowth, velocityGrowth, valuePerPointGrowth } = growth;
  if (sprint.sprintId === measuredBy.sprintId) {
    return 'This is the sprint that the growth of value is measured by. Record the sprints after it, and you see how value grows beside velocity.';
  }
  if (!isDefined(valueGrowth))
    return `For this sprint there is no growth. ${reasonSentence(valueGrowth.undefined)}`;
  if (!isDefined(velocityGrowth))
    return `For this sprint there is no growth. ${reasonSentence(velocityGrowth.undefined)}`;
  const both = `Measured by ${typed(measuredBy.name)}, the value stands at ${formatPercent(valueGrowth)} and velocity at ${formatPercent(velocityGrowth)}`;
  if (!isDefined(valuePerPointGrowth)) return `${both}. ${reasonSentence(valuePerPointGrowth.undefined)}`;
  if (value <= 0) return `${both}.`;
  return `${both}: a point brought ${formatPercent(valuePerPointGrowth)} of what it brought then.`;
}
