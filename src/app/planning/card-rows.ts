/**
 * Cards in the rows of a CSV file, as any tracker or sheet writes it. A row becomes a line as it is pasted into a plan, so
 * that both are read in one way. Pure.
 */

import { cardLink, MAX_LINK_LENGTH } from '../cards/card-link.ts';
import type { BadRecord, CsvRecord } from '../csv/csv-lines.ts';
import type { CsvProblem, FileProblem } from '../csv/csv-problem.ts';
import { type CsvFile, csvRows } from '../csv/csv-rows.ts';
import { headingOf } from './card-headings.ts';
import type { KnownPerson } from './card-owners.ts';
import { type BadLine, MAX_CARDS, parseCards } from './card-paste.ts';
import { type CardColumns, cellOf, columnsNamed, lineOf } from './named-columns.ts';

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
  const columns =
    chosen ??
    columnsNamed(
      headers,
      rows.map(({ cells }) => cells),
    );
  const isReadable = columns.title !== undefined && columns.estimate !== undefined;
  const lines = isReadable ? rows.map(({ cells }) => lineOf(cells, columns, people)) : [];
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

function isNoLink(cell: string): boolean {
  return cell !== '' && cardLink(cell) === undefined;
}
