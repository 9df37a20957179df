/**
 * Reads the open data on real sprints: one row a sprint and moment, sprints in order of their start.
 * Says which line and which column is wrong; guesses and repairs nothing.
 */
import { CsvError, parse } from 'csv-parse/sync';

const COLUMNS = [
  'board',
  'sprint',
  'plannedDays',
  'elapsedPercent',
  'startPoints',
  'addedPoints',
  'removedPoints',
  'todoPoints',
  'inProgressPoints',
  'donePoints',
  'members',
  'deliveredPoints',
] as const;

type Column = (typeof COLUMNS)[number];

/** Columns that may be negative: the source has sprints whose unstarted points were overdrawn. */
const SIGNED: readonly Column[] = ['todoPoints'];

/** A sprint as it was at one moment. Points as in the source, whole numbers. */
export type SprintMoment = { readonly [column in Column]: number };

/** The data is not what it should be; the message names line and column. */
export class OpenDataError extends Error {
  readonly code = 'open-data-malformed';
  override readonly name = 'OpenDataError';
}

interface RecordWithInfo {
  readonly record: Readonly<Record<string, string>>;
  readonly info: { readonly lines: number };
}

function numberAt(row: RecordWithInfo, column: Column, source: string): number {
  const text = row.record[column] as string;
  const pattern = SIGNED.includes(column) ? /^-?\d+$/ : /^\d+$/;
  if (pattern.test(text)) return Number(text);
  const kind = SIGNED.includes(column) ? 'a whole number' : 'a whole number of 0 or more';
  throw new OpenDataError(`${source}, line ${row.info.lines}, column ${column}: "${text}" is not ${kind}.`);
}

function checkHeader(names: readonly string[], source: string): string[] {
  const missing = COLUMNS.filter((column) => !names.includes(column));
  if (missing.length > 0) {
    throw new OpenDataError(
      `${source}, line 1: missing ${missing.length > 1 ? 'columns' : 'column'} ${missing.join(', ')}.`,
    );
  }
  return [...names];
}

/**
 * The rows of one file, in its order.
 *
 * @param source name of the file, for messages.
 * @throws OpenDataError when a column is missing, a row has too few or too many cells, or a cell is no
 * whole number.
 */
export function readOpenData(text: string, source: string): SprintMoment[] {
  let rows: RecordWithInfo[];
  try {
    rows = parse(text, {
      bom: true,
      columns: (names: string[]) => checkHeader(names, source),
      info: true,
      skip_empty_lines: true,
      trim: true,
    }) as unknown as RecordWithInfo[];
  } catch (error) {
    if (error instanceof OpenDataError) throw error;
    if (error instanceof CsvError) throw new OpenDataError(`${source}: ${error.message}.`, { cause: error });
    throw error;
  }
  if (rows.length === 0) throw new OpenDataError(`${source} holds no sprints.`);
  return rows.map(
    (row) =>
      Object.fromEntries(COLUMNS.map((column) => [column, numberAt(row, column, source)])) as SprintMoment,
  );
}
