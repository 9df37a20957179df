/**
 * Bringing past sprints in and taking them out. The form for an import, sent off once, shows what would be imported, or
 * what is wrong and where, above the same fields; sent off again it imports what it has shown. So nothing that was given
 * is lost on the way.
 */
import type { KnownBlock, ModalView } from '@slack/types';
import type { TeamExport } from '../../app/export/export-sprints.ts';
import type { ImportPreview } from '../../app/import/import-reading.ts';
import type { ImportForm, SprintsImported } from '../../app/import/import-sprints.ts';
import {
  badLines,
  exportDone,
  importDone,
  knownOf,
  leftOutBody,
  leftOutSprint,
  previewedBody,
  previewedSprint,
  previewLead,
  unusedColumns,
} from '../../words/import.ts';
import { importWarning } from '../../words/import-problems.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { plainTyped, shortened } from '../../words/typed-text.ts';
import { encodeValue } from '../button-values.ts';
import type { KeptFile } from '../form-contexts.ts';
import { ACTIONS, IMPORT_TEXT_FIELDS, importFilesField, importKeptField, importTextField } from '../ids.ts';
import { actions, button, context, lead, section } from './block-builders.ts';
import { CSV_FILE_TYPES, fileField, TEXT_INPUT_MAX_LENGTH, textField, tickField } from './form-inputs.ts';
import { formView } from './form-view.ts';
import { lineList, lineSections } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';

/** As many as the platform takes in one field. */
export const IMPORT_FILES_MAX = 10;
const FILE_NAME_MAX_LENGTH = 70;

/** What was given so far, to be shown again. */
interface ImportGiven {
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
    knownSprints === 0 ? mrkdwn('import-known-none') : mrkdwn('import-known', { sprints: knownSprints });
  const intro = mrkdwn('import-intro', { team: team.name });
  return view(
    team.id,
    NOTHING_GIVEN,
    [section(`${intro} ${known} ${mrkdwn('import-shown-first')}`), section(mrkdwn('import-example'))],
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
    form: 'import',
    title: say('import-title'),
    submit: say(seen !== undefined ? 'import-submit' : preview ? 'import-check-again' : 'import-check'),
    context,
    replyTo,
  };
  return formView(frame, [...head, ...givenFields(given)]);
}

/** Whether sending the form off once more imports something. */
function mayImport({ problems, sprints, bodies }: ImportPreview): boolean {
  return problems.length === 0 && sprints.length + bodies.length > 0;
}

function givenFields({ round, files, texts }: ImportGiven): ModalView['blocks'] {
  const kept =
    files.length === 0
      ? []
      : [
          tickField({
            field: importKeptField(round),
            label: say('import-kept'),
            hint: say('import-kept-hint'),
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
    label: say(files.length === 0 ? 'import-files' : 'import-more-files'),
    hint: say(files.length === 0 ? 'import-files-hint' : 'import-more-files-hint'),
    optional: true,
    fileTypes: CSV_FILE_TYPES,
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
      label: i === 0 ? say('import-paste') : say('import-more-lines', { field: i + 1, fields: count }),
      hint:
        i === 0
          ? say('import-paste-hint')
          : say('import-more-lines-hint', { characters: TEXT_INPUT_MAX_LENGTH }),
      optional: true,
      multiline: true,
      initial: texts[i],
    }),
  );
}

/** The form holds 100 blocks, of which its fields take a few. */
const PROBLEM_SECTIONS_MAX = 60;
const SPRINT_SECTIONS_MAX = 4;
const LEFT_OUT_SECTIONS_MAX = 2;
const CHECK_SECTIONS_MAX = 3;
/** More lines than these sections can hold are only counted: to say a thousand of them would hold everybody up. */
const LINES_SAID_MAX = 250;

/** What an import would bring in, or what is wrong with which lines, as blocks above the form's fields. */
function importPreviewBlocks(preview: ImportPreview): KnownBlock[] {
  const blocks = preview.problems.length > 0 ? problemBlocks(preview) : sprintBlocks(preview);
  return [lead(previewLead(preview)), ...blocks];
}

function problemBlocks(preview: ImportPreview): KnownBlock[] {
  return [
    ...lineSections(
      lineList(
        '',
        badLines(preview),
        (count) => mrkdwn('import-more-problems', { count }),
        preview.problemsUntold,
      ),
      { maxSections: PROBLEM_SECTIONS_MAX },
    ),
    section(mrkdwn('import-correct')),
  ];
}

function sprintBlocks(preview: ImportPreview): KnownBlock[] {
  const { sprints, bodies, bodiesLeftOut, warnings } = preview;
  const leftOut = [
    ...preview.leftOut.slice(0, LINES_SAID_MAX).map(leftOutSprint),
    ...bodiesLeftOut.slice(0, LINES_SAID_MAX).map(leftOutBody),
  ];
  const checks = [...warnings.map((warning) => `• ${importWarning(warning)}`), ...unusedColumns(preview)];
  const more = (count: number): string => mrkdwn('import-more', { count });
  return [
    ...(sprints.length > 0 ? [section(knownOf(preview))] : []),
    ...lineSections(
      lineList(
        mrkdwn('import-sprints-head'),
        sprints.slice(0, LINES_SAID_MAX).map(previewedSprint),
        (count) => mrkdwn('import-more-sprints', { count }),
        Math.max(0, sprints.length - LINES_SAID_MAX),
      ),
      { maxSections: SPRINT_SECTIONS_MAX },
    ),
    ...lineSections(lineList(mrkdwn('import-bodies-head'), bodies.map(previewedBody), more), {
      maxSections: SPRINT_SECTIONS_MAX,
    }),
    ...lineSections(
      lineList(
        mrkdwn('import-left-out-head'),
        leftOut,
        more,
        Math.max(0, preview.leftOut.length - LINES_SAID_MAX) +
          Math.max(0, bodiesLeftOut.length - LINES_SAID_MAX) +
          preview.bodiesUntold,
      ),
      { maxSections: LEFT_OUT_SECTIONS_MAX },
    ),
    ...(preview.leftOut.some(({ why }) => why === 'known') ? [context(mrkdwn('import-correct-known'))] : []),
    ...lineSections(lineList(mrkdwn('import-check-head'), checks, more), { maxSections: CHECK_SECTIONS_MAX }),
    ...(sprints.length > 0 ? [context(mrkdwn('import-becomes-history'))] : []),
  ];
}

export function sprintsImportedMessage(imported: SprintsImported): MessageView {
  const value = encodeValue({ channelId: imported.team.channelId });
  return messageView([
    section(importDone(imported)),
    actions([
      button(say('advice-range-button'), { actionId: ACTIONS.showRange, value }),
      button(say('advice-odds-button'), { actionId: ACTIONS.showOdds, value }),
      button(say('advice-history-button'), { actionId: ACTIONS.showHistory, value }),
    ]),
  ]);
}

/** What comes with the files, in the person's direct messages. Mrkdwn. */
export function exportComment(exported: TeamExport): string {
  return `${exportDone(exported)} ${caution()}`;
}

/** Says to the person where they are. */
export function exportedMessage(exported: TeamExport): MessageView {
  return messageView([section(`${exportDone(exported)} ${mrkdwn('export-where')}`), context(caution())]);
}

function caution(): string {
  return `${mrkdwn('export-caution')} ${mrkdwn('caution-people')}`;
}
