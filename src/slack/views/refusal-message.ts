/** A refusal: what was wrong and how to mend it. */
import type { InputProblem } from '../../app/refusal.ts';
import { visibleText } from '../../app/visible-text.ts';
import { escaped, mrkdwnOf, typed } from '../../words/typed-text.ts';
import { bold, section } from './block-builders.ts';
import { lineSections } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';

const PROBLEM_SECTIONS_MAX = 40;

/**
 * @param words as `refusalWords` gives them.
 * @param problems of a `bad-input`; several are easier to read as a list than run together in `what`.
 */
export function refusalMessage(
  { what, mend }: { readonly what: string; readonly mend: string },
  problems: readonly InputProblem[] = [],
): MessageView {
  if (problems.length < 2) return messageView([section(`${bold(safe(what))}\n${safe(mend)}`)]);
  return messageView([
    ...lineSections(
      bold(`${problems.length} things are wrong`),
      problems.map(({ message }) => `• ${typed(message)}`),
      { maxSections: PROBLEM_SECTIONS_MAX, more: (count) => `… and ${count} more.` },
    ),
    section(safe(mend)),
  ]);
}

/**
 * These words hold our own mentions and code beside what people typed, in which neither is left (`harmlessDetails`).
 * So mentions and code pass, and everything else becomes text, which nothing can ping, link or format with.
 */
function safe(words: string): string {
  return visibleText(words)
    .replace(/\s+/g, ' ')
    .split(/(<@[A-Z0-9]+>|`[^`]*`)/)
    .map((part, i) => (i % 2 === 0 ? mrkdwnOf(part) : part.startsWith('`') ? escaped(part) : part))
    .join('');
}
