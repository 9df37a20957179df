/** Reads rows below the names of their columns, in a file or in what is pasted: each becomes a line as people type it. */
import { linksIn } from '../cards/card-link.ts';
import { cellsOf, isRule, needsQuotes, SEPARATORS, type Separator } from './card-columns.ts';
import { CARD_FIELDS, type CardField, headingOf } from './card-headings.ts';
import { isCardKey } from './card-key.ts';
import { isNobody, type KnownPerson } from './card-owners.ts';

/** In which place of a row each field is, 0 for the first; a field without a place isn't there. */
export type CardColumns = Readonly<Partial<Record<CardField, number | undefined>>>;

/** Names of columns in what is pasted. */
export interface Heading {
  readonly separator: Separator;
  readonly columns: CardColumns;
  /** How many cells a row has. */
  readonly width: number;
}

/** The names of the columns of the lines below, if the line holds any. */
export function headingIn(line: string, below: readonly string[]): Heading | undefined {
  for (const separator of SEPARATORS) {
    const names = cellsOf(line, separator) ?? [];
    const rows = below.flatMap((row) => (isRule(row) ? [] : [cellsOf(row, separator) ?? []]));
    const columns = columnsNamed(names, rows);
    if (columns.title !== undefined && columns.estimate !== undefined)
      return { separator, columns, width: names.length };
  }
  return undefined;
}

/** The row as a line; as it is where it holds no such columns, as a title with an unquoted comma in it. */
export function lineBelow(
  { separator, columns, width }: Heading,
  row: string,
  people: readonly KnownPerson[],
): string {
  const cells = separator === ',' ? [] : (cellsOf(row, separator) ?? []);
  return cells.length > 1 && cells.length <= width ? lineOf(cells, columns, people) : row;
}

export function columnsNamed(headers: readonly string[], rows: readonly (readonly string[])[]): CardColumns {
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
function holdsKeys(rows: readonly (readonly string[])[], place: number): boolean {
  const cells = rows.map((row) => row[place]?.trim() ?? '').filter((cell) => cell !== '');
  return cells.length > 0 && cells.every(isCardKey);
}

/** Longer than a title may be, so that it's named as too long. */
const TITLE_KEPT = 400;

export function lineOf(
  cells: readonly string[],
  columns: CardColumns,
  people: readonly KnownPerson[],
): string {
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

/** On one line. */
export function cellOf(cells: readonly string[], place: number | undefined): string {
  return (cells[place ?? -1] ?? '').replace(/\s+/g, ' ').trim();
}
