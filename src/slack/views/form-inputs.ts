/**
 * Makers of form fields. The block is named after the field, so that a problem with it can be shown at it
 * and what was typed survives an update of the form.
 */

import type {
  Checkboxes,
  Datepicker,
  FileInput,
  InputBlock,
  MultiStaticSelect,
  MultiUsersSelect,
  PlainTextInput,
  PlainTextOption,
  StaticSelect,
  Timepicker,
} from '@slack/types';
import { visibleText } from '../../app/visible-text.ts';
import { isDay } from '../../sprint/calendar.ts';
import { INPUT } from '../ids.ts';
import { plain } from './block-builders.ts';

const LABEL_MAX_LENGTH = 2_000;
/** Longest text that a text field holds (docs.slack.dev/reference/block-kit/block-elements). */
export const TEXT_INPUT_MAX_LENGTH = 3_000;
/** Longest label of a choice. */
export const OPTION_MAX_LENGTH = 75;
const OPTIONS_MAX = 100;

/** What a spreadsheet program may call a file of lines. */
export const CSV_FILE_TYPES = ['csv', 'tsv', 'txt'];

interface FieldOptions {
  readonly field: string;
  readonly label: string;
  readonly hint?: string;
  readonly optional?: boolean;
  /** Whether the bot hears of each change at once. */
  readonly isLive?: boolean;
}

function inputBlock(
  { field, label, hint, optional, isLive }: FieldOptions,
  element: InputBlock['element'],
): InputBlock {
  return {
    type: 'input',
    block_id: field,
    label: plain(label, LABEL_MAX_LENGTH),
    ...(hint ? { hint: plain(hint, LABEL_MAX_LENGTH) } : {}),
    optional: optional ?? false,
    ...(isLive ? { dispatch_action: true } : {}),
    element,
  };
}

interface TextFieldOptions extends FieldOptions {
  readonly initial?: string | undefined;
  readonly multiline?: boolean;
  readonly maxLength?: number;
}

export function textField(options: TextFieldOptions): InputBlock {
  const maxLength = options.maxLength ?? TEXT_INPUT_MAX_LENGTH;
  const initial = options.initial?.slice(0, maxLength) ?? '';
  const element: PlainTextInput = {
    type: 'plain_text_input',
    action_id: INPUT,
    multiline: options.multiline ?? false,
    max_length: maxLength,
    ...(initial === '' ? {} : { initial_value: visibleText(initial) }),
  };
  return inputBlock(options, element);
}

/** @param options `initial` is `HH:MM`. */
export function timeField(options: FieldOptions & { readonly initial: string }): InputBlock {
  const element: Timepicker = { type: 'timepicker', action_id: INPUT, ...initialTime(options.initial) };
  return inputBlock(options, element);
}

function initialTime(time: string): Pick<Timepicker, 'initial_time'> {
  return /^([01]\d|2[0-3]):[0-5]\d$/.test(time) ? { initial_time: time } : {};
}

/** @param options `initial` is an ISO date. */
export function dateField(options: FieldOptions & { readonly initial: string }): InputBlock {
  const element: Datepicker = {
    type: 'datepicker',
    action_id: INPUT,
    ...(isDay(options.initial) ? { initial_date: options.initial } : {}),
  };
  return inputBlock(options, element);
}

interface PeopleFieldOptions extends FieldOptions {
  readonly initial: readonly string[];
  readonly max?: number;
}

export function peopleField(options: PeopleFieldOptions): InputBlock {
  const element: MultiUsersSelect = {
    type: 'multi_users_select',
    action_id: INPUT,
    ...(options.initial.length > 0 ? { initial_users: [...options.initial] } : {}),
    ...(options.max ? { max_selected_items: options.max } : {}),
  };
  return inputBlock(options, element);
}

/** One choice; `value` has 75 characters at most. */
export interface Choice {
  readonly value: string;
  readonly label: string;
}

function option({ value, label }: Choice): PlainTextOption {
  return { text: plain(visibleText(label), OPTION_MAX_LENGTH), value };
}

export function tickField(
  options: FieldOptions & { readonly choices: readonly Choice[]; readonly initial: readonly string[] },
): InputBlock {
  const chosen = options.choices.filter(({ value }) => options.initial.includes(value)).map(option);
  const element: Checkboxes = {
    type: 'checkboxes',
    action_id: INPUT,
    options: options.choices.map(option),
    ...(chosen.length > 0 ? { initial_options: chosen } : {}),
  };
  return inputBlock(options, element);
}

/** One of up to 100 choices, at least one. @param options `initial` is the value of the choice made already. */
export function choiceField(
  options: FieldOptions & { readonly choices: readonly Choice[]; readonly initial?: string | undefined },
): InputBlock {
  const choices = options.choices.slice(0, OPTIONS_MAX);
  const chosen = choices.find(({ value }) => value === options.initial);
  const element: StaticSelect = {
    type: 'static_select',
    action_id: INPUT,
    options: choices.map(option),
    ...(chosen ? { initial_option: option(chosen) } : {}),
  };
  return inputBlock(options, element);
}

/** Any of up to 100 choices, at least one offered. */
export function choicesField(options: FieldOptions & { readonly choices: readonly Choice[] }): InputBlock {
  const element: MultiStaticSelect = {
    type: 'multi_static_select',
    action_id: INPUT,
    options: options.choices.slice(0, OPTIONS_MAX).map(option),
  };
  return inputBlock(options, element);
}

interface FileFieldOptions extends FieldOptions {
  /** Endings without the dot; files of any kind when left out. The client looks at the names only. */
  readonly fileTypes?: readonly string[];
  /** 1 to 10. */
  readonly maxFiles: number;
}

/** Files from the person's machine. What was picked can't be shown again in a form that is opened again. */
export function fileField(options: FileFieldOptions): InputBlock {
  const element: FileInput = {
    type: 'file_input',
    action_id: INPUT,
    max_files: options.maxFiles,
    ...(options.fileTypes ? { filetypes: [...options.fileTypes] } : {}),
  };
  return inputBlock(options, element);
}
