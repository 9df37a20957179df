/** Inputs that pick one of several: drop-down lists, radio buttons, and lists of people and places. */
import type {
  ChannelsSelect,
  ConversationsSelect,
  Option,
  OptionGroup,
  RadioButtons,
  StaticSelect,
  UsersSelect,
} from '@slack/types';
import { confirmed } from './confirm-dialog.ts';
import { element, freshId } from './dom.ts';
import { mrkdwnNodes } from './mrkdwn-dom.ts';
import { changeValue, controlAttributes, type Pick, type Spot, startChoice } from './surface.ts';

export interface PickGroup {
  label?: string;
  picks: Pick[];
}

/** A drop-down list. */
export function selectControl(
  select: StaticSelect | UsersSelect | ConversationsSelect | ChannelsSelect,
  spot: Spot,
): HTMLElement {
  const actionId = select.action_id ?? '';
  const groups = select.type === 'static_select' ? optionGroups(select) : placeGroups(select.type, spot);
  const prompt = select.placeholder?.text ?? 'Choose …';
  const control = element('select', { ...controlAttributes(spot, actionId, prompt), class: 'typed' }, [
    element('option', { value: '' }, [prompt]),
    ...groups.map(groupNode),
  ]);
  const offered = groups.flatMap((group) => group.picks.map((pick) => pick.value));
  let known = startChoice(spot, actionId, initialPick(select), offered) ?? '';
  control.value = known;
  control.addEventListener('change', async () => {
    if (spot.actsAtOnce && !(await confirmed(select.confirm, spot.surface.wording))) {
      control.value = known;
      return;
    }
    known = control.value;
    await changeValue(spot, actionId, known || null);
  });
  return control;
}

/** Radio buttons in a group that the label names. */
export function radioControl(radio: RadioButtons, spot: Spot): HTMLElement {
  const actionId = radio.action_id ?? '';
  const group = freshId();
  const offered = radio.options.map((option) => option.value ?? '');
  const known = startChoice(spot, actionId, radio.initial_option?.value ?? null, offered);
  const names = controlAttributes(spot, actionId, 'Choices');
  const rows = radio.options.map((option) => {
    const control = element('input', {
      type: 'radio',
      name: group,
      value: option.value ?? '',
      'data-key': `${names['data-key']}/${option.value}`,
    });
    control.checked = option.value === known;
    control.addEventListener('change', async () => {
      if (spot.actsAtOnce && !(await confirmed(radio.confirm, spot.surface.wording))) control.checked = false;
      else await changeValue(spot, actionId, option.value ?? null);
    });
    return optionRow(control, option, spot);
  });
  return element('div', { ...names, 'data-key': undefined, role: 'radiogroup', class: 'rows' }, rows);
}

/** One labelled radio button or checkbox with its description. */
export function optionRow(control: HTMLInputElement, option: Option, spot: Spot): HTMLElement {
  const text = option.text;
  const wording = spot.surface.wording;
  const label = text.type === 'mrkdwn' ? mrkdwnNodes(text.text, wording) : [text.text];
  return element('label', { class: 'row' }, [
    control,
    element('span', { class: 'row-text' }, [
      element('span', {}, label),
      option.description && element('span', { class: 'note' }, [option.description.text]),
    ]),
  ]);
}

/** The options of a static list as groups; without groups, one group that has no label. */
export function optionGroups(list: { options?: Option[]; option_groups?: OptionGroup[] }): PickGroup[] {
  const picksOf = (options: Option[]) =>
    options.map((option) => ({ value: option.value ?? '', label: option.text.text }));
  if (!list.option_groups) return [{ picks: picksOf(list.options ?? []) }];
  return list.option_groups.map((group) => ({ label: group.label.text, picks: picksOf(group.options) }));
}

/** People, or places, or both, by the kind of list. */
export function placeGroups(type: string, spot: Spot): PickGroup[] {
  const { people, places } = spot.surface;
  if (type.includes('users')) return [{ picks: people }];
  if (type.includes('channels')) return [{ picks: places }];
  return [
    { label: 'Channels', picks: places },
    { label: 'People', picks: people },
  ];
}

function groupNode(group: PickGroup): HTMLElement | DocumentFragment {
  const options = group.picks.map((pick) => element('option', { value: pick.value }, [pick.label]));
  if (group.label) return element('optgroup', { label: group.label }, options);
  const fragment = document.createDocumentFragment();
  fragment.append(...options);
  return fragment;
}

function initialPick(
  select: StaticSelect | UsersSelect | ConversationsSelect | ChannelsSelect,
): string | null {
  switch (select.type) {
    case 'static_select':
      return select.initial_option?.value ?? null;
    case 'users_select':
      return select.initial_user ?? null;
    case 'channels_select':
      return select.initial_channel ?? null;
    default:
      return select.initial_conversation ?? null;
  }
}
