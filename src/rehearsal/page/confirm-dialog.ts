/** Asks "are you sure" before a click that the app wants confirmed. */
import type { ConfirmationDialog } from '@slack/types';
import { byId, element, freshId } from './dom.ts';
import { mrkdwnNodes, type Wording } from './mrkdwn-dom.ts';

/** Resolves true when confirmed; Escape counts as "no". Without a question it is true at once. */
export function confirmed(question: ConfirmationDialog | undefined, wording: Wording): Promise<boolean> {
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
        answer(question.confirm?.text ?? 'Yes', 'yes', question.style === 'danger' ? 'danger' : 'primary'),
      ]),
    ]),
  );
  dialog.returnValue = '';
  dialog.showModal();
  return new Promise((resolve) => {
    dialog.addEventListener('close', () => resolve(dialog.returnValue === 'yes'), { once: true });
  });
}
