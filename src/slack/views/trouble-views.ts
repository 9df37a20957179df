/** When something was not done, because it is refused or the bot itself is at fault or slow: never silence. */

import type { ModalView } from '@slack/types';
import type { FieldProblem } from '../../words/problems.ts';
import type { RefusalWords } from '../../words/refusals.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { typed } from '../../words/typed-text.ts';
import { bold, section } from './block-builders.ts';
import { noticeView } from './form-view.ts';
import { lineList } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';

/**
 * What is wrong, and what to do about it.
 *
 * @param words in the platform's markup
 * @param problems of a `bad-input`; several are easier to read as a list than run together in `what`
 */
export function refusalMessage(
  { what, fix }: RefusalWords,
  problems: readonly FieldProblem[] = [],
): MessageView {
  if (problems.length < 2) return messageView([section(`${bold(what)}\n${fix}`)]);
  return messageView([
    lineList(
      bold(mrkdwn('refusal-things-wrong', { count: problems.length })),
      problems.map(({ message }) => `• ${typed(message)}`),
      (count) => mrkdwn('refusal-more-things', { count }),
    ),
    section(fix),
  ]);
}

/**
 * What people read in a workspace that the bot does not serve.
 *
 * @param installUrl the page on which the bot can be installed
 */
export function notInstalledMessage(installUrl: string): MessageView {
  return refusalMessage({
    what: mrkdwn('refusal-not-installed'),
    fix: mrkdwn('refusal-not-installed-fix', { url: installUrl }),
  });
}

/** How far a request had got when something went wrong: what it wrote is kept, is not, or is not known (two ways). */
type Kept = 'nothing' | 'unsettled' | 'uncertain' | 'kept';

function messageOf(kept: Kept) {
  return kept === 'unsettled' ? 'trouble-uncertain' : (`trouble-${kept}` as const);
}

/** Plain text, for an error below a field. */
export function troubleWords(reference: string, kept: Kept): string {
  return say(messageOf(kept), { reference });
}

export function troubleMessage(reference: string, kept: Kept): MessageView {
  return messageView([section(mrkdwn(messageOf(kept), { reference }))]);
}

export function troubleFormView(reference: string, kept: Kept): ModalView {
  const title = kept === 'kept' ? say('trouble-kept-title') : say('trouble-title');
  return noticeView(title, [section(mrkdwn(messageOf(kept), { reference }))]);
}

/** For a form that arrived twice: the first one was carried out. */
export function sentTwiceMessage(): MessageView {
  return messageView([section(mrkdwn('trouble-sent-twice'))]);
}

/** In the place of a form whose work takes longer than the platform waits. */
export function workingFormView(): ModalView {
  return noticeView(say('trouble-working-title'), [section(mrkdwn('trouble-working'))]);
}

/** Shows a message in the place of a form. */
export function doneFormView(message: MessageView): ModalView {
  return noticeView(say('trouble-done-title'), message.blocks);
}

/** Shows a refusal in the place of a form. */
export function refusedFormView(message: MessageView): ModalView {
  return noticeView(say('trouble-refused-title'), message.blocks);
}
