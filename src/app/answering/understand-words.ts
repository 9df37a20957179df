/**
 * Understands an answer in words: `3` (one card), `2, 0` (in order), `2: 3` (card 2 has 3 left),
 * `2: 3 worked 1 surprise 2`, `berth-7: 3`, several parted by commas, semicolons or lines; `same` and `away`.
 */
import { parsePoints } from '../../sprint/points.ts';

/** What was said about the card at a place in the prompt's list, 1 for the first. */
export interface WordsForCard {
  readonly position: number;
  readonly leftPoints: number;
  readonly workedPoints: number | undefined;
  readonly surprisePoints: number | undefined;
}

export type Unclear =
  | { readonly code: 'two-ways' }
  | { readonly code: 'not-an-answer'; readonly typed: string }
  | { readonly code: 'not-points'; readonly typed: string }
  | { readonly code: 'no-such-card'; readonly typed: string }
  | { readonly code: 'said-twice'; readonly typed: string; readonly what: 'worked' | 'surprise' }
  | { readonly code: 'answered-twice'; readonly card: string }
  | { readonly code: 'no-number' }
  | { readonly code: 'wrong-count'; readonly cards: number; readonly numbers: number };

export type Understood =
  | { readonly kind: 'answers'; readonly answers: readonly WordsForCard[] }
  | { readonly kind: 'unchanged' }
  | { readonly kind: 'away' }
  | { readonly kind: 'unclear'; readonly problems: readonly Unclear[] };

const UNCHANGED = /^(?:same|no change|nothing changed|unchanged|nothing)[.!]?$/i;
const AWAY = /^(?:away|away today|i am away|i['’]m away|off today)[.!]?$/i;
/** More would be a wall of text; correcting the first ones corrects most. */
const MAX_PROBLEMS = 5;
const ANSWER =
  /^(?:(?:card\s+)?([^\s:]{1,40})\s*:\s*)?(\S+?)(?:\s+(?:points?\s+)?left)?((?:\s+(?:worked|surprise)\s+\S+)*)$/i;

/** `2,5` may be two and a half, or 2 and 5. A space, as in `2, 5`, or a name, as in `2: 3,5`, settles it. */
const UNSETTLED_COMMA = /(?<=\d),(?=5(?!\s*:|[\d.½]))/;
const SETTLED_SEPARATOR = /[;\n\r]+|,(?!5(?!\s*:|[\d.½]))|(?<!\d),/;

/**
 * @param cardCount how many open cards the prompt listed.
 * @param positionOf finds a card's place by what comes before the colon; undefined when there is none.
 */
export function understandWords(
  text: string,
  cardCount: number,
  positionOf: (reference: string) => number | undefined,
): Understood {
  const said = text.trim();
  if (UNCHANGED.test(said)) return { kind: 'unchanged' };
  if (AWAY.test(said)) return { kind: 'away' };
  const parts = splitParts(said, cardCount);
  if (parts === undefined) return { kind: 'unclear', problems: [{ code: 'two-ways' }] };
  const problems: Unclear[] = [];
  const answers: (WordsForCard & { called: string })[] = [];
  for (const [i, part] of parts.entries()) {
    const answer = understandPart(part, i + 1, positionOf);
    if ('code' in answer) problems.push(answer);
    else answers.push(answer);
  }
  const anyNamed = parts.some((part) => part.includes(':'));
  const positions = answers.map(({ position }) => position);
  const twice = answers.find(({ position }, i) => positions.indexOf(position) !== i);
  if (twice) problems.push({ code: 'answered-twice', card: twice.called });
  if (problems.length === 0 && answers.length === 0) problems.push({ code: 'no-number' });
  if (problems.length === 0 && !anyNamed && answers.length !== cardCount) {
    problems.push({ code: 'wrong-count', cards: cardCount, numbers: answers.length });
  }
  if (problems.length > 0) return { kind: 'unclear', problems: problems.slice(0, MAX_PROBLEMS) };
  return { kind: 'answers', answers: answers.map(({ called: _, ...answer }) => answer) };
}

/** In order, each with what it is about; undefined when a comma might be a decimal comma. */
function splitParts(text: string, cardCount: number): string[] | undefined {
  const inParts = (some: readonly string[]): string[] =>
    some.map((part) => part.trim()).filter((part) => part !== '');
  const withHalves = inParts(text.split(SETTLED_SEPARATOR));
  if (text.includes(':')) return withHalves;
  const withoutHalves = inParts(withHalves.flatMap((part) => part.split(UNSETTLED_COMMA)));
  // As many numbers as there are cards is what people mean.
  if (withoutHalves.length === cardCount) return withoutHalves;
  const isBetween = withHalves.length < cardCount && cardCount < withoutHalves.length;
  return isBetween ? undefined : withHalves;
}

function understandPart(
  part: string,
  place: number,
  positionOf: (reference: string) => number | undefined,
): (WordsForCard & { called: string }) | Unclear {
  const match = ANSWER.exec(part);
  const leftPoints = match?.[2] === undefined ? undefined : parsePoints(match[2]);
  if (!match || leftPoints === undefined) {
    return { code: 'not-an-answer', typed: part };
  }
  const name = match[1];
  const position = name === undefined ? place : positionOf(name);
  if (position === undefined) return { code: 'no-such-card', typed: name ?? '' };
  const extras = new Map<string, number>();
  for (const [, word, amount] of (match[3] ?? '').matchAll(/(worked|surprise)\s+(\S+)/gi)) {
    const points = parsePoints((amount as string).replace(/^[-−]/, ''));
    if (points === undefined) return { code: 'not-points', typed: amount as string };
    const extra = (word as string).toLowerCase() as 'worked' | 'surprise';
    if (extras.has(extra)) return { code: 'said-twice', typed: part, what: extra };
    extras.set(extra, /^[-−]/.test(amount as string) ? 0 - points : points);
  }
  return {
    called: name ?? String(place),
    position,
    leftPoints,
    workedPoints: extras.get('worked'),
    surprisePoints: extras.get('surprise'),
  };
}
