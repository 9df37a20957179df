/** Chooses the control for an element of a block. */
import type { ActionsBlockElement, InputBlockElement, SectionBlockAccessory } from '@slack/types';
import { buttonControl, overflowControl } from './button-elements.ts';
import { radioControl, selectControl } from './choice-elements.ts';
import { element } from './dom.ts';
import { fileControl } from './file-elements.ts';
import { checkboxesControl, multiSelectControl } from './several-elements.ts';
import type { Spot } from './surface.ts';
import { calendarControl, typedControl } from './text-elements.ts';

/** The control for an element; one that this page doesn't know is named in words. */
export function controlFor(
  part: ActionsBlockElement | InputBlockElement | SectionBlockAccessory,
  spot: Spot,
): HTMLElement {
  switch (part.type) {
    case 'button':
      return buttonControl(part, spot);
    case 'overflow':
      return overflowControl(part, spot);
    case 'static_select':
    case 'users_select':
    case 'conversations_select':
    case 'channels_select':
      return selectControl(part, spot);
    case 'multi_static_select':
    case 'multi_users_select':
    case 'multi_conversations_select':
    case 'multi_channels_select':
      return multiSelectControl(part, spot);
    case 'radio_buttons':
      return radioControl(part, spot);
    case 'checkboxes':
      return checkboxesControl(part, spot);
    case 'datepicker':
    case 'timepicker':
      return calendarControl(part, spot);
    case 'plain_text_input':
    case 'number_input':
    case 'email_text_input':
    case 'url_text_input':
      return typedControl(part, spot);
    case 'file_input':
      return fileControl(part, spot);
    default:
      return element('span', { class: 'note' }, [`(This page can’t show a “${part.type}”.)`]);
  }
}
