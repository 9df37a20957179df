/** Buttons: what a person presses, and the question before it that the app may want. */
import type { Button, ConfirmationDialog } from '@slack/types';
import { byId, element, freshId } from './dom.ts';
import { mrkdwnNodes, type Wording } from './mrkdwn-dom.ts';
import type { Surface } from './surface.ts';

export function buttonControl(button: Button, blockId: string, surface: Surface): HTMLElement {
  const actionId = button.action_id ?? '';
  const attributes = {
    type: 'button',
    class: `button ${button.style ?? ''}`,
    'data-key': `${surface.key}/${blockId}/${actionId}/${button.value ?? ''}`,
  };
  const control = element('button', attributes, [button.text.text], {
    click: async () => {
      if (!(await confirmed(button.confirm, surface.wording))) return;
      await whileBusy(control, () => surface.press(blockId, actionId, button.value));
    },
  });
  return control;
}

/** Resolves true when confirmed; Escape counts as "no". Without a question it is true at once. */
function confirmed(question: ConfirmationDialog | undefined, wording: Wording): Promise<boolean> {
  if (!question) return Promise.resolve(true);
  const dialog = byId('confirm-dialog', HTMLDialogElement);
  const titleId = freshId();
  const body =
    question.text.type === 'mrkdwn'
      ? mrkdwnNodes(question.text.text, wording)
      : [element('p', {}, [question.text.text])];
  const answer = (label: string, value: string, style: string) =>
    element('button', { type: 'submit', value, class: `button ${style}` }, [label]);
  dialog.setAttribute('aria-labelledby', titleId);
  dialog.replaceChildren(
    element('form', { method: 'dialog', class: 'sheet' }, [
      element('h2', { id: titleId }, [question.title?.text ?? 'Are you sure?']),
      element('div', { class: 'prose' }, body),
      element('div', { class: 'sheet-foot' }, [
        answer(question.deny?.text ?? 'No', 'no', ''),
        answer(question.confirm?.text ?? 'Yes', 'yes', 'primary'),
      ]),
    ]),
  );
  dialog.returnValue = '';
  dialog.showModal();
  return new Promise((resolve) => {
    dialog.addEventListener('close', () => resolve(dialog.returnValue === 'yes'), { once: true });
  });
}

/**
 * Marks a button as busy until the work is done; an impatient second press does nothing. It is not disabled: that would
 * take the keyboard focus away from it.
 */
export async function whileBusy(button: HTMLButtonElement, work: () => Promise<void>): Promise<void> {
  if (button.ariaBusy === 'true') return;
  button.ariaBusy = button.ariaDisabled = 'true';
  try {
    await work();
  } finally {
    button.ariaBusy = button.ariaDisabled = null;
  }
}
