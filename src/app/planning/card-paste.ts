/**
 * Reads cards as people paste them, one a line: `title, estimate, @owner @owner`. Commas, semicolons or
 * tabs separate the columns; a title that holds the separator may be put in double quotes. A web address anywhere in the
 * line becomes the card's link. Bad lines are named by number, and nothing is guessed.
 */
import { MAX_POINTS, parsePoints } from '../../sprint/points.ts';
import { cardLink, linksIn, MAX_LINK_LENGTH, titleOfLink, withoutEnds } from '../cards/card-link.ts';

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
  | { readonly code: 'name-twice'; readonly name: string; readonly line: number }
  | { readonly code: 'no-title' }
  | { readonly code: 'title-too-long'; readonly length: number; readonly most: number }
  | { readonly code: 'card-link'; readonly most: number }
  | { readonly code: 'no-estimate' }
  | { readonly code: 'not-an-estimate'; readonly typed: string; readonly most: number }
  | { readonly code: 'open-quote' }
  | {
      readonly code: 'several-people';
      readonly typed: string;
      readonly people: readonly { readonly person: string; readonly id: string }[];
    }
  | { readonly code: 'no-such-person'; readonly typed: string; readonly people: readonly string[] };

export interface BadLine {
  readonly lineNumber: number;
  readonly problem: CardLineProblem;
}

/** Somebody who may own a card. */
export interface KnownPerson {
  readonly userId: string;
  readonly name: string;
}

type Separator = '\t' | ';' | ',';

/** A line is parted by the first of these that makes sense of it, so a title may hold the later ones. */
/** What parted a title from the link that was taken out of its line. */
const BESIDE_LINK = new Set(' :–—-');

const SEPARATORS: readonly Separator[] = ['\t', ';', ','];

/**
 * With a space in place of the colon only capitals count as a key, since words such as `Phase-2` begin a
 * title as well.
 */
const KEY_AND_TITLE = /^(?:([A-Za-z][A-Za-z0-9]{0,9}-\d{1,7}):\s*|([A-Z][A-Z0-9]{0,9}-\d{1,7})\s+)(\S.*)$/;
const MENTION = /^<@([A-Z0-9]+)(?:\|[^>]*)?>$/;

/** Reads a whole pasted text. Blank lines are passed over; `cards` holds the good lines. */
export function parseCards(
  text: string,
  people: readonly KnownPerson[],
): { cards: PastedCard[]; bad: BadLine[] } {
  const cards: PastedCard[] = [];
  const bad: BadLine[] = [];
  const lineOfKey = new Map<string, number>();
  for (const [i, line] of text.split(/\r\n|\n|\r/).entries()) {
    if (line.trim() === '') continue;
    const lineNumber = i + 1;
    const parsed = parseCardLine(line, people);
    if ('code' in parsed) {
      bad.push({ lineNumber, problem: parsed });
      continue;
    }
    if (parsed.key !== undefined) {
      const key = parsed.key.toLowerCase();
      const line = lineOfKey.get(key);
      if (line !== undefined) {
        bad.push({ lineNumber, problem: { code: 'name-twice', name: parsed.key, line } });
        continue;
      }
      lineOfKey.set(key, lineNumber);
    }
    cards.push({ lineNumber, ...parsed });
  }
  return { cards, bad };
}

/**
 * Reads one line, or says what is wrong with it.
 *
 * @param link where it is known already; then the line may hold other addresses
 */
