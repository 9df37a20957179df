/** Saying days off in advance, and on which weekdays one works. */
import type { ModalView } from '@slack/types';
import type { DaysOffInput, Whose } from '../../app/days-off/days-off-form.ts';
import type { DaysOffImportInput } from '../../app/days-off/import-days-off.ts';
import type { Actor } from '../../app/team/team.ts';
import type { UseCases } from '../../app/use-cases.ts';
import { encodeValue } from '../button-values.ts';
import { sentBefore } from '../files/download-file.ts';
import { daysOffPreviewContext, teamContext } from '../form-contexts.ts';
import { openFormAction } from '../ids.ts';
import type { ListenerContext } from '../listeners/listener-context.ts';
import {
  DAYS_OFF_FIELDS,
  DAYS_OFF_PREVIEW_FIELDS,
  daysOffFormView,
  daysOffPreviewView,
  daysOffSaidMessage,
  daysOffSavedMessage,
  type PreviewSource,
  weekdaysSaidMessage,
} from '../views/days-off-views.ts';
import { type Caller, type Command, command, picked, readHeld, showFirstForm, showForm } from './command.ts';

export const off: Command = command({
  word: 'off',
  who: 'member',
  run: async (context, caller, words) => {
    if (words === '') return showFirstForm(off, context, caller);
    const holidaysOf = HOLIDAYS.exec(words)?.[1]?.trim();
    if (holidaysOf) return showHolidays(context, caller, holidaysOf);
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
        const holidaysOf = fields.text(DAYS_OFF_FIELDS.holidays).trim();
        const preview = file
          ? await previewed(useCases, actor, await download(file), {
              teamId,
              whose,
              source: { file: { id: file.id, name: file.name } },
              replyTo,
            })
          : holidaysOf === ''
            ? undefined
            : await previewedHolidays(useCases, actor, holidaysOf, { teamId, replyTo });
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
      files: picked(DAYS_OFF_FIELDS.file),
    },
    {
      name: 'days-off-preview',
      fields: DAYS_OFF_PREVIEW_FIELDS,
      cost: 'heavy',
      files: ({ context }) => {
        const { source } = readHeld(daysOffPreviewContext, context);
        return 'file' in source ? [sentBefore(DAYS_OFF_FIELDS.file, source.file)] : undefined;
      },
      submit: async (useCases, { actor, fields, context }, { download }) => {
        const { teamId, whose, source, seen, replyTo } = readHeld(daysOffPreviewContext, context);
        const outcome = await useCases.importDaysOff(actor, {
          teamId,
          whose,
          source: 'file' in source ? await download(sentBefore(DAYS_OFF_FIELDS.file, source.file)) : source,
          takesFree: fields.choices(DAYS_OFF_PREVIEW_FIELDS.takesFree).length > 0,
          seen,
        });
        return outcome.kind === 'saved'
          ? { next: 'close', say: daysOffSavedMessage(outcome.saved), isOnHome: true }
          : { next: 'show', how: 'in place', view: daysOffPreviewView(outcome.preview, source, replyTo) };
      },
    },
  ],
});

/** `team holidays DE-BY`, `holidays of France` */
const HOLIDAYS = /^(?:the )?(?:team )?(?:public )?holidays?(?: of| in)? (.+)$/i;

async function showHolidays(context: ListenerContext, caller: Caller, holidaysOf: string): Promise<void> {
  const { useCases } = context;
  const { actor, place, replyTo } = caller;
  const make = async (): Promise<ModalView> => {
    const { team } = await useCases.daysOffForm(actor, place);
    return previewedHolidays(useCases, actor, holidaysOf, { teamId: team.id, replyTo });
  };
  await showForm(context, caller, make, () => ({
    actionId: openFormAction('days-off'),
    value: encodeValue({ channelId: place.channelId }),
  }));
}

interface PreviewWanted {
  readonly teamId: string;
  readonly whose: Whose;
  readonly source: PreviewSource;
  readonly replyTo: string | undefined;
}

function previewedHolidays(
  useCases: UseCases,
  actor: Actor,
  holidaysOf: string,
  wanted: Pick<PreviewWanted, 'teamId' | 'replyTo'>,
): Promise<ModalView> {
  return previewed(useCases, actor, { holidaysOf }, { ...wanted, whose: 'team', source: { holidaysOf } });
}

/** @param given what there is to read of the source */
async function previewed(
  useCases: UseCases,
  actor: Actor,
  given: DaysOffImportInput['source'],
  { teamId, whose, source, replyTo }: PreviewWanted,
): Promise<ModalView> {
  const outcome = await useCases.importDaysOff(actor, {
    teamId,
    whose,
    source: given,
    takesFree: false,
    seen: undefined,
  });
  if (outcome.kind === 'saved') throw new TypeError('days that nobody has seen were saved');
  return daysOffPreviewView(outcome.preview, source, replyTo);
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
  run: async (context, caller, words) => {
    // The form of days off has the weekdays too.
    if (words === '') return showFirstForm(off, context, caller);
    const { actor, place } = caller;
    await caller.tell(weekdaysSaidMessage(await context.useCases.sayWeekdays(actor, { place, words })));
  },
});
