/** Takes out of an answer in words what people say freely: on what a card is blocked, and notes. */
import { withoutEnds } from '../cards/card-link.ts';
import type { AnswerVocabulary } from './answer-vocabulary.ts';
import { isNumber, wordsOf } from './typed-words.ts';

/** What parts a free text from what is before it. */
const GAPS = new Set(' \t\u00a0,-–—');
/** What parts it from its keyword. */
const BETWEEN = new Set([...GAPS, ':']);

/** What a free text says. */
export type FreeKind = 'blocked' | 'note';
export interface FreeText {
  readonly kind: FreeKind;
  readonly words: string;
}

/** Points of a card that is named, or bare; a bare number may be that of a card as well. `more`: what was worked or surprise. */
export type SaidInClause = 'named' | 'bare' | 'card-or-bare' | 'more';

/** What may part a free text from an answer that follows. */
const CLAUSE_END = /(,\s+|\s[-–—]\s)/;

/**
 * A free text goes on to the end of the line, to a semicolon or to the next answer, other commas included. Its keyword stays
 * in its place.
 *
 * @param saidIn what a clause says by itself, before a keyword or without one
 * @returns `2 left blocked`, and on what, for `2 left, blocked: the key, then the door`
 */
export function takeFreeTexts(
  text: string,
  vocabulary: AnswerVocabulary,
  saidIn: (clause: string, isBeforeKeyword: boolean) => SaidInClause | undefined,
): { readonly text: string; readonly texts: readonly FreeText[] } {
  const texts: FreeText[] = [];
  const reasonOfSurprise = new RegExp(
    `(?<![\\p{L}\\d])(${vocabulary.surprise.join('|')})( ?[\\d.,½]{0,5}) ?:(?= ?[^ \\d½])`,
    'iu',
  );
  const take = (typed: string): string => {
    const line = withSurpriseNoted(typed, reasonOfSurprise, vocabulary);
    const first = keywordIn(line, vocabulary, '(?=[\\s:,]|$)');
    if (!first) return typed;
    const kinds = [first.kind];
    const before = withoutEnds(first.before, GAPS, 'end');
    const saidBefore = saidIn(before.split(',').at(-1) ?? '', false);
    const isAnswer = (clause: string): boolean => {
      const keyword = keywordIn(clause, vocabulary, '(?=[\\s:,]|$)');
      const said = saidIn(keyword?.before ?? clause, keyword !== undefined);
      // `2 blocked by legal, 5` may be about card 2, or two answers.
      return said !== undefined && (said === 'named' || saidBefore !== 'card-or-bare');
    };
    let { told, answer, after } = untilAnswer(first.after, isAnswer);
    // A second keyword counts only with its colon: the words may hold it themselves.
    const second = keywordIn(told, vocabulary, '\\s*:');
    if (second && second.kind !== first.kind) {
      told = second.before;
      kinds.push(second.kind);
    }
    texts.push({ kind: first.kind, words: freeWords(told) });
    if (second && second.kind !== first.kind)
      texts.push({ kind: second.kind, words: freeWords(second.after) });
    // `blocked by legal, 5` is `5, blocked by legal`.
    const saidAfter = saidIn(answer, false);
    const [isMore, isBare] = [saidAfter === 'more', saidAfter === 'bare' || saidAfter === 'card-or-bare'];
    const isAmountOfIt = isMore || (isBare && saidBefore === undefined);
    const part = [before, ...(isAmountOfIt ? [answer] : []), ...kinds.map((kind) => vocabulary[kind][0])];
    const others = isAmountOfIt ? after : `${answer}${after}`;
    return [part.join(' '), ...(others === '' ? [] : [take(others.replace(/^[,\s]+/, ''))])].join('; ');
  };
  const rest = text.split(/([;\n\r]+)/).map((typed) => take(typed));
  return { text: rest.join(''), texts };
}

/** The words before the next answer, which begins a clause, that answer, and what follows it. */
function untilAnswer(text: string, isAnswer: (clause: string) => boolean) {
  // Every second piece is what parts two clauses.
  const pieces = text.split(CLAUSE_END);
  const at = pieces.findIndex((piece, i) => i > 0 && i % 2 === 0 && isAnswer(piece));
  if (at < 0) return { told: text, answer: '', after: '' };
  return {
    told: pieces.slice(0, at - 1).join(''),
    answer: pieces[at] ?? '',
    after: pieces.slice(at + 1).join(''),
  };
}

/** The reason of surprise work as a note: `surprise 1 note: two harbours` for `surprise 1: two harbours`. */
function withSurpriseNoted(line: string, reason: RegExp, { note }: AnswerVocabulary): string {
  return line.replace(reason, (_, word: string, amount: string, at: number) => {
    const isAmount = amount.trim() !== '' || isNumber(wordsOf(line.slice(0, at)).at(-1) ?? '');
    return `${isAmount ? `${word}${amount} ` : ''}${note[0]}:`;
  });
}

function keywordIn(text: string, vocabulary: AnswerVocabulary, follows: string) {
  const words = [...vocabulary.blocked, ...vocabulary.note].join('|');
  const found = new RegExp(`(?:^|[\\s,:])(${words})${follows}`, 'i').exec(text);
  if (!found) return undefined;
  const word = found[1] as string;
  const kind: FreeKind = vocabulary.note.includes(word.toLowerCase()) ? 'note' : 'blocked';
  const at = found.index + found[0].toLowerCase().indexOf(word.toLowerCase());
  return { kind, before: text.slice(0, at), after: text.slice(at + word.length) };
}

function freeWords(text: string): string {
  return withoutEnds(text, BETWEEN, 'both ends');
}

/** The part without the keywords at its end, and which they were. */
export function withoutKeywords(
  part: string,
  vocabulary: AnswerVocabulary,
): { readonly rest: string; readonly kinds: readonly FreeKind[] } {
  const kinds: FreeKind[] = [];
  let rest = part.trim();
  for (;;) {
    const kind = (['blocked', 'note'] as const).find((one) => ` ${rest}`.endsWith(` ${vocabulary[one][0]}`));
    if (!kind) return { rest, kinds };
    kinds.unshift(kind);
    rest = rest.slice(0, -(vocabulary[kind][0] ?? '').length).trimEnd();
  }
}
