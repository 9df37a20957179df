/** Buttons and the menu of further choices: what a person presses. */
import type { Button, Overflow } from '@slack/types';
import { confirmed } from './confirm-dialog.ts';
import { element } from './dom.ts';
import { isSafeLink } from './mrkdwn-inline.ts';
import { controlAttributes, type Spot } from './surface.ts';

/** A button; one with an address opens it beside the page as well. */
export function buttonControl(button: Button, spot: Spot): HTMLElement {
  const actionId = button.action_id ?? '';
  const attributes = {
    type: 'button',
    class: `button ${button.style ?? ''}`,
    'data-key': `${spot.surface.key}/${spot.blockId}/${actionId}/${button.value ?? ''}`,
    'aria-label': button.accessibility_label,
  };
  const control = element('button', attributes, [button.text.text], {
    click: async () => {
      if (!(await confirmed(button.confirm, spot.surface.wording))) return;
      if (button.url && isSafeLink(button.url)) window.open(button.url, '_blank', 'noreferrer');
      await whileBusy(control, () => spot.surface.act(spot.blockId, actionId, button.value ?? null));
    },
  });
  return control;
}

/** The menu behind "More": a disclosure with one button for each choice. */
export function overflowControl(menu: Overflow, spot: Spot): HTMLElement {
  const actionId = menu.action_id ?? '';
  const choices = menu.options.map((option) => {
    const choice = element('button', { type: 'button', class: 'choice' }, [option.text.text], {
      click: async () => {
        details.open = false;
        if (!(await confirmed(menu.confirm, spot.surface.wording))) return;
        if (option.url && isSafeLink(option.url)) window.open(option.url, '_blank', 'noreferrer');
        await whileBusy(choice, () => spot.surface.act(spot.blockId, actionId, option.value ?? null));
      },
    });
    return element('li', {}, [choice]);
  });
  const names = controlAttributes(spot, actionId, 'More choices');
  const summary = element('summary', { class: 'button', 'data-key': names['data-key'] }, ['More …']);
  const details = element('details', { class: 'menu' }, [summary, element('ul', {}, choices)], {
    keydown: (event) => {
      if (event.key !== 'Escape' || !details.open) return;
      event.stopPropagation();
      details.open = false;
      summary.focus();
    },
  });
  return details;
}

/** Disables a button until the work is done, so that an impatient second press does nothing. */
export async function whileBusy(button: HTMLButtonElement, work: () => Promise<void>): Promise<void> {
  if (button.disabled) return;
  const hadFocus = document.activeElement === button;
  button.disabled = true;
  button.setAttribute('aria-busy', 'true');
  try {
    await work();
  } finally {
    button.disabled = false;
    button.removeAttribute('aria-busy');
    if (hadFocus && document.activeElement === document.body) button.focus();
  }
}
