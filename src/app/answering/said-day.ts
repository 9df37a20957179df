/** The day that an answer in words says it is about. */
import { withoutLeadingDay } from '../read-day.ts';
import { type AnswerVocabulary, ENGLISH, isWordOfAnswers } from './answer-vocabulary.ts';
import { isNumber, plainly, wordsOf } from './typed-words.ts';

/** What parts two things that are said, of which the day may be that of one only. */
const BETWEEN_CLAUSES = /[,;:?\n\r]|[.!]\s/;

/**
 * The day that the words begin with; else yesterday, where their end says that something was finished, or was so much, then.
 *
 * @example saidDay('berth-7 finished yesterday') → { day: 'yesterday', rest: 'berth-7 finished' }
 */
export function saidDay(
  text: string,
  { yesterday, done, was, points, left, filler }: AnswerVocabulary = ENGLISH,
): { readonly day: string | undefined; readonly rest: string } {
  const leading = withoutLeadingDay(text);
  if (leading.day !== undefined || BETWEEN_CLAUSES.test(text.trim())) return leading;
  const words = wordsOf(text);
  const day = words.pop() ?? '';
  if (!yesterday.includes(plainly(day))) return leading;
  const plain = words.map(plainly);
  const before = plain.at(-1) ?? '';
  const first = plain.find((word) => !filler.includes(word)) ?? '';
  const endsInDone = done.includes(before) || (done.includes(first) && !isWordOfAnswers(before));
  const endsInAmount = isNumber(before) || [...points, ...left].includes(before);
  const wasSo = endsInAmount && plain.some((word) => was.includes(word));
  return endsInDone || wasSo ? { day, rest: words.join(' ') } : leading;
}
