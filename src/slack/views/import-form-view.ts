/**
 * The form that brings past sprints in. Sent off once it shows what would be imported, or what is wrong and where, above
 * the same fields; sent off again it imports what it has shown. So nothing that was given is lost on the way.
 */
import type { ModalView } from '@slack/types';
import type { ImportForm, ImportPreview } from '../../app/import/import-sprints.ts';
import { plainTyped, shortened, typed } from '../../words/typed-text.ts';
import { encodeContext, type KeptFile } from '../form-contexts.ts';
import { FORMS, IMPORT_TEXT_FIELDS, importFilesField, importKeptField, importTextField } from '../ids.ts';
import { code, section } from './block-builders.ts';
import { fileField, textField, tickField } from './form-inputs.ts';
import { formView, withReplyTo } from './form-view.ts';
import { importPreviewBlocks } from './import-preview-blocks.ts';
import { counted } from './sprint-words.ts';

/** As many as the platform takes in one field. */
export const IMPORT_FILES_MAX = 10;
/** What a spreadsheet program may call a file of lines. */
const FILE_TYPES = ['csv', 'tsv', 'txt'];
const FILE_NAME_MAX_LENGTH = 70;

/** What was given so far, to be shown again. */
export interface ImportGiven {
  /** 1 when the form is shown for the first time. */
  readonly round: number;
  readonly files: readonly KeptFile[];
  /** By field. */
  readonly texts: readonly string[];
  readonly preview: ImportPreview | undefined;
}

const NOTHING_GIVEN: ImportGiven = { round: 1, files: [], texts: [], preview: undefined };

export function importFormView({ team, knownSprints }: ImportForm, replyTo?: string): ModalView {
  const known =
    knownSprints === 0
      ? 'The team has no closed sprint yet.'
      : `The team has ${counted(knownSprints, 'closed sprint')} already; those are never changed.`;
  return view(
    team.id,
    NOTHING_GIVEN,
    [
      section(
        `Bring in sprints of ${typed(team.name)} that are over, so that ranges, odds and forecasts have something to go by. ${known} You see what would be imported before anything is.`,
      ),
      section(
        `A file or pasted lines, the first of them with the names of the columns, for example:\n${code('name, first day, last day, commitment, finished')}\n${code('Harbour 1, 2026-01-05, 2026-01-16, 20, 18')}`,
      ),
    ],
    replyTo,
  );
}

/** The same form with what came of it so far. */
export function importPreviewView(
  preview: ImportPreview,
  given: Omit<ImportGiven, 'preview'>,
  replyTo?: string,
): ModalView {
  return view(preview.team.id, { ...given, preview }, importPreviewBlocks(preview), replyTo);
}

function view(
  teamId: string,
  given: ImportGiven,
  head: ModalView['blocks'],
  replyTo: string | undefined,
): ModalView {
  const { round, files, preview } = given;
  const seen = preview && mayImport(preview) ? preview.fingerprint : undefined;
  const context = { teamId, round, files: [...files], ...(seen === undefined ? {} : { seen }) };
  const frame = {
    callbackId: FORMS.import,
    title: 'Import past sprints',
    submit: seen !== undefined ? 'Import' : preview ? 'Check again' : 'Check',
    context: encodeContext(withReplyTo(context, replyTo)),
  };
  return formView(frame, [...head, ...givenFields(given)]);
}

/** Whether sending the form off once more imports something. */
function mayImport({ problems, sprints }: ImportPreview): boolean {
  return problems.length === 0 && sprints.length > 0;
}

function givenFields({ round, files, texts }: ImportGiven): ModalView['blocks'] {
  const kept =
    files.length === 0
      ? []
      : [
          tickField({
            field: importKeptField(round),
            label: 'Files given already',
            hint: 'Take the tick away from a file that is to be left out.',
            optional: true,
            choices: files.map(({ id, name }) => ({
              value: id,
              label: shortened(plainTyped(name), FILE_NAME_MAX_LENGTH),
            })),
            initial: files.map(({ id }) => id),
          }),
        ];
  const upload = fileField({
    field: importFilesField(round),
    label: files.length === 0 ? 'CSV files' : 'More files, or mended ones',
    hint:
      files.length === 0
        ? 'A file of sprints is enough. With the cards, answers and changes of an export beside it, everything is known that was known there.'
        : 'A file takes the place of one of the same name.',
    optional: true,
    fileTypes: FILE_TYPES,
    maxFiles: IMPORT_FILES_MAX,
  });
  return [...kept, upload, ...pasteFields(texts, round === 1)];
}

/** All of them at first; later those that hold lines, and one to go on in. */
function pasteFields(texts: readonly string[], isFirst: boolean): ModalView['blocks'] {
  const held = texts.findLastIndex((text) => text.trim() !== '') + 1;
  const count = isFirst ? IMPORT_TEXT_FIELDS : Math.min(IMPORT_TEXT_FIELDS, held + 1);
  return Array.from({ length: count }, (_, i) =>
    textField({
      field: importTextField(i + 1),
      label: i === 0 ? 'Or lines pasted from a spreadsheet' : `More lines (${i + 1} of ${count} fields)`,
      hint:
        i === 0
          ? 'Columns: name, first day, last day, commitment, pulled in, surprise, finished, points worked. All but the first four may be left out.'
          : 'A field holds 3,000 characters. Lines are counted on through all fields.',
      optional: true,
      multiline: true,
      initial: texts[i],
    }),
  );
}
