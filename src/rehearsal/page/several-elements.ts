/** Inputs that pick any number: checkboxes, and the lists of options, people or places with a search box. */
import type {
  Checkboxes,
  MultiChannelsSelect,
  MultiConversationsSelect,
  MultiStaticSelect,
  MultiUsersSelect,
} from '@slack/types';
import { optionGroups, optionRow, type PickGroup, placeGroups } from './choice-elements.ts';
import { confirmed } from './confirm-dialog.ts';
import { element, freshId } from './dom.ts';
import { changeValue, controlAttributes, type Spot, startChoices } from './surface.ts';

type MultiSelect = MultiStaticSelect | MultiUsersSelect | MultiConversationsSelect | MultiChannelsSelect;

/** From this many entries on, a list gets a search box. */
const SEARCH_FROM = 9;

/** Checkboxes in a group that the label names. */
export function checkboxesControl(boxes: Checkboxes, spot: Spot): HTMLElement {
  const actionId = boxes.action_id ?? '';
  const initial = (boxes.initial_options ?? []).map((option) => option.value ?? '');
  const offered = boxes.options.map((option) => option.value ?? '');
  const known = new Set(startChoices(spot, actionId, initial, offered));
  const names = controlAttributes(spot, actionId, 'Choices');
  const rows = boxes.options.map((option) => {
    const value = option.value ?? '';
    const control = element('input', {
      type: 'checkbox',
      value,
      'data-key': `${names['data-key']}/${value}`,
    });
    control.checked = known.has(value);
    control.addEventListener('change', async () => {
      if (spot.actsAtOnce && !(await confirmed(boxes.confirm, spot.surface.wording))) {
        control.checked = !control.checked;
        return;
      }
      if (control.checked) known.add(value);
      else known.delete(value);
      await changeValue(spot, actionId, [...known]);
    });
    return optionRow(control, option, spot);
  });
  return element('div', { ...names, 'data-key': undefined, role: 'group', class: 'rows' }, rows);
}

/**
 * A list that opens on demand and shows what was chosen while closed. Where choices count at once, they are
 * reported when the list is closed, not at every tick.
 */
export function multiSelectControl(select: MultiSelect, spot: Spot): HTMLElement {
  const actionId = select.action_id ?? '';
  const groups =
    select.type === 'multi_static_select' ? optionGroups(select) : placeGroups(select.type, spot);
  const labels = new Map(
    groups.flatMap((group) => group.picks.map((pick) => [pick.value, pick.label] as const)),
  );
  const chosen = new Set(startChoices(spot, actionId, initialPicks(select), [...labels.keys()]));
  let reported = [...chosen].join('\n');
  const prompt = select.placeholder?.text ?? 'Choose …';
  const names = controlAttributes(spot, actionId, prompt);
  const summaryId = freshId();
  const summary = element('summary', {
    class: 'typed',
    id: summaryId,
    'data-key': names['data-key'],
    'aria-labelledby': spot.labelledBy && `${spot.labelledBy} ${summaryId}`,
    'aria-describedby': spot.describedBy,
  });
  const showChosen = () => {
    summary.textContent = [...chosen].map((value) => labels.get(value)).join(', ') || prompt;
  };
  const keep = () => changeValue({ ...spot, actsAtOnce: false }, actionId, [...chosen]);
  const boxes = groups.map((group) =>
    groupOfBoxes(group, chosen, select.max_selected_items ?? Number.POSITIVE_INFINITY, () => {
      showChosen();
      void keep();
    }),
  );
  const list = element('div', { ...names, 'data-key': undefined, role: 'group', class: 'picks' }, [
    labels.size >= SEARCH_FROM && searchBox(boxes),
    ...boxes,
  ]);
  showChosen();
  const details = element('details', { class: 'several' }, [summary, list], {
    toggle: async () => {
      const now = [...chosen].join('\n');
      if (details.open || now === reported || !spot.actsAtOnce) return;
      if (!(await confirmed(select.confirm, spot.surface.wording))) return;
      reported = now;
      await changeValue(spot, actionId, [...chosen]);
    },
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

function groupOfBoxes(group: PickGroup, chosen: Set<string>, most: number, changed: () => void): HTMLElement {
  const rows = group.picks.map((pick) => {
    const box = element('input', { type: 'checkbox', value: pick.value });
    box.checked = chosen.has(pick.value);
    box.addEventListener('change', () => {
      if (box.checked && chosen.size >= most) box.checked = false;
      else if (box.checked) chosen.add(pick.value);
      else chosen.delete(pick.value);
      changed();
    });
    return element('label', { class: 'row' }, [box, element('span', { class: 'row-text' }, [pick.label])]);
  });
  return element('div', { class: 'pick-group' }, [
    group.label && element('p', { class: 'note' }, [group.label]),
    ...rows,
  ]);
}

function searchBox(boxes: HTMLElement[]): HTMLElement {
  const search = element('input', { type: 'search', class: 'typed', 'aria-label': 'Narrow the list' });
  search.placeholder = 'Narrow the list';
  search.addEventListener('input', () => {
    const wanted = search.value.toLocaleLowerCase();
    for (const row of boxes.flatMap((box) => [...box.querySelectorAll<HTMLElement>('label')])) {
      row.hidden = !(row.textContent ?? '').toLocaleLowerCase().includes(wanted);
    }
  });
  return search;
}

function initialPicks(select: MultiSelect): string[] {
  switch (select.type) {
    case 'multi_static_select':
      return (select.initial_options ?? []).map((option) => option.value ?? '');
    case 'multi_users_select':
      return select.initial_users ?? [];
    case 'multi_channels_select':
      return select.initial_channels ?? [];
    default:
      return select.initial_conversations ?? [];
  }
}
