/** The form that shows how a CSV file of cards was read, and in which its columns can be chosen. */
import type { ModalView } from '@slack/types';
import { type CardFileReading, mayFillIn } from '../../../app/planning/card-file.ts';
import { CARD_FIELDS, type CardField } from '../../../app/planning/card-headings.ts';
import type { CardRows } from '../../../app/planning/card-rows.ts';
import type { CardColumns } from '../../../app/planning/named-columns.ts';
import {
  badRows,
  cardFileLead,
  cardFileNext,
  columnName,
  unusedCardColumns,
} from '../../../words/card-file.ts';
import { mrkdwn, say } from '../../../words/say.ts';
import { shortened } from '../../../words/typed-text.ts';
import type { KeptFile } from '../../form-contexts.ts';
import { cardColumnField, cardFileField } from '../../ids.ts';
import { bold, lead, section } from '../block-builders.ts';
import { CSV_FILE_TYPES, choiceField, fileField, OPTION_MAX_LENGTH } from '../form-inputs.ts';
import { formView } from '../form-view.ts';
import { lineList, lineSections } from '../line-sections.ts';

/** The value of the choice that no column holds something. */
const NO_COLUMN = 'none';
const BAD_SECTIONS_MAX = 40;

/** @param round how often this form was shown, this time included */
export function cardFileFormView(
  reading: CardFileReading,
  {
    file,
    round,
    replyTo,
  }: { readonly file: KeptFile; readonly round: number; readonly replyTo?: string | undefined },
): ModalView {
  const { team, read } = reading;
  const seen = 'code' in read || !mayFillIn(read) ? undefined : read.columns;
  const frame = {
    form: 'card-file',
    title: say('card-file-title'),
    submit: say(seen ? 'card-file-submit' : 'card-file-check'),
    context: { teamId: team.id, file, round, ...(seen ? { seen } : {}) },
    replyTo,
  };
  return formView(frame, [
    lead(cardFileLead(reading)),
    ...('code' in read ? [] : badSections(read)),
    section(cardFileNext(reading)),
    ...('code' in read ? [] : columnBlocks(read, round)),
    fileField({
      field: cardFileField(round + 1),
      label: say('card-file-again'),
      optional: true,
      fileTypes: CSV_FILE_TYPES,
      maxFiles: 1,
    }),
  ]);
}

function badSections(read: CardRows): ModalView['blocks'] {
  const more = (count: number): string => mrkdwn('card-file-more-bad', { count });
  const list = lineList(bold(mrkdwn('card-file-bad-title')), badRows(read), more, read.badUntold);
  return lineSections(list, { maxSections: BAD_SECTIONS_MAX });
}

function columnBlocks(read: CardRows, round: number): ModalView['blocks'] {
  const unused = unusedCardColumns(read);
  return [
    ...(unused === undefined ? [] : [section(unused)]),
    ...CARD_FIELDS.map((field) => columnField(field, read.headers, read.columns, round)),
  ];
}

/** Title and estimate must be chosen; of the others it may be none. */
function columnField(
  field: CardField,
  headers: readonly string[],
  columns: CardColumns,
  round: number,
): ReturnType<typeof choiceField> {
  const isNeeded = field === 'title' || field === 'estimate';
  const place = columns[field];
  const choices = headers.slice(0, MOST_CHOICES).map((header, i) => ({
    value: String(i),
    label: shortened(columnName(header, i), OPTION_MAX_LENGTH),
  }));
  return choiceField({
    field: cardColumnField(field, round),
    label: say('card-file-column', { field }),
    choices: isNeeded ? choices : [{ value: NO_COLUMN, label: say('card-file-none') }, ...choices],
    initial: place === undefined ? (isNeeded ? undefined : NO_COLUMN) : String(place),
  });
}

/** With the one for none, as many as a list may hold. */
const MOST_CHOICES = 99;
