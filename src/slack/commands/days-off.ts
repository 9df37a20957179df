/** Saying days off in advance, and on which weekdays one works. */
import { daysOffSaidMessage, weekdaysSaidMessage } from '../views/days-off-views.ts';
import { command } from './command.ts';

export const off = command({
  word: 'off',
  who: 'member',
  run: async ({ useCases }, { actor, place, tell }, words) =>
    tell(daysOffSaidMessage(await useCases.sayDaysOff(actor, { place, words }))),
});

export const works = command({
  word: 'works',
  who: 'member',
  run: async ({ useCases }, { actor, place, tell }, words) =>
    tell(weekdaysSaidMessage(await useCases.sayWeekdays(actor, { place, words }))),
});
