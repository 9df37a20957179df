/**
 * Reads one file: finds out which of the four it is and how its columns are parted, and gives its lines by column.
 * Columns may come in any order, under any of their names. What the cells mean is read elsewhere.
 */
import type { ColumnName, CsvColumn, CsvKind } from './csv-columns.ts';
import { alikeColumn, CSV_COLUMNS, CSV_KINDS } from './csv-columns.ts';
import type { BadRecord, CsvRecord, Separator } from './csv-lines.ts';
import { csvRecords } from './csv-lines.ts';
import { quoted } from './quoted.ts';

/** Ten years of a team's sprints with all their answers are a third of it. */
export const MOST_CHARACTERS = 5_000_000;
export const MOST_LINES = 50_000;
const MOST_COLUMNS = 100;

export interface CsvFile {
  /** As messages call it: the file's name, or "the pasted text". */
  readonly fileName: string;
  readonly text: string;
}

export interface TableLine<Kind extends CsvKind> {
  readonly fileName: string;
  readonly lineNumber: number;
  readonly separator: Separator;
  /** The cell of a column, without the white space around it; `''` when it is empty or the file has no such column. */
  readonly cell: (column: ColumnName<Kind>) => string;
}

export type CsvTable = {
  readonly [Kind in CsvKind]: {
    readonly fileName: string;
    readonly kind: Kind;
    readonly lines: readonly TableLine<Kind>[];
    readonly bad: readonly BadRecord[];
    /** Headers of columns that mean nothing here, as they are written. */
    readonly unused: readonly string[];
    /** Whether the file has the column. */
    readonly has: (column: ColumnName<Kind>) => boolean;
  };
}[CsvKind];

/** @returns the table, or a sentence that says why the file can't be read and how to mend it. */
export function readTable({ fileName, text }: CsvFile): CsvTable | string {
  if (text.includes('\0') || text.startsWith('PK\u0003\u0004')) {
    return 'this is no CSV file. In the spreadsheet, save or download the sheet as CSV, and give that file.';
  }
  if (text.length > MOST_CHARACTERS) {
    return `the file has ${inThousands(text.length)} characters; ${inThousands(MOST_CHARACTERS)} is the most. Give it in several parts, each with the line of column names.`;
  }
  const separator = separatorOf(text);
  const { records, bad } = csvRecords(text, separator);
  const [header, ...rest] = records;
  if (!header) return bad[0] ? `line ${bad[0].lineNumber}: ${bad[0].problem}` : 'the file is empty.';
  if (header.cells.length > MOST_COLUMNS) {
    return `it has ${inThousands(header.cells.length)} columns; ${MOST_COLUMNS} is the most.`;
  }
  if (rest.length > MOST_LINES) {
    return `it has ${inThousands(rest.length)} lines; ${inThousands(MOST_LINES)} is the most. Give it in several parts, each with the line of column names.`;
  }
  const kind = kindOf(header.cells);
  const columns = placesOf(kind, header.cells);
  if (typeof columns === 'string') return columns;
  const missing = requiredOf(kind).filter((name) => !columns.places.has(name));
  if (missing.length > 0) return missingWords(kind, missing, columns.places.size);
  const isTooLong = ({ cells }: CsvRecord): boolean =>
    cells.slice(header.cells.length).some((cell) => cell.trim() !== '');
  const tooLong = rest.filter(isTooLong);
  const lines = rest
    .filter((record) => !isTooLong(record))
    .map((record) => tableLine(fileName, record, separator, columns.places));
  const table = {
    fileName,
    kind,
    lines,
    bad: [...bad, ...tooLong.map((record) => tooLongLine(record, header.cells.length, separator))],
    unused: columns.unused,
    has: (column: string) => columns.places.has(column),
  };
  return table as unknown as CsvTable;
}

function inThousands(count: number): string {
  return count.toLocaleString('en');
}

/** The separator that makes names of columns out of the first line. */
function separatorOf(text: string): Separator {
  const firstLine = /\S.*/.exec(text.replace(/^\uFEFF/, '').slice(0, 20_000))?.[0] ?? '';
  const known = (separator: Separator): number => {
    const cells = csvRecords(firstLine, separator).records[0]?.cells ?? [];
    return Math.max(...CSV_KINDS.map((kind) => recognised(kind, cells)));
  };
  const separators: readonly Separator[] = [',', ';', '\t'];
  return [...separators].sort((a, b) => known(b) - known(a))[0] as Separator;
}

