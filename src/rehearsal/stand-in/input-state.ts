/**
 * What inputs hold: from their initial values, and from what a person put in, in the platform's form.
 * Pure; must not decide whether a form may be submitted (`input-rules.ts` does).
 */
import type { InputValue, JsonObject, StateValues } from './page-state.ts';
import { elementsOf } from './shapes/check-blocks.ts';

type Choice = JsonObject & { value: string };

interface Kind {
  /** Name of the field that holds the value in the state. */
  field: string;
  /** Name of the element's field with its first value. */
  initial: string;
  many?: true;
  options?: true;
  files?: true;
}

/** Looks up a file that the person has picked, by its id. */
export type PickedFiles = (id: string) => JsonObject | undefined;

const KINDS: Record<string, Kind> = {
  plain_text_input: { field: 'value', initial: 'initial_value' },
  number_input: { field: 'value', initial: 'initial_value' },
  url_text_input: { field: 'value', initial: 'initial_value' },
  email_text_input: { field: 'value', initial: 'initial_value' },
  static_select: { field: 'selected_option', initial: 'initial_option', options: true },
  radio_buttons: { field: 'selected_option', initial: 'initial_option', options: true },
  multi_static_select: { field: 'selected_options', initial: 'initial_options', many: true, options: true },
  checkboxes: { field: 'selected_options', initial: 'initial_options', many: true, options: true },
  users_select: { field: 'selected_user', initial: 'initial_user' },
  multi_users_select: { field: 'selected_users', initial: 'initial_users', many: true },
  conversations_select: { field: 'selected_conversation', initial: 'initial_conversation' },
  multi_conversations_select: {
    field: 'selected_conversations',
    initial: 'initial_conversations',
    many: true,
  },
  channels_select: { field: 'selected_channel', initial: 'initial_channel' },
  multi_channels_select: { field: 'selected_channels', initial: 'initial_channels', many: true },
  datepicker: { field: 'selected_date', initial: 'initial_date' },
  timepicker: { field: 'selected_time', initial: 'initial_time' },
  file_input: { field: 'files', initial: 'initial_files', many: true, files: true },
  datetimepicker: { field: 'selected_date_time', initial: 'initial_date_time' },
};

/** Whether an element keeps a value: all but buttons and overflow menus do. */
export function holdsValue(element: JsonObject): boolean {
  return String(element.type) in KINDS;
}

export function kindOf(element: JsonObject): Kind {
  const kind = KINDS[String(element.type)];
  if (!kind) throw new Error(`a ${element.type} holds no value`);
  return kind;
}

/** The state entry of an element before anybody touched it. */
export function initialEntry(element: JsonObject): JsonObject {
  const kind = kindOf(element);
  return { type: element.type, [kind.field]: element[kind.initial] ?? (kind.many ? [] : null) };
}

/**
 * The state entry of an element for what a person put in.
 * @throws Error when the element doesn't offer that value
 */
export function entryOf(element: JsonObject, value: InputValue, picked: PickedFiles): JsonObject {
  const kind = kindOf(element);
  const entry = (held: unknown) => ({ type: element.type, [kind.field]: held });
  if (kind.many) {
    const list = value === null ? [] : Array.isArray(value) ? value.map(String) : [String(value)];
    if (kind.files) return entry(list.map((id) => fileOf(id, picked)));
    return entry(kind.options ? list.map((one) => optionOf(element, one)) : list);
  }
  if (Array.isArray(value)) throw new Error(`a ${element.type} takes one value, not a list`);
  if (value === null || value === '') return entry(null);
  if (kind.options) return entry(optionOf(element, String(value)));
  return entry(element.type === 'datetimepicker' ? Number(value) : String(value));
}

/**
 * The state of a whole surface. Values of `before` stay where block id, action id and kind of element stayed.
 */
export function stateOf(blocks: readonly JsonObject[], before: StateValues = {}): StateValues {
  const state: StateValues = {};
  for (const block of blocks) {
    for (const element of elementsOf(block).filter(holdsValue)) {
      const [blockId, actionId] = [String(block.block_id), String(element.action_id)];
      const kept = before[blockId]?.[actionId];
      state[blockId] ??= {};
      state[blockId][actionId] = kept && kept.type === element.type ? kept : initialEntry(element);
    }
  }
  return state;
}

function fileOf(id: string, picked: PickedFiles): JsonObject {
  const file = picked(id);
  if (!file) throw new Error(`there is no file ${id} of this person`);
  return file;
}

/** Every option that an element offers, groups flattened. */
export function optionsOf(element: JsonObject): Choice[] {
  const groups = (element.option_groups ?? []) as { options: Choice[] }[];
  return (element.options as Choice[] | undefined) ?? groups.flatMap((group) => group.options);
}

export function optionOf(element: JsonObject, value: string): Choice {
  const found = optionsOf(element).find((option) => option.value === value);
  if (!found) throw new Error(`"${value}" is not one of the choices of ${element.action_id}`);
  return found;
}
