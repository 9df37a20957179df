/** Hands on what is wrong with a line, with its place. */
import type { CsvKind } from '../csv/csv-columns.ts';
import type { LineReader } from '../csv/line-reader.ts';
import type { TableLine } from '../csv/read-table.ts';
import type { LineProblem } from './import-problem.ts';
import type { ImportProblems, LinePlace } from './import-problems.ts';

export function placeOf<Kind extends CsvKind>({ fileName, lineNumber }: TableLine<Kind>): LinePlace {
  return { fileName, lineNumber };
}

/** Hands the problems of a line on; whether there were any. */
export function told<Kind extends CsvKind>(
  read: LineReader<Kind, LineProblem> | LineReader<Kind>,
  line: TableLine<Kind>,
  problems: ImportProblems,
): boolean {
  for (const problem of read.problems) problems.tell(placeOf(line), problem);
  return read.problems.length > 0;
}
