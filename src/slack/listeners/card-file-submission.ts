/** Reads the file of cards that came with the plan form or with the form that shows how it was read. */
import { CARD_FIELDS } from '../../app/planning/card-headings.ts';
import type { CardColumns } from '../../app/planning/named-columns.ts';
import type { PlanInput } from '../../app/planning/plan-input.ts';
import type { UseCases } from '../../app/use-cases.ts';
import { type FormOutcome, type FormTools, readHeld, type SentForm } from '../commands/command.ts';
import { type SentFile, sentBefore } from '../files/download-file.ts';
import { cardFileContext } from '../form-contexts.ts';
import { cardColumnField, cardFileField } from '../ids.ts';
import { cardFileFormView } from '../views/planning/card-file-form.ts';
import { planFormView } from '../views/planning/plan-forms.ts';
import type { FormFields } from './form-fields.ts';

/** The plan form with a file: what was typed is kept, and the next form shows what is in the file. */
export async function showCardFile(
  useCases: UseCases,
  { actor }: SentForm,
  { download }: FormTools,
  {
    plan,
    file,
    replyTo,
  }: { readonly plan: PlanInput; readonly file: SentFile; readonly replyTo: string | undefined },
): Promise<FormOutcome> {
  const { teamId } = plan;
  const outcome = await useCases.readCardFile(actor, { teamId, plan, file: await download(file) });
  if (outcome.kind !== 'reading') throw new TypeError('rows that nobody has seen were filled in');
  const { id, name } = file;
  const view = cardFileFormView(outcome.reading, { file: { id, name }, round: 1, replyTo });
  return { next: 'show', how: 'in place', view };
}

export function fileOfCards(form: SentForm): readonly SentFile[] {
  return [cardFileOf(form).file];
}

/** The one that was picked instead, or the one of before. */
function cardFileOf({ fields, context }: SentForm): { readonly file: SentFile; readonly isAnother: boolean } {
  const { file, round } = readHeld(cardFileContext, context);
  const field = cardFileField(round + 1);
  const [again] = fields.files(field);
  return { file: again ?? sentBefore(field, file), isAnother: again !== undefined };
}

/** Fills the rows in when nothing was chosen differently since they were shown. */
export async function submitCardFile(
  useCases: UseCases,
  sent: SentForm,
  { download }: FormTools,
): Promise<FormOutcome> {
  const { actor, fields, context } = sent;
  const { teamId, round, seen, replyTo } = readHeld(cardFileContext, context);
  const { file, isAnother } = cardFileOf(sent);
  const outcome = await useCases.readCardFile(actor, {
    teamId,
    file: await download(file),
    ...(isAnother ? {} : { columns: chosenColumns(fields, round), seen }),
  });
  if (outcome.kind === 'filled in') {
    return { next: 'show', how: 'in place', view: planFormView(outcome.form, replyTo) };
  }
  const { id, name } = file;
  const view = cardFileFormView(outcome.reading, { file: { id, name }, round: round + 1, replyTo });
  return { next: 'show', how: 'in place', view };
}

/** Undefined when the form had no such fields, as the file could not be read. */
function chosenColumns(fields: FormFields, round: number): CardColumns | undefined {
  const chosen = CARD_FIELDS.map((field) => [field, fields.text(cardColumnField(field, round))] as const);
  if (chosen.every(([, value]) => value === '')) return undefined;
  return Object.fromEntries(
    chosen.filter(([, value]) => /^\d{1,3}$/.test(value)).map(([field, value]) => [field, Number(value)]),
  );
}
