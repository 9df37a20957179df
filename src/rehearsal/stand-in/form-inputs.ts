/**
 * What the inputs of a form hold: from their initial values, and from what a person put in, in the platform's form;
 * and what a client checks before it sends the form off. The sentences are the stand-in's own.
 */
import { z } from 'zod';
import { endingOf } from './file-shelf.ts';
import type { InputValue, InputValues, JsonObject, StateValues } from './page-state.ts';

/** docs.slack.dev/reference/block-kit/block-elements/file-input-element */
const FILES_MAX = 10;
export const FORM_FILE_BYTES_MAX = 10_000_000;

/** Names of the field that holds the value in the state, and of the element's field with its first value. */
const KINDS: Record<string, { field: string; initial: string }> = {
  plain_text_input: { field: 'value', initial: 'initial_value' },
  static_select: { field: 'selected_option', initial: 'initial_option' },
  multi_static_select: { field: 'selected_options', initial: 'initial_options' },
  checkboxes: { field: 'selected_options', initial: 'initial_options' },
  multi_users_select: { field: 'selected_users', initial: 'initial_users' },
  datepicker: { field: 'selected_date', initial: 'initial_date' },
  timepicker: { field: 'selected_time', initial: 'initial_time' },
  radio_buttons: { field: 'selected_option', initial: 'initial_option' },
  file_input: { field: 'files', initial: 'initial_files' },
};

/** Looks up a file that the person has picked, by its id. */
export type PickedFiles = (id: string) => JsonObject | undefined;

function fieldsOf(element: JsonObject): { field: string; initial: string; holdsMany: boolean } {
  const kind = KINDS[String(element.type)];
  if (!kind) throw new Error(`a ${element.type} holds no value`);
  return { ...kind, holdsMany: kind.field.endsWith('s') };
}

/** The state of a whole form. Values of `before` stay where block id, action id and kind of element stayed. */
export function stateOf(blocks: readonly JsonObject[], before: StateValues = {}): StateValues {
  const state: StateValues = {};
  for (const block of blocks) {
    if (block.type !== 'input') continue;
    const element = block.element as JsonObject;
    const [blockId, actionId] = [String(block.block_id), String(element.action_id)];
    const { field, initial, holdsMany } = fieldsOf(element);
    const kept = before[blockId]?.[actionId];
    const first = { type: element.type, [field]: element[initial] ?? (holdsMany ? [] : null) };
    state[blockId] = { [actionId]: kept && kept.type === element.type ? kept : first };
  }
  return state;
}

/**
 * Puts values into inputs, all or none.
 * @throws Error when there is no such input or it does not offer the value
 */
export function putIn(
  blocks: readonly JsonObject[],
  state: StateValues,
  values: InputValues,
  picked: PickedFiles,
): void {
  const entries = Object.entries(values).flatMap(([blockId, byAction]) =>
    Object.entries(byAction).map(([actionId, value]) => {
      const block = blocks.find((one) => one.block_id === blockId && one.type === 'input');
      const element = block?.element as JsonObject | undefined;
      if (element?.action_id !== actionId) throw new Error(`there is no input ${blockId} ${actionId}`);
      return { blockId, actionId, entry: entryOf(element, value, picked) };
    }),
  );
  for (const { blockId, actionId, entry } of entries) state[blockId] = { [actionId]: entry };
}

/** The state entry of an element for what a person put in. */
function entryOf(element: JsonObject, value: InputValue, picked: PickedFiles): JsonObject {
  const { field, holdsMany } = fieldsOf(element);
  const entry = (held: unknown) => ({ type: element.type, [field]: held });
  const offered = (one: string) => {
    if (element.type === 'file_input') return fileOf(one, picked);
    return element.options ? optionOf(element, one) : one;
  };
  if (holdsMany) return entry([value ?? []].flat().map(offered));
  if (Array.isArray(value)) throw new Error(`a ${element.type} takes one value, not a list`);
  return entry(value === null || value === '' ? null : offered(String(value)));
}

function fileOf(id: string, picked: PickedFiles): JsonObject {
  const file = picked(id);
  if (!file) throw new Error(`there is no file ${id} of this person`);
  return file;
}

function optionOf(element: JsonObject, value: string): JsonObject {
  const found = (element.options as JsonObject[]).find((option) => option.value === value);
  if (!found) throw new Error(`"${value}" is not one of the choices of ${element.action_id}`);
  return found;
}

/** @returns a sentence for each input block that can't be sent, by block id. */
export function fieldErrors(blocks: readonly JsonObject[], state: StateValues): Record<string, string> {
  const errors: Record<string, string> = {};
  for (const block of blocks) {
    if (block.type !== 'input') continue;
    const element = block.element as JsonObject;
    const held = state[String(block.block_id)]?.[String(element.action_id)]?.[fieldsOf(element).field];
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
    case 'plain_text_input': {
      const max = Number(element.max_length ?? 3000);
      return String(held).length > max ? `Please write at most ${max} characters.` : undefined;
    }
    case 'datepicker':
      return z.iso.date().safeParse(held).success ? undefined : 'Please choose a date.';
    case 'timepicker':
      return /^([01]\d|2[0-3]):[0-5]\d$/.test(String(held)) ? undefined : 'Please choose a time.';
    case 'file_input':
      return filesError(element, held as readonly JsonObject[]);
    default: {
      const max = Number(element.max_selected_items ?? Number.POSITIVE_INFINITY);
      return Array.isArray(held) && held.length > max ? `Please choose at most ${max}.` : undefined;
    }
  }
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
