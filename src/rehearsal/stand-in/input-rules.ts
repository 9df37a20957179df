/**
 * What a client checks before it sends a form: nothing required is empty, text and numbers keep to their limits.
 * The sentences are the stand-in's own.
 */
import { endingOf } from './file-json.ts';
import { kindOf } from './input-state.ts';
import type { JsonObject, StateValues } from './page-state.ts';

/** docs.slack.dev/reference/block-kit/block-elements/file-input-element */
const FILES_MAX = 10;
export const FORM_FILE_BYTES_MAX = 10_000_000;

/** @returns a sentence for each input block that can't be sent, by block id. */
export function fieldErrors(blocks: readonly JsonObject[], state: StateValues): Record<string, string> {
  const errors: Record<string, string> = {};
  for (const block of blocks) {
    if (block.type !== 'input') continue;
    const element = block.element as JsonObject;
    const held = state[String(block.block_id)]?.[String(element.action_id)]?.[kindOf(element).field];
    const error = errorOf(element, held, block.optional === true);
    if (error) errors[String(block.block_id)] = error;
  }
  return errors;
}

function errorOf(element: JsonObject, held: unknown, optional: boolean): string | undefined {
  if (held === null || held === undefined || (Array.isArray(held) && held.length === 0)) {
    return optional ? undefined : 'Please fill this in.';
  }
  switch (element.type) {
    case 'plain_text_input':
      return lengthError(element, String(held));
    case 'number_input':
      return numberError(element, String(held));
    case 'url_text_input':
      return /^https?:\/\/\S+$/i.test(String(held)) ? undefined : 'Please enter a web address.';
    case 'email_text_input':
      return /^[^\s@]+@[^\s@]+\.[^\s@]+$/.test(String(held)) ? undefined : 'Please enter an email address.';
    case 'datepicker':
      return isDate(String(held)) ? undefined : 'Please choose a date.';
    case 'timepicker':
      return /^([01]\d|2[0-3]):[0-5]\d$/.test(String(held)) ? undefined : 'Please choose a time.';
    case 'file_input':
      return filesError(element, held as readonly JsonObject[]);
    default:
      return countError(element, held);
  }
}

function lengthError(element: JsonObject, text: string): string | undefined {
  const min = Number(element.min_length ?? 0);
  const max = Number(element.max_length ?? 3000);
  if (text.length < min) return `Please write at least ${min} characters.`;
  return text.length > max ? `Please write at most ${max} characters.` : undefined;
}

function numberError(element: JsonObject, text: string): string | undefined {
  if (!/^-?(\d+(\.\d*)?|\.\d+)$/.test(text)) return 'Please enter a number.';
  if (element.is_decimal_allowed !== true && text.includes('.')) return 'Please enter a whole number.';
  const [min, max] = [element.min_value, element.max_value];
  if (min !== undefined && Number(text) < Number(min)) return `Please enter ${min} or more.`;
  return max !== undefined && Number(text) > Number(max) ? `Please enter ${max} or less.` : undefined;
}

function countError(element: JsonObject, held: unknown): string | undefined {
  const max = element.max_selected_items;
  return Array.isArray(held) && max !== undefined && held.length > Number(max)
    ? `Please choose at most ${max}.`
    : undefined;
}

function filesError(element: JsonObject, files: readonly JsonObject[]): string | undefined {
  const max = Number(element.max_files ?? FILES_MAX);
  if (files.length > max)
    return max === 1 ? 'Please choose one file.' : `Please choose at most ${max} files.`;
  const endings = element.filetypes as readonly string[] | undefined;
  const strange = files.find(
    ({ name }) => endings && !endings.some((one) => one.toLowerCase() === endingOf(String(name))),
  );
  if (strange) return `“${strange.name}” is not a file of this kind: ${endings?.join(', ')}.`;
  const large = files.find(({ size }) => Number(size) > FORM_FILE_BYTES_MAX);
  return large && `“${large.name}” is too large: 10 MB at most.`;
}

function isDate(text: string): boolean {
  const day = new Date(`${text}T00:00:00Z`);
  return (
    /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text)
  );
}
