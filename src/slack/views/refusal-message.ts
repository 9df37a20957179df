/** A refusal: what is wrong and what to do about it. */
import type { FieldProblem } from '../../words/problems.ts';
import type { RefusalWords } from '../../words/refusals.ts';
import { mrkdwn } from '../../words/say.ts';
import { typed } from '../../words/typed-text.ts';
import { bold, section } from './block-builders.ts';
import { lineList } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';

/**
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
