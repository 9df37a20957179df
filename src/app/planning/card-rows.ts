/**
 * Cards in the rows of a CSV file, as any tracker or sheet writes it. A row becomes a line as it is pasted into a plan, so
 * that both are read in one way. Pure.
 */

import { cardLink, linksIn, MAX_LINK_LENGTH } from '../cards/card-link.ts';
import type { BadRecord, CsvRecord } from '../csv/csv-lines.ts';
import type { CsvProblem, FileProblem } from '../csv/csv-problem.ts';
import { type CsvFile, csvRows } from '../csv/csv-rows.ts';
import { needsQuotes } from './card-columns.ts';
import { CARD_FIELDS, type CardField, headingOf } from './card-headings.ts';
import { isNobody, type KnownPerson } from './card-owners.ts';
import { type BadLine, isCardKey, MAX_CARDS, MAX_TITLE_LENGTH, parseCards } from './card-paste.ts';

/** In which place of a row each field is, 0 for the first; a field without a place isn't in the file. */
export type CardColumns = Readonly<Partial<Record<CardField, number | undefined>>>;

export interface CardRows {
  /** Names of the columns, in order; `''` where there is none. */
  readonly headers: readonly string[];
  readonly columns: CardColumns;
  readonly rows: number;
  /** Good cards among them. */
  readonly cards: number;
  /** Each with the line of the file on which it begins. Empty while title and estimate have no column. */
  readonly bad: readonly BadLine[];
  /** Lines that are no CSV, or have too many cells. */
  readonly broken: readonly BadRecord<CsvProblem>[];
  /** How many more of both there are, if there are very many. */
  readonly badUntold: number;
  /** Every row as a line of a plan, the bad ones as well; empty when there are more than a plan takes. */
  readonly text: string;
}

/** More of one kind are not told one by one. */
const MOST_BAD_TOLD = 300;

/** @param chosen the columns; undefined: as their names tell */
export function readCardRows(
  { text }: CsvFile,
  people: readonly KnownPerson[],
  chosen?: CardColumns,
): CardRows | FileProblem {
  const file = csvRows(text, likeness);
  if ('code' in file) return file;
  const isHeader = file.header.cells.some((cell) => headingOf(cell) !== undefined);
  const rows = isHeader ? file.rows : [file.header, ...file.rows];
  const headers = file.header.cells.map((cell) => (isHeader ? cell.trim() : ''));
  const columns = chosen ?? columnsNamed(headers, rows);
  const isReadable = columns.title !== undefined && columns.estimate !== undefined;
  const lines = isReadable ? rows.map((row) => lineOf(row, columns, people)) : [];
  // Each on the line that it has in the file, so that what is wrong is named by it.
  const inPlace: string[] = [];
  for (const [i, line] of lines.entries()) inPlace[(rows[i] as CsvRecord).lineNumber - 1] = line;
  const { cards, bad } = parseCards(inPlace.join('\n'), people);
  const linkless = new Set(
    rows.filter(({ cells }) => isNoLink(cellOf(cells, columns.link))).map(({ lineNumber }) => lineNumber),
  );
  return {
    headers,
    columns,
    rows: rows.length,
    cards: cards.length,
    bad: bad
      .slice(0, MOST_BAD_TOLD)
      .map((line) =>
        linkless.has(line.lineNumber)
          ? { ...line, problem: { code: 'card-link', most: MAX_LINK_LENGTH } }
          : line,
      ),
    broken: file.bad.slice(0, MOST_BAD_TOLD),
    badUntold: Math.max(0, bad.length - MOST_BAD_TOLD) + Math.max(0, file.bad.length - MOST_BAD_TOLD),
    text: rows.length > MAX_CARDS ? '' : lines.join('\n'),
  };
}

/** Names that are understood weigh more than any number of cells. */
function likeness(cells: readonly string[]): number {
  return cells.length + 1_000 * cells.filter((cell) => headingOf(cell) !== undefined).length;
}

function columnsNamed(headers: readonly string[], rows: readonly CsvRecord[]): CardColumns {
  const found: Partial<Record<CardField, { place: number; rank: number }>> = {};
  for (const [place, header] of headers.entries()) {
    const heading = headingOf(header);
    if (!heading || (heading.field === 'key' && !holdsKeys(rows, place))) continue;
    const { field, rank } = heading;
    if (rank < (found[field]?.rank ?? Number.POSITIVE_INFINITY)) found[field] = { place, rank };
  }
  return Object.fromEntries(
    CARD_FIELDS.flatMap((field) => (found[field] ? [[field, found[field].place]] : [])),
  );
}

/** Ids of other kinds, such as bare numbers, aren't what people call a card. */
function holdsKeys(rows: readonly CsvRecord[], place: number): boolean {
  const cells = rows.map(({ cells }) => cells[place]?.trim() ?? '').filter((cell) => cell !== '');
  return cells.length > 0 && cells.every(isCardKey);
}

/** Anything longer is named as too long; so much of it tells which one it is. */
const TITLE_KEPT = 2 * MAX_TITLE_LENGTH;

function lineOf({ cells }: CsvRecord, columns: CardColumns, people: readonly KnownPerson[]): string {
  const [key, name, estimate, link] = (['key', 'title', 'estimate', 'link'] as const).map((field) =>
    cellOf(cells, columns[field]),
  ) as [string, string, string, string];
  const hasKey = key === '' || name.toLowerCase().startsWith(key.toLowerCase());
  const title = (hasKey ? name : `${key}: ${name}`).slice(0, TITLE_KEPT).toWellFormed();
  const owner = cellOf(cells, columns.owner);
  return [
    title === '' || needsQuotes(title) ? `"${title.replaceAll('"', '""')}"` : title,
    estimate === '' ? '""' : estimate,
    ...(owner === '' || isNobody(owner, people) ? [] : [/^<?@/.test(owner) ? owner : `@${owner}`]),
    ...(link === '' ? [] : [linksIn(title).length > 0 ? `<${link}>` : link]),
  ].join('\t');
}

function isNoLink(cell: string): boolean {
  return cell !== '' && cardLink(cell) === undefined;
}

/** On one line. */
function cellOf(cells: readonly string[], place: number | undefined): string {
  return (cells[place ?? -1] ?? '').replace(/\s+/g, ' ').trim();
}
