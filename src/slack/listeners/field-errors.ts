/** Puts what is wrong beside the fields of a form, so that the form stays open with what was typed. */
import type { Directory } from '../../app/ports/app-dependencies.ts';
import type { Actor } from '../../app/team/team.ts';
import { visibleText } from '../../app/visible-text.ts';
import { ANSWER_PARTS, answerField } from '../ids.ts';
import { DROP_FIELDS } from '../views/cards/card-forms.ts';
import { troubleWords } from '../views/trouble-views.ts';
import type { Failure } from './failure-words.ts';
import { withoutMentions } from './mentioned-names.ts';

/** Where a refusal goes that is about no field, if the form has one of these. */
const MOST_LIKELY_FIELDS: readonly string[] = [DROP_FIELDS.reason];

/**
 * @param blockIds inputs of the form, in order
 * @returns the platform's `errors`, by `block_id`; undefined when the form has no field to put them at
 */
export async function fieldErrors(
  failure: Failure,
  blockIds: readonly string[],
  actor: Actor,
  directory: Directory,
): Promise<Record<string, string> | undefined> {
  const fallback = MOST_LIKELY_FIELDS.find((field) => blockIds.includes(field)) ?? blockIds[0];
  if (fallback === undefined) return undefined;
  if (failure.kind === 'trouble') {
    // A form that was recorded, or may well have been, does not stay open as if it were to be sent again.
    if (failure.written === 'uncertain' || failure.written === 'kept') return undefined;
    return { [fallback]: troubleWords(failure.errorId, failure.written) };
  }
  const { words, problems } = failure;
  if (problems.length === 0) {
    return { [fallback]: await withNames(`${words.what} ${words.fix}`, actor, directory) };
  }
  const byField = new Map<string, string[]>();
  for (const { field, message } of problems) {
    const place = placeFor(field, blockIds) ?? fallback;
    byField.set(place, [...(byField.get(place) ?? []), message]);
  }
  return Object.fromEntries(
    [...byField].map(([field, messages]) => [field, visibleText(messages.join(' '))]),
  );
}

/** The field itself, or of the same card one that the form does show. */
function placeFor(field: string, blockIds: readonly string[]): string | undefined {
  if (blockIds.includes(field)) return field;
  const part = ANSWER_PARTS.find((name) => field.startsWith(answerField(name, '')));
  if (part === undefined) return undefined;
  const left = answerField('left', field.slice(answerField(part, '').length));
  return blockIds.includes(left) ? left : undefined;
}

/** Errors of a field are plain text: mentions become names, and marks of formatting go. */
async function withNames(text: string, { workspaceId }: Actor, directory: Directory): Promise<string> {
  const named = await withoutMentions({ workspaceId, directory }, text);
  return named.replaceAll('`', '').replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');
}
