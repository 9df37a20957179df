/**
 * Reads cards as people paste them, one a line: `title, estimate, @owner @owner`, rows of a sheet or a table, or a list. A web
 * address anywhere in the line becomes the card's link. Bad lines are named by number, and nothing is guessed.
 */

import { cardLink, linksIn, MAX_LINK_LENGTH, titleOfLink, withoutEnds } from '../cards/card-link.ts';
import { SOMEBODY } from '../privacy/without-person.ts';
import { type ColumnProblem, isRule, isTableRule, needsQuotes, readLine } from './card-columns.ts';
import { keyAndTitle } from './card-key.ts';
import { findOwners, isNobody, type KnownPerson, type OwnerProblem, peopleCalled } from './card-owners.ts';
import { type Heading, headingIn, lineBelow } from './named-columns.ts';

export const MAX_CARDS = 100;
export const MAX_TITLE_LENGTH = 200;

export interface PastedCard {
  /** 1 for the first line of the text, blank lines counted. */
  readonly lineNumber: number;
  /** The team's own short name at the start of the title (`berth-7: Title`), if there is one. */
  readonly key: string | undefined;
  readonly title: string;
  readonly link?: string | undefined;
  readonly estimatePoints: number;
  readonly ownerIds: readonly string[];
}

export type CardLineProblem =
  | ColumnProblem
  | OwnerProblem
  | { readonly code: 'name-twice'; readonly name: string; readonly line: number }
  | { readonly code: 'no-title' }
  | { readonly code: 'total' }
  | { readonly code: 'title-too-long'; readonly length: number; readonly most: number }
  | { readonly code: 'card-link'; readonly most: number };

export interface BadLine {
  readonly lineNumber: number;
  readonly problem: CardLineProblem;
}

/** What may end a title, or begin it, without making it another one. */
const SENTENCE_MARKS = new Set(' .,;:!?…*_~`"\'“”„‘’«»');
/** What a sheet or a list calls its last line, which is no card. */
const TOTALS = new Set(['total', 'totals', 'subtotal', 'grand total', 'sum']);
/** What parted a title from the link that was taken out of its line. */
const BESIDE_LINK = new Set(' :–—-');

/**
 * Reads a whole pasted text; `cards` holds the good lines. Blank lines, a table's rules and the names of its columns hold no
 * card.
 */
export function parseCards(
  text: string,
  people: readonly KnownPerson[],
): { cards: PastedCard[]; bad: BadLine[] } {
  const cards: PastedCard[] = [];
  const bad: BadLine[] = [];
  const ofKey = new Map<string, PastedCard>();
  const whyTwice = ({ key }: PastedCard): CardLineProblem | undefined => {
    const sameKey = key === undefined ? undefined : ofKey.get(key.toLowerCase());
    return sameKey && { code: 'name-twice', name: key ?? '', line: sameKey.lineNumber };
  };
  let heading: Heading | undefined;
  let isFirst = true;
  const lines = text.split(/\r\n|\n|\r/);
  for (const [i, line] of lines.entries()) {
    if (line.trim() === '' || isRule(line)) continue;
    if (isFirst) {
      isFirst = false;
      heading = headingIn(line, lines.slice(i + 1));
      if (heading || isTableRule(lines[i + 1] ?? '')) continue;
    }
    const lineNumber = i + 1;
    const parsed = parseCardLine(heading ? lineBelow(heading, line, people) : line, people);
    const card = 'code' in parsed ? parsed : { lineNumber, ...parsed };
    const problem = 'code' in card ? card : whyTwice(card);
    if (problem) bad.push({ lineNumber, problem });
    if ('code' in card || problem) continue;
    cards.push(card);
    if (card.key !== undefined) ofKey.set(card.key.toLowerCase(), card);
  }
  return { cards, bad };
}

/** Two titles that differ in capitals, spaces, dashes or the marks around them only are the same to a reader. */
export function titleAtHeart(title: string): string {
  const plain = title
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[\s\u2010-\u2015\u2212-]+/g, ' ');
  return withoutEnds(plain, SENTENCE_MARKS, 'both ends') || plain;
}

