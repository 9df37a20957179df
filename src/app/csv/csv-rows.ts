/** A CSV file as a line of names and lines of cells, within its limits. Knows no column. */
import { type BadRecord, type CsvRecord, csvRecords, type Separator } from './csv-lines.ts';
import type { CsvProblem, FileProblem } from './csv-problem.ts';

/** Ten years of a team's sprints with all their answers are a third of it. */
export const MOST_CHARACTERS = 5_000_000;
export const MOST_LINES = 50_000;
export const MOST_COLUMNS = 100;

export interface CsvFile {
  /** As messages call it: the file's name, or words for pasted lines. */
  readonly fileName: string;
  readonly text: string;
}

interface CsvRows {
  readonly separator: Separator;
  readonly header: CsvRecord;
  readonly rows: readonly CsvRecord[];
  readonly bad: readonly BadRecord<CsvProblem>[];
}

/**
 * @param likeness how much a first line, parted in one way, looks like names of columns
 * @returns the lines, or why the file can't be read
 */
export function csvRows(text: string, likeness: (cells: readonly string[]) => number): CsvRows | FileProblem {
  if (text.includes('\0') || text.startsWith('PK\u0003\u0004')) {
    return { code: 'no-csv' };
  }
  if (text.length > MOST_CHARACTERS) {
    return { code: 'too-many-characters', count: text.length, most: MOST_CHARACTERS };
  }
  const separator = separatorOf(text, likeness);
  const { records, bad } = csvRecords(text, separator);
  const [header, ...rest] = records;
  if (!header) {
    const [broken] = bad;
    return broken ? { code: 'no-line', line: broken.lineNumber, problem: broken.problem } : { code: 'empty' };
  }
  if (header.cells.length > MOST_COLUMNS) {
    return { code: 'too-many-columns', count: header.cells.length, most: MOST_COLUMNS };
  }
  if (rest.length > MOST_LINES) {
    return { code: 'too-many-lines', count: rest.length, most: MOST_LINES };
  }
  const isTooLong = ({ cells }: CsvRecord): boolean =>
    cells.slice(header.cells.length).some((cell) => cell.trim() !== '');
  const tooLong = rest.filter(isTooLong).map((row) => tooLongLine(row, header.cells.length, separator));
  return { separator, header, rows: rest.filter((row) => !isTooLong(row)), bad: [...bad, ...tooLong] };
}

/** The separator that makes most of the first line. */
function separatorOf(text: string, likeness: (cells: readonly string[]) => number): Separator {
  const firstLine = /\S.*/.exec(text.replace(/^\uFEFF/, '').slice(0, 20_000))?.[0] ?? '';
  const made = (separator: Separator): number =>
    likeness((csvRecords(firstLine, separator).records[0]?.cells ?? []).slice(0, MOST_COLUMNS));
  const separators: readonly Separator[] = [',', ';', '\t'];
  return [...separators].sort((a, b) => made(b) - made(a))[0] as Separator;
}

function tooLongLine(
  { lineNumber, cells }: CsvRecord,
  columns: number,
  separator: Separator,
): BadRecord<CsvProblem> {
  const name = separator === '\t' ? 'tab' : separator === ';' ? 'semicolon' : 'comma';
  const count = cells.length > MOST_COLUMNS ? undefined : cells.length;
  return { lineNumber, problem: { code: 'too-many-cells', cells: count, columns, separator: name } };
}
