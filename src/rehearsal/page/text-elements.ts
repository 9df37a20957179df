/** Inputs that are typed into: text, numbers, addresses, dates and times. */
import type { Datepicker, EmailInput, NumberInput, PlainTextInput, Timepicker, URLInput } from '@slack/types';
import { confirmed } from './confirm-dialog.ts';
import { element } from './dom.ts';
import { changeValue, controlAttributes, type Spot, startValue } from './surface.ts';

type Typed = PlainTextInput | NumberInput | EmailInput | URLInput;

const INPUT_MODE: Record<Typed['type'], string> = {
  plain_text_input: 'text',
  number_input: 'decimal',
  email_text_input: 'email',
  url_text_input: 'url',
};

/**
 * A typed input. All kinds are plain text fields that differ in their keyboard only: the browser's own
 * checks would hide the messages that the workspace and the app give.
 */
export function typedControl(typed: Typed, spot: Spot): HTMLElement {
  const actionId = typed.action_id ?? '';
  const attributes = {
    ...controlAttributes(spot, actionId, typed.placeholder?.text ?? 'Text'),
    placeholder: typed.placeholder?.text,
    autocomplete: 'off',
    maxlength: typed.type === 'plain_text_input' ? (typed.max_length ?? 3000) : undefined,
    class: typed.type === 'number_input' ? 'typed number' : 'typed',
  };
  const multiline = typed.type === 'plain_text_input' && typed.multiline;
  const control = multiline
    ? element('textarea', { ...attributes, rows: 6 })
    : element('input', { ...attributes, type: 'text', inputmode: INPUT_MODE[typed.type] });
  control.value = String(startValue(spot, actionId, typed.initial_value ?? null) ?? '');
  control.addEventListener('input', () => {
    void changeValue(
      { ...spot, actsAtOnce: spot.actsAtOnce && reportsOn(typed, 'on_character_entered') },
      actionId,
      control.value || null,
    );
  });
  control.addEventListener('keydown', (event) => {
    const pressed = event as KeyboardEvent;
    if (pressed.key !== 'Enter' || pressed.isComposing || multiline) return;
    if (!spot.actsAtOnce || !reportsOn(typed, 'on_enter_pressed')) return;
    event.preventDefault();
    void spot.surface.act(spot.blockId, actionId, control.value || null);
  });
  return control;
}

function reportsOn(typed: Typed, occasion: 'on_enter_pressed' | 'on_character_entered'): boolean {
  return (typed.dispatch_action_config?.trigger_actions_on ?? ['on_enter_pressed']).includes(occasion);
}

/** A date or a time of day. */
export function calendarControl(picker: Datepicker | Timepicker, spot: Spot): HTMLElement {
  const actionId = picker.action_id ?? '';
  const isDate = picker.type === 'datepicker';
  const initial = (isDate ? picker.initial_date : picker.initial_time) ?? null;
  const control = element('input', {
    ...controlAttributes(spot, actionId, picker.placeholder?.text ?? (isDate ? 'Date' : 'Time')),
    type: isDate ? 'date' : 'time',
    class: 'typed date',
  });
  let known = String(startValue(spot, actionId, initial) ?? '');
  control.value = known;
  control.addEventListener('change', async () => {
    if (spot.actsAtOnce && !(await confirmed(picker.confirm, spot.surface.wording))) {
      control.value = known;
      return;
    }
    known = control.value;
    await changeValue(spot, actionId, known || null);
  });
  return control;
}