/** Reads one line, or says what is wrong with it. */
export function parseCardLine(
  line: string,
  people: readonly KnownPerson[],
): Omit<PastedCard, 'lineNumber'> | CardLineProblem {
  let firstProblem: CardLineProblem | undefined;
  for (const { address, rest } of linksIn(line)) {
    const link = cardLink(address);
    const card =
      link === undefined
        ? ({ code: 'card-link', most: MAX_LINK_LENGTH } as const)
        : parseWithoutLink(rest.replace(/^ +/, '').trimEnd(), people, titleOfLink(link, MAX_TITLE_LENGTH));
    if (!('code' in card)) return { ...card, link };
    firstProblem ??= card;
  }
  return firstProblem ?? parseWithoutLink(line.trim(), people);
}

/** `<@U1|ana>` is `<@U1>`: the stroke would part columns. */
function withoutNamesInMentions(line: string): string {
  return line.replace(/<@([A-Z0-9]{1,40})\|[^<>|]*>/g, '<@$1>');
}

/** The title as text, in which a mention would be an id that nobody can read. */
function namingPeople(title: string, people: readonly KnownPerson[]): string {
  return title.replace(/<@([A-Z0-9]+)>/g, (_, id: string) => {
    const mentioned = people.find(({ userId }) => userId === id);
    return mentioned ? `@${mentioned.name}` : SOMEBODY;
  });
}

/** @param titleOfLink what it is called when there is nothing but its link, which was taken out of the line */
function parseWithoutLink(
  line: string,
  people: readonly KnownPerson[],
  titleOfLink?: string,
): Omit<PastedCard, 'lineNumber'> | CardLineProblem {
  const areOwners = (words: string): boolean => {
    const called = peopleCalled(words, people);
    return isNobody(words, people) || !('code' in called) || called.code === 'several-people';
  };
  const columns = readLine(withoutNamesInMentions(line), areOwners);
  if ('code' in columns) {
    const isTotal = columns.code === 'estimate-in-title' && TOTALS.has(titleAtHeart(columns.title));
    return isTotal ? { code: 'total' } : columns;
  }
  const { title: rawTitle, estimatePoints, owners } = columns;
  const oneLine = namingPeople(rawTitle, people).replace(/\s+/g, ' ').trim();
  const cleanTitle =
    titleOfLink === undefined ? oneLine : withoutEnds(oneLine, BESIDE_LINK, 'both ends') || titleOfLink;
  const { key, title } = keyAndTitle(cleanTitle);
  if (title === '') return { code: 'no-title' };
  if (key === undefined && owners.length === 0 && TOTALS.has(titleAtHeart(title))) return { code: 'total' };
  if (title.length > MAX_TITLE_LENGTH) {
    return { code: 'title-too-long', length: title.length, most: MAX_TITLE_LENGTH };
  }
  const ownerIds = findOwners(
    owners.filter((owner) => !isNobody(owner, people)),
    people,
  );
  if ('code' in ownerIds) return ownerIds;
  return { key, title, estimatePoints, ownerIds };
}

/**
 * A card as a line that reads back the same.
 *
 * @param owners names that tell the people apart, or ids; a leading `@` is put before each.
 */
export function formatCardLine(
  card: Pick<PastedCard, 'key' | 'title' | 'link'>,
  estimate: string,
  owners: readonly string[],
): string {
  const title = card.title.replace(/\s+/g, ' ').trim();
  const isReadAsIs = keyAndTitle(title).title === title && !/^<?@/.test(title);
  const beginning = card.key !== undefined ? `${card.key}: ` : isReadAsIs ? '' : ': ';
  const flat = `${beginning}${title}`;
  const field = needsQuotes(flat) ? `"${flat.replaceAll('"', '""')}"` : flat;
  // Of several addresses the one in angle brackets is the card's.
  const link = card.link === undefined ? [] : [linksIn(flat).length > 0 ? `<${card.link}>` : card.link];
  return [field, estimate, ...owners.map((owner) => `@${owner}`), ...link].join('\t');
}