export function parseCardLine(
  line: string,
  people: readonly KnownPerson[],
  link?: string,
): Omit<PastedCard, 'lineNumber'> | CardLineProblem {
  if (link !== undefined) {
    const card = parseWithoutLink(line.trim(), people);
    return 'code' in card ? card : { ...card, link };
  }
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

/** @param titleOfLink what it is called when there is nothing but its link, which was taken out of the line */
function parseWithoutLink(
  line: string,
  people: readonly KnownPerson[],
  titleOfLink?: string,
): Omit<PastedCard, 'lineNumber'> | CardLineProblem {
  const columns = readColumns(line);
  if ('code' in columns) return columns;
  const { title: rawTitle, estimatePoints, owners } = columns;
  const oneLine = rawTitle.replace(/\s+/g, ' ').trim();
  const cleanTitle =
    titleOfLink === undefined ? oneLine : withoutEnds(oneLine, BESIDE_LINK, 'both ends') || titleOfLink;
  const withKey = KEY_AND_TITLE.exec(cleanTitle);
  const title = withKey?.[3] ?? cleanTitle;
  if (title === '') return { code: 'no-title' };
  if (title.length > MAX_TITLE_LENGTH) {
    return { code: 'title-too-long', length: title.length, most: MAX_TITLE_LENGTH };
  }
  const ownerIds = findOwners(owners, people);
  if ('code' in ownerIds) return ownerIds;
  return { key: withKey?.[1] ?? withKey?.[2], title, estimatePoints, ownerIds };
}

/** The line in columns, or what is wrong with it as its first separator would have it. */
function readColumns(line: string): Columns | CardLineProblem {
  let firstProblem: CardLineProblem | undefined;
  for (const separator of SEPARATORS) {
    const fields = splitFields(line, separator);
    if (fields === undefined) return { code: 'open-quote' };
    if (fields.length === 1) continue;
    const columns = findColumns(separator === ',' ? joinDecimalCommas(fields) : fields, separator);
    if (!('code' in columns)) return columns;
    firstProblem ??= columns;
  }
  return firstProblem ?? estimateProblem([]);
}

/**
 * Splits at the separator outside of double quotes. Quotes count when they hold a whole field; a doubled
 * quote in them is a quote. Others, as in `5" screen` or `"Big" button`, are part of the text.
 */
function splitFields(line: string, separator: Separator): string[] | undefined {
  const fields: string[] = [];
  let from = 0;
  while (from <= line.length) {
    const quoted = quotedField(line, from);
    if (quoted === 'unclosed') return undefined;
    const next = line.indexOf(separator, quoted?.end ?? from);
    const end = next < 0 ? line.length : next;
    fields.push(quoted?.end === end ? quoted.text : line.slice(from, end));
    from = end + 1;
  }
  return fields;
}

/** The quoted field that begins here, with the place where it ends: at a separator or the line's end. */
function quotedField(line: string, from: number): { text: string; end: number } | 'unclosed' | undefined {
  const open = endOfSpaces(line, from);
  if (line[open] !== '"') return undefined;
  let close = line.indexOf('"', open + 1);
  while (close >= 0 && line[close + 1] === '"') close = line.indexOf('"', close + 2);
  if (close < 0) return 'unclosed';
  const end = endOfSpaces(line, close + 1);
  if (end < line.length && !isSeparator(line[end])) return undefined;
  return { text: line.slice(open + 1, close).replaceAll('""', '"'), end };
}

function isSeparator(char: string | undefined): boolean {
  return SEPARATORS.some((separator) => separator === char);
}

/** The next place that holds a separator or anything but white space. */
function endOfSpaces(line: string, from: number): number {
  let place = from;
  while (place < line.length && !isSeparator(line[place]) && /\s/.test(line[place] as string)) place += 1;
  return place;
}

interface Columns {
  readonly title: string;
  readonly estimatePoints: number;
  readonly owners: readonly string[];
}

/** With commas as separators `, 0,5` arrives as two fields, without a space between; puts them together. */
function joinDecimalCommas(fields: readonly string[]): string[] {
  const joined: string[] = [];
  for (const field of fields) {
    const before = joined.at(-1);
    const isHalf =
      joined.length > 1 && before !== undefined && /^\s*\d{1,3}$/.test(before) && /^5\s*$/.test(field);
    if (isHalf) joined[joined.length - 1] = `${before},${field}`;
    else joined.push(field);
  }
  return joined;
}

/**
 * The estimate is the last field that is an amount of points; what comes before it is the title (so an
 * unquoted comma in a title does no harm), what comes after it the owners.
 */
function findColumns(rawFields: readonly string[], separator: Separator): Columns | CardLineProblem {
  const fields = rawFields.map((field) => field.trim());
  const last = fields.findLastIndex((field, i) => i > 0 && parsePoints(field) !== undefined);
  const estimatePoints = parsePoints(fields[last] ?? '');
  if (estimatePoints === undefined) return estimateProblem(fields);
  const joint = separator === '\t' ? ' ' : `${separator} `;
  return { title: fields.slice(0, last).join(joint), estimatePoints, owners: fields.slice(last + 1) };
}

function estimateProblem(fields: readonly string[]): CardLineProblem {
  const candidate = fields
    .slice(1)
    .find((field) => field !== '' && !field.startsWith('@') && !field.startsWith('<@'));
  if (candidate === undefined) return { code: 'no-estimate' };
  return { code: 'not-an-estimate', typed: candidate, most: MAX_POINTS };
}

function findOwners(fields: readonly string[], people: readonly KnownPerson[]): string[] | CardLineProblem {
  const ownerIds: string[] = [];
  for (const field of fields.map((text) => text.replace(/\s+/g, ' ').trim())) {
    // A whole name first: it may hold what parts names elsewhere.
    const parts =
      'code' in personCalled(field, people)
        ? field.split(/ ?[,;&+] ?| and |(?<=>) ?(?=<@)| (?=[@<])/i)
        : [field];
    for (const part of parts.filter((text) => text !== '')) {
      const person = personCalled(part, people);
      if ('code' in person) return person;
      if (!ownerIds.includes(person.userId)) ownerIds.push(person.userId);
    }
  }
  return ownerIds;
}

/** People as they are called in a row: `@ana @ben`, `Ana and Ben`. */
export function peopleCalled(text: string, people: readonly KnownPerson[]): string[] | CardLineProblem {
  return findOwners([text], people);
}

/** The member that is meant, or why that can't be said. */
function personCalled(called: string, people: readonly KnownPerson[]): KnownPerson | CardLineProblem {
  const mentioned = MENTION.exec(called)?.[1];
  const wanted = called.replace(/^@/, '').toLowerCase();
  const matches = [
    ({ userId }: KnownPerson) => userId === mentioned || userId.toLowerCase() === wanted,
    ({ name }: KnownPerson) => name.toLowerCase() === wanted,
    ({ name }: KnownPerson) => name.toLowerCase().split(/\s+/)[0] === wanted,
  ]
    .map((isMeant) => people.filter(isMeant))
    .find((some) => some.length > 0);
  const [person, ...others] = matches ?? [];
  if (person && others.length === 0) return person;
  if (person) {
    const several = [person, ...others].map(({ name, userId }) => ({ person: name, id: userId }));
    return { code: 'several-people', typed: called, people: several };
  }
  return { code: 'no-such-person', typed: called, people: people.map(({ name }) => name) };
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
  const title = card.key === undefined ? card.title : `${card.key}: ${card.title}`;
  const flat = title.replace(/\s+/g, ' ').trim();
  const field = flat.startsWith('"') ? `"${flat.replaceAll('"', '""')}"` : flat;
  const link = card.link === undefined ? [] : [card.link];
  return [field, estimate, ...owners.map((owner) => `@${owner}`), ...link].join('\t');
}
