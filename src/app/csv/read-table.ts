/**
 * Reads one file: finds out which kind it is and how its columns are parted, and gives its lines by column.
 * Columns may come in any order, under any of their names. What the cells mean is read elsewhere.
 */
import { alikeColumn, type ColumnName, CSV_COLUMNS, type CsvColumn, type CsvKind } from './csv-columns.ts';
import type { BadRecord, CsvRecord, Separator } from './csv-lines.ts';
import type { CsvProblem, FileProblem } from './csv-problem.ts';
import { type CsvFile, csvRows, MOST_COLUMNS } from './csv-rows.ts';

export interface TableLine<Kind extends CsvKind> {
  readonly fileName: string;
  readonly lineNumber: number;
  readonly separator: Separator;
  /** The cell of a column, without the white space around it; `''` when it is empty or the file has no such column. */
  readonly cell: (column: ColumnName<Kind>) => string;
}

interface CsvTable<Kind extends CsvKind> {
  readonly fileName: string;
  readonly kind: Kind;
  readonly lines: readonly TableLine<Kind>[];
  readonly bad: readonly BadRecord<CsvProblem>[];
  /** Headers of columns that mean nothing here, as they are written. */
  readonly unused: readonly string[];
  /** Whether the file has the column. */
  readonly has: (column: ColumnName<Kind>) => boolean;
}
/** A table of one of the kinds. */
type CsvTableOf<Kind extends CsvKind> = { readonly [Each in Kind]: CsvTable<Each> }[Kind];

/**
 * @param kinds those that it may be; the first is taken for a file that is like none
 * @returns the table, or why the file can't be read.
 */
export function readTable<Kind extends CsvKind>(
  { fileName, text }: CsvFile,
  kinds: readonly [Kind, ...Kind[]],
): CsvTableOf<Kind> | FileProblem {
  const read = csvRows(text, (cells) => Math.max(...kinds.map((kind) => recognised(kind, cells))));
  if ('code' in read) return read;
  const { separator, header, rows, bad } = read;
  const kind = kindOf(header.cells, kinds);
  const columns = placesOf(kind, header.cells);
  if ('code' in columns) return columns;
  const missing = requiredOf(kind).filter((name) => !columns.places.has(name));
  if (missing.length > 0) {
    return columns.places.size < 2 && kinds.length > 1
      ? { code: 'no-column-names', needed: requiredOf(kinds[0]) }
      : { code: 'missing-columns', kind, missing, needed: requiredOf(kind) };
  }
  const lines = rows.map((record) => tableLine(fileName, record, separator, columns.places));
  const table = {
    fileName,
    kind,
    lines,
    bad,
    unused: columns.unused,
    has: (column: string) => columns.places.has(column),
  };
  return table as unknown as CsvTableOf<Kind>;
}

/** The kind of which the fewest required columns are missing, and the most are there. */
function kindOf<Kind extends CsvKind>(header: readonly string[], kinds: readonly Kind[]): Kind {
  const missing = (kind: Kind): number =>
    requiredOf(kind).filter((name) => !header.some((cell) => meansColumn(kind, cell) === name)).length;
  return [...kinds].sort(
    (a, b) => missing(a) - missing(b) || recognised(b, header) - recognised(a, header),
  )[0] as Kind;
}

function requiredOf(kind: CsvKind): string[] {
  return columnsOf(kind)
    .filter(({ use }) => use === 'required')
    .map(({ name }) => name);
}

/** Every name of every column of a kind, to the column's own. */
const NAMES = Object.fromEntries(
  (Object.keys(CSV_COLUMNS) as CsvKind[]).map((kind) => [
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

/** Which place each column has in a line, unless two claim to be the same. */
function placesOf(
  kind: CsvKind,
  header: readonly string[],
): { places: Map<string, number>; unused: string[] } | FileProblem {
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
      return {
        code: 'same-columns',
        first: header[before] ?? '',
        second: cell,
        column: name,
      };
    } else {
      unused.push((isOwnName(before, name) ? cell : (header[before] as string)).trim());
      if (isOwnName(place, name)) places.set(name, place);
    }
  }
  return { places, unused };
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
