/**
 * Splits CSV text into records, each with the line on which it begins. A line with a misplaced quote is reported and
 * passed over, so that one such line doesn't hide what is wrong further down. Understands no column.
 */
import { CsvError, parse } from 'csv-parse/sync';
import type { BrokenLine } from './csv-problem.ts';

export type Separator = ',' | ';' | '\t';

export interface CsvRecord {
  /** 1 for the first line of the text. */
  readonly lineNumber: number;
  readonly cells: readonly string[];
}

export interface BadRecord<Problem = BrokenLine> {
  readonly lineNumber: number;
  readonly problem: Problem;
}

/** After so many misplaced quotes the file is no CSV; each costs another pass over the rest. */
const MOST_MISPLACED_QUOTES = 20;
/** A thousand notes of the longest kind; one that goes on is a quote that nobody closed, and costs as much as a file. */
const LONGEST_RECORD = 100_000;
const LINE_END = /\r\n|\n|\r/;
const RECORD_ENDS = ['\r\n', '\n', '\r'];

/** Blank lines, and lines of separators only, as spreadsheets leave them, are skipped. */
export function csvRecords(text: string, separator: Separator): { records: CsvRecord[]; bad: BadRecord[] } {
  const records: CsvRecord[] = [];
  const bad: BadRecord[] = [];
  let rest = text.replace(/^\uFEFF/, '');
  let linesBefore = 0;
  while (rest !== '') {
    const read = readUntilBroken(rest, separator);
    for (const { lineNumber, cells } of read.records) {
      if (cells.some((cell) => cell.trim() !== ''))
        records.push({ lineNumber: linesBefore + lineNumber, cells });
    }
    if (read.brokenOn === undefined) break;
    const lineNumber = linesBefore + read.brokenOn;
    if (bad.length === MOST_MISPLACED_QUOTES) {
      bad.push({ lineNumber, problem: { code: 'too-many-quotes' } });
      break;
    }
    bad.push({
      lineNumber,
      problem: read.isEndless ? { code: 'endless-line', most: LONGEST_RECORD } : { code: 'misplaced-quote' },
    });
    rest = withoutLines(rest, read.brokenOn);
    linesBefore = lineNumber;
  }
  return { records, bad };
}

function readUntilBroken(
  text: string,
  separator: Separator,
): { records: CsvRecord[]; brokenOn: number | undefined; isEndless: boolean } {
  const records: CsvRecord[] = [];
  let linesRead = 0;
  // The parser takes the two signs of such a line end for two lines within a cell.
  let linesTooMany = 0;
  try {
    withoutStacks(() =>
      parse(text, {
        delimiter: separator,
        record_delimiter: RECORD_ENDS,
        relax_column_count: true,
        // Each would be a record of another width.
        skip_empty_lines: true,
        max_record_size: LONGEST_RECORD,
        on_record: (cells: string[], { lines }) => {
          const inCells = cells.filter((cell) => LINE_END.test(cell)).join();
          linesTooMany += countOf(inCells, /\r\n/g);
          linesRead = lines - linesTooMany;
          records.push({ lineNumber: linesRead - countOf(inCells, /\r\n|\n|\r/g), cells });
          // They are collected here, since an error further down would take the parser's own list with it.
          return null;
        },
      }),
    );
    return { records, brokenOn: undefined, isEndless: false };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return {
      records,
      brokenOn: brokenLine(text, linesRead),
      isEndless: error.code === 'CSV_MAX_RECORD_SIZE',
    };
  }
}

function countOf(text: string, what: RegExp): number {
  return text === '' ? 0 : (text.match(what)?.length ?? 0);
}

/** The first line after those that were read which isn't blank. */
function brokenLine(text: string, linesRead: number): number {
  let line = linesRead + 1;
  for (let rest = withoutLines(text, linesRead); /^[\r\n]/.test(rest); rest = withoutLines(rest, 1))
    line += 1;
  return line;
}

/** The parser makes an error of each record of another width, though nobody sees it: most of it is the stack. */
function withoutStacks(work: () => void): void {
  const { stackTraceLimit } = Error;
  Error.stackTraceLimit = 0;
  try {
    work();
  } finally {
    Error.stackTraceLimit = stackTraceLimit;
  }
}

/** The text after its first lines. */
function withoutLines(text: string, count: number): string {
  let rest = text;
  for (let i = 0; i < count; i += 1) {
    const end = LINE_END.exec(rest);
    if (!end) return '';
    rest = rest.slice(end.index + end[0].length);
  }
  return rest;
}
