/** Saying days off in advance, and on which weekdays one works. */
import type { ModalView } from '@slack/types';
import type { DaysOffInput, Whose } from '../../app/days-off/days-off-form.ts';
import type { Actor } from '../../app/team/team.ts';
import type { UseCases } from '../../app/use-cases.ts';
import type { SentFile } from '../files/download-file.ts';
import { daysOffPreviewContext, teamContext } from '../form-contexts.ts';
import {
  DAYS_OFF_FIELDS,
  DAYS_OFF_PREVIEW_FIELDS,
  daysOffFormView,
  daysOffPreviewView,
  daysOffSaidMessage,
  daysOffSavedMessage,
  weekdaysSaidMessage,
} from '../views/days-off-views.ts';
import { type Command, command, type FormTools, readHeld, showFirstForm } from './command.ts';

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
      submit: async (useCases, { actor, fields, context }, { download }) => {
        const { teamId, replyTo } = readHeld(teamContext, context);
        const whose = fields.text(DAYS_OFF_FIELDS.whose) === 'team' ? 'team' : 'own';
        const [file] = fields.files(DAYS_OFF_FIELDS.file);
        // Before anything is saved: a file that can't be read leaves the form as it was.
        const preview =
          file && (await previewed(useCases, actor, { teamId, whose, file, download, replyTo }));
        const asksWeekdays = fields.blockIds.includes(DAYS_OFF_FIELDS.weekdays);
        const saved = await useCases.saveDaysOff(actor, {
          teamId,
          whose,
          from: fields.text(DAYS_OFF_FIELDS.from),
          to: fields.text(DAYS_OFF_FIELDS.to),
          isHalf: fields.choices(DAYS_OFF_FIELDS.isHalf).length > 0,
          takeBack: fields.choices(DAYS_OFF_FIELDS.takeBack).flatMap(takenBack),
          weekdays: asksWeekdays ? fields.choices(DAYS_OFF_FIELDS.weekdays).map(Number) : undefined,
        });
        if (preview) return { next: 'show', how: 'in place', view: preview };
        return { next: 'close', say: daysOffSavedMessage(saved), isOnHome: true };
      },
    },
    {
      name: 'days-off-preview',
      fields: DAYS_OFF_PREVIEW_FIELDS,
      cost: 'heavy',
      submit: async (useCases, { actor, fields, context }, { download }) => {
        const { teamId, whose, file, seen, replyTo } = readHeld(daysOffPreviewContext, context);
        const text = await download({ ...file, field: DAYS_OFF_FIELDS.file, sizeBytes: 0, url: undefined });
        const outcome = await useCases.importDaysOff(actor, {
          teamId,
          whose,
          file: { fileName: file.name, text },
          takesFree: fields.choices(DAYS_OFF_PREVIEW_FIELDS.takesFree).length > 0,
          seen,
        });
        return outcome.kind === 'saved'
          ? { next: 'close', say: daysOffSavedMessage(outcome.saved), isOnHome: true }
          : { next: 'show', how: 'in place', view: daysOffPreviewView(outcome.preview, file, replyTo) };
      },
    },
  ],
});

interface ChosenFile {
  readonly teamId: string;
  readonly whose: Whose;
  readonly file: SentFile;
  readonly download: FormTools['download'];
  readonly replyTo: string | undefined;
}

async function previewed(
  useCases: UseCases,
  actor: Actor,
  { teamId, whose, file, download, replyTo }: ChosenFile,
): Promise<ModalView> {
  const kept = { id: file.id, name: file.name };
  const text = await download(file);
  const outcome = await useCases.importDaysOff(actor, {
    teamId,
    whose,
    file: { fileName: kept.name, text },
    takesFree: false,
    seen: undefined,
  });
  if (outcome.kind === 'saved') throw new TypeError('days that nobody has seen were saved');
  return daysOffPreviewView(outcome.preview, kept, replyTo);
}

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
