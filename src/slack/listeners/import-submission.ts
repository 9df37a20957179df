/** Reads the files and lines of the import form, has them checked or imported, and shows the form again or closes it. */
import type { GivenFile } from '../../app/csv/given-file.ts';
import type { UseCases } from '../../app/use-cases.ts';
import { say } from '../../words/say.ts';
import { type FormOutcome, type FormTools, readHeld, type SentForm } from '../commands/command.ts';
import { type SentFile, sentBefore } from '../files/download-file.ts';
import { importContext, type KeptFile } from '../form-contexts.ts';
import { IMPORT_TEXT_FIELDS, importFilesField, importKeptField, importTextField } from '../ids.ts';
import { IMPORT_FILES_MAX, importPreviewView, sprintsImportedMessage } from '../views/import-views.ts';
import type { FormFields } from './form-fields.ts';

/** Pasted lines take a turn as well. */
export function filesOfImport({ fields, context }: SentForm): readonly SentFile[] {
  const { files, round } = readHeld(importContext, context);
  return givenFiles(fields, files, round);
}

export async function submitImport(
  useCases: UseCases,
  { actor, fields, context }: SentForm,
  { download }: FormTools,
): Promise<FormOutcome> {
  const form = readHeld(importContext, context);
  const given = givenFiles(fields, form.files, form.round);
  const texts = Array.from({ length: IMPORT_TEXT_FIELDS }, (_, i) => fields.text(importTextField(i + 1)));
  const files: GivenFile[] = [];
  // One after another: the platform counts downloads.
  for (const file of given) files.push(await download(file));
  files.push({ fileName: say('import-pasted-lines'), text: pastedLines(texts) });
  const outcome = await useCases.importSprints(actor, { teamId: form.teamId, files, seen: form.seen });
  if (outcome.kind === 'imported') return { next: 'close', say: sprintsImportedMessage(outcome.imported) };
  const kept = given.map(({ id, name, sizeBytes }): KeptFile => ({ id, name, size: sizeBytes }));
  const next = { round: form.round + 1, files: kept, texts };
  return { next: 'show', how: 'in place', view: importPreviewView(outcome.preview, next, form.replyTo) };
}

/** Those of the rounds before that still have their tick, and those picked now; of one name the latest. */
function givenFiles(fields: FormFields, before: readonly KeptFile[], round: number): SentFile[] {
  const field = importKeptField(round);
  const ticked = new Set(fields.choices(field));
  const picked = fields.files(importFilesField(round));
  const kept = before
    .filter(({ id, name }) => ticked.has(id) && !picked.some((file) => file.name === name))
    .map((file) => sentBefore(field, file));
  return [...kept, ...picked].slice(0, IMPORT_FILES_MAX);
}

/** The fields' texts line by line; empty fields at the end add no lines. */
function pastedLines(texts: readonly string[]): string {
  const last = texts.findLastIndex((text) => text.trim() !== '');
  return texts.slice(0, last + 1).join('\n');
}