/** The kind of which the fewest required columns are missing, and the most are there. */
function kindOf(header: readonly string[]): CsvKind {
  const missing = (kind: CsvKind): number =>
    requiredOf(kind).filter((name) => !header.some((cell) => meansColumn(kind, cell) === name)).length;
  return [...CSV_KINDS].sort(
    (a, b) => missing(a) - missing(b) || recognised(b, header) - recognised(a, header),
  )[0] as CsvKind;
}

function requiredOf(kind: CsvKind): string[] {
  return columnsOf(kind)
    .filter(({ use }) => use === 'required')
    .map(({ name }) => name);
}

/** Every name of every column of a kind, to the column's own. */
const NAMES = Object.fromEntries(
  CSV_KINDS.map((kind) => [
    kind,
    new Map<string, string>([
      ...columnsOf(kind).flatMap(({ name, aliases }) => aliases.map((alias) => [alias, name] as const)),
      // Last, so that they win over aliases: `title` is an alias in one file and a name in another.
      ...columnsOf(kind).map(({ name }) => [alikeColumn(name), name] as const),
    ]),
  ]),
) as unknown as Record<CsvKind, ReadonlyMap<string, string>>;

function columnsOf(kind: CsvKind): readonly CsvColumn[] {
  return CSV_COLUMNS[kind];
}

function recognised(kind: CsvKind, header: readonly string[]): number {
  return new Set(
    header
      .slice(0, MOST_COLUMNS)
      .map((cell) => meansColumn(kind, cell))
      .filter((name) => name !== undefined),
  ).size;
}

function meansColumn(kind: CsvKind, header: string): string | undefined {
  return NAMES[kind].get(alikeColumn(header));
}

/** Which place each column has in a line; a sentence when two claim to be the same. */
function placesOf(
  kind: CsvKind,
  header: readonly string[],
): { places: Map<string, number>; unused: string[] } | string {
  const places = new Map<string, number>();
  const unused: string[] = [];
  const isOwnName = (place: number, name: string): boolean =>
    alikeColumn(header[place] ?? '') === alikeColumn(name);
  for (const [place, cell] of header.entries()) {
    const name = meansColumn(kind, cell);
    const before = name === undefined ? undefined : places.get(name);
    if (name === undefined) {
      if (cell.trim() !== '') unused.push(cell.trim());
    } else if (before === undefined) {
      places.set(name, place);
    } else if (isOwnName(before, name) === isOwnName(place, name)) {
      return `two columns mean the same, “${quoted(header[before] ?? '')}” and “${quoted(cell)}”: both are read as “${name}”. Delete or rename one of them.`;
    } else {
      unused.push((isOwnName(before, name) ? cell : (header[before] as string)).trim());
      if (isOwnName(place, name)) places.set(name, place);
    }
  }
  return { places, unused };
}

function missingWords(kind: CsvKind, missing: readonly string[], recognisedCount: number): string {
  const needed = requiredOf(kind).join(', ');
  if (recognisedCount < 2) {
    return `its first line doesn’t name the columns. Begin with a line of names; past sprints need: ${requiredOf('sprints').join(', ')}.`;
  }
  return `it looks like a file of ${kind}, but has no column ${missing.map((name) => `“${name}”`).join(', ')}. Its first line must name at least: ${needed}.`;
}

function tableLine(
  fileName: string,
  { lineNumber, cells }: CsvRecord,
  separator: Separator,
  places: ReadonlyMap<string, number>,
): TableLine<CsvKind> {
  return {
    fileName,
    lineNumber,
    separator,
    cell: (column) => cells[places.get(column) ?? -1]?.trim() ?? '',
  };
}

function tooLongLine({ lineNumber, cells }: CsvRecord, columnCount: number, separator: Separator): BadRecord {
  const name = separator === '\t' ? 'tab' : separator === ';' ? 'semicolon' : 'comma';
  const found = cells.length > MOST_COLUMNS ? 'far more cells than' : `${cells.length} cells for`;
  return {
    lineNumber,
    problem: `it has ${found} ${columnCount} columns. Put a cell that holds a ${name} in double quotes.`,
  };
}
