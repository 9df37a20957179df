/**
 * The inputs of a form. What is put in is kept until the form is sent off, and survives that the form is drawn again.
 */
import type {
  Checkboxes,
  Datepicker,
  InputBlock,
  MultiStaticSelect,
  MultiUsersSelect,
  PlainTextInput,
  PlainTextOption,
  StaticSelect,
  Timepicker,
} from '@slack/types';
import { element, freshId } from './dom.ts';
import { fileControl } from './file-elements.ts';
import { controlAttributes, keepValue, type Spot, startChoice, startChoices, startValue } from './surface.ts';

/** From this many entries on, a list gets a search box. */
const SEARCH_FROM = 9;

/** The control for an input; one that this page doesn't know is named in words. */
export function inputControl(part: InputBlock['element'], spot: Spot): HTMLElement {
  switch (part.type) {
    case 'static_select':
      return selectControl(part, spot);
    case 'multi_static_select':
      return multiSelectControl(part, part.options?.map(pickOf) ?? [], initialValues(part), spot);
    case 'multi_users_select':
      return multiSelectControl(part, spot.surface.people, part.initial_users ?? [], spot);
    case 'checkboxes':
      return checkboxesControl(part, spot);
    case 'datepicker':
    case 'timepicker':
      return calendarControl(part, spot);
    case 'plain_text_input':
      return textControl(part, spot);
    case 'file_input':
      return fileControl(part, spot);
    default:
      return element('span', { class: 'note' }, [`(This page can’t show a “${part.type}”.)`]);
  }
}

function textControl(typed: PlainTextInput, spot: Spot): HTMLElement {
  const actionId = typed.action_id ?? '';
  const attributes = {
    ...controlAttributes(spot, actionId),
    autocomplete: 'off',
    maxlength: typed.max_length ?? 3000,
    class: 'typed',
  };
  const control = typed.multiline
    ? element('textarea', { ...attributes, rows: 6 })
    : element('input', { ...attributes, type: 'text' });
  control.value = String(startValue(spot, actionId, typed.initial_value ?? null) ?? '');
  control.addEventListener('input', () => keepValue(spot, actionId, control.value || null));
  return control;
}

/** A date or a time of day. */
function calendarControl(picker: Datepicker | Timepicker, spot: Spot): HTMLElement {
  const actionId = picker.action_id ?? '';
  const isDate = picker.type === 'datepicker';
  const initial = (isDate ? picker.initial_date : picker.initial_time) ?? null;
  const control = element('input', {
    ...controlAttributes(spot, actionId),
    type: isDate ? 'date' : 'time',
    class: 'typed date',
  });
  control.value = String(startValue(spot, actionId, initial) ?? '');
  control.addEventListener('change', () => keepValue(spot, actionId, control.value || null));
  return control;
}

/** A drop-down list. */
function selectControl(select: StaticSelect, spot: Spot): HTMLElement {
  const actionId = select.action_id ?? '';
  const picks = select.options?.map(pickOf) ?? [];
  const control = element('select', { ...controlAttributes(spot, actionId), class: 'typed' }, [
    element('option', { value: '' }, ['Choose …']),
    ...picks.map((pick) => element('option', { value: pick.value }, [pick.label])),
  ]);
  const offered = picks.map((pick) => pick.value);
  control.value = startChoice(spot, actionId, select.initial_option?.value ?? null, offered) ?? '';
  control.addEventListener('change', () => keepValue(spot, actionId, control.value || null));
  return control;
}

/** Checkboxes in a group that the label names. */
function checkboxesControl(boxes: Checkboxes, spot: Spot): HTMLElement {
  const actionId = boxes.action_id ?? '';
  const picks = boxes.options.map((option) => pickOf(option as PlainTextOption));
  const offered = picks.map((pick) => pick.value);
  const chosen = new Set(startChoices(spot, actionId, initialValues(boxes), offered));
  const names = controlAttributes(spot, actionId);
  const rows = picks.map((pick) =>
    boxRow(pick, chosen, `${names['data-key']}/${pick.value}`, () => keepValue(spot, actionId, [...chosen])),
  );
  return element('div', { ...names, 'data-key': undefined, role: 'group', class: 'rows' }, rows);
}

/** A list that opens on demand and shows what was chosen while closed. */
function multiSelectControl(
  select: MultiStaticSelect | MultiUsersSelect,
  picks: readonly Pick[],
  initial: string[],
  spot: Spot,
): HTMLElement {
  const actionId = select.action_id ?? '';
  const labels = new Map(picks.map((pick) => [pick.value, pick.label]));
  const chosen = new Set(startChoices(spot, actionId, initial, [...labels.keys()]));
  const names = controlAttributes(spot, actionId);
  const summaryId = freshId();
  const summary = element('summary', {
    class: 'typed',
    id: summaryId,
    'data-key': names['data-key'],
    'aria-labelledby': `${spot.labelledBy} ${summaryId}`,
    'aria-describedby': spot.describedBy,
  });
  const showChosen = () => {
    summary.textContent = [...chosen].map((value) => labels.get(value)).join(', ') || 'Choose …';
  };
  const rows = picks.map((pick) =>
    boxRow(
      pick,
      chosen,
      undefined,
      () => {
        showChosen();
        keepValue(spot, actionId, [...chosen]);
      },
      select.max_selected_items,
    ),
  );
  const list = element('div', { ...names, 'data-key': undefined, role: 'group', class: 'picks' }, [
    labels.size >= SEARCH_FROM && searchBox(rows),
    ...rows,
  ]);
  showChosen();
  const details = element('details', { class: 'several' }, [summary, list], {
    keydown: (event) => {
      if (event.key !== 'Escape' || !details.open) return;
      event.preventDefault();
      event.stopPropagation();
      details.open = false;
      summary.focus();
    },
  });
  return details;
}

/** A labelled checkbox that puts its value into `chosen` and takes it out again. */
function boxRow(
  pick: Pick,
  chosen: Set<string>,
  key: string | undefined,
  changed: () => void,
  most: number = Number.POSITIVE_INFINITY,
): HTMLElement {
  const box = element('input', { type: 'checkbox', value: pick.value, 'data-key': key });
  box.checked = chosen.has(pick.value);
  box.addEventListener('change', () => {
    if (box.checked && chosen.size >= most) box.checked = false;
    else if (box.checked) chosen.add(pick.value);
    else chosen.delete(pick.value);
    changed();
  });
  return element('label', { class: 'row' }, [box, element('span', { class: 'row-text' }, [pick.label])]);
}

function searchBox(rows: HTMLElement[]): HTMLElement {
  const search = element('input', { type: 'search', class: 'typed', 'aria-label': 'Narrow the list' });
  search.placeholder = 'Narrow the list';
  search.addEventListener('input', () => {
    const wanted = search.value.toLocaleLowerCase();
    for (const row of rows) {
      row.hidden = !(row.textContent ?? '').toLocaleLowerCase().includes(wanted);
    }
  });
  return search;
}

interface Pick {
  value: string;
  label: string;
}

function pickOf(option: PlainTextOption): Pick {
  return { value: option.value ?? '', label: option.text.text };
}

function initialValues(part: Checkboxes | MultiStaticSelect): string[] {
  return (part.initial_options ?? []).map((option) => option.value ?? '');
}
