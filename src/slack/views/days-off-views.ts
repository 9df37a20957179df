/** What confirms days off and weekdays. */
import type { DaysOffSaid } from '../../app/days-off/say-days-off.ts';
import type { WeekdaysSaid } from '../../app/days-off/say-weekdays.ts';
import { daysOffSaidSentence, weekdaysSaidSentence } from '../../words/days-off.ts';
import { section } from './block-builders.ts';
import { type MessageView, messageView } from './message-view.ts';

export function daysOffSaidMessage(said: DaysOffSaid): MessageView {
  return messageView([section(daysOffSaidSentence(said))]);
}

export function weekdaysSaidMessage(said: WeekdaysSaid): MessageView {
  return messageView([section(weekdaysSaidSentence(said))]);
}
