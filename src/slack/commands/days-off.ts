/** Saying days off in advance, and on which weekdays one works. */
import type { DaysOffInput } from '../../app/days-off/days-off-form.ts';
import { teamContext } from '../form-contexts.ts';
import {
  DAYS_OFF_FIELDS,
  daysOffFormView,
  daysOffSaidMessage,
  daysOffSavedMessage,
  weekdaysSaidMessage,
} from '../views/days-off-views.ts';
import { type Command, command, readHeld, showFirstForm } from './command.ts';

export const off: Command = command({
  word: 'off',
  who: 'member',
  run: async (context, caller, words) => {
    if (words === '') return showFirstForm(off, context, caller);
    const { actor, place, tell } = caller;
    await tell(daysOffSaidMessage(await context.useCases.sayDaysOff(actor, { place, words })));
  },
  forms: [
    {
      name: 'days-off',
      fields: DAYS_OFF_FIELDS,
      make: async ({ useCases }, { actor, replyTo }, place) =>
        daysOffFormView(await useCases.daysOffForm(actor, place), replyTo),
      submit: async (useCases, { actor, fields, context }) => {
        const { teamId } = readHeld(teamContext, context);
        const asksWeekdays = fields.blockIds.includes(DAYS_OFF_FIELDS.weekdays);
        const saved = await useCases.saveDaysOff(actor, {
          teamId,
          whose: fields.text(DAYS_OFF_FIELDS.whose) === 'team' ? 'team' : 'own',
          from: fields.text(DAYS_OFF_FIELDS.from),
          to: fields.text(DAYS_OFF_FIELDS.to),
          isHalf: fields.choices(DAYS_OFF_FIELDS.isHalf).length > 0,
          takeBack: fields.choices(DAYS_OFF_FIELDS.takeBack).flatMap(takenBack),
          weekdays: asksWeekdays ? fields.choices(DAYS_OFF_FIELDS.weekdays).map(Number) : undefined,
        });
        return { next: 'close', say: daysOffSavedMessage(saved), isOnHome: true };
      },
    },
  ],
});

/** What the form's list calls a span. */
function takenBack(value: string): DaysOffInput['takeBack'] {
  const [whose, from, to] =
    /^(own|team):(\d{4}-\d{2}-\d{2}):(\d{4}-\d{2}-\d{2})$/.exec(value)?.slice(1) ?? [];
  if (whose === undefined || from === undefined || to === undefined) return [];
  return [{ whose: whose === 'team' ? 'team' : 'own', span: { from, to } }];
}

export const works = command({
  word: 'works',
  who: 'member',
  run: async ({ useCases }, { actor, place, tell }, words) =>
    tell(weekdaysSaidMessage(await useCases.sayWeekdays(actor, { place, words }))),
});
