/** What keeps files from being imported, by file and line. */

import type { CsvKind } from '../csv/csv-columns.ts';
import type { LineReader } from '../csv/line-reader.ts';
import type { TableLine } from '../csv/read-table.ts';
import type { LineProblem } from './import-problem.ts';

/** Where something is. */
export interface LinePlace {
  readonly fileName: string;
  /** 1 for the first line; undefined: the file as a whole. */
  readonly lineNumber: number | undefined;
}

export interface ImportProblem extends LinePlace {
  readonly problem: LineProblem;
}

export class ImportProblems {
  readonly #all: ImportProblem[] = [];
  readonly #badLines = new Set<string>();

  get count(): number {
    return this.#all.length;
  }

  /** Whether a file as a whole can't be used; then there is little sense in comparing lines. */
  get hasWholeFile(): boolean {
    return this.#all.some(({ lineNumber }) => lineNumber === undefined);
  }

  tell({ fileName, lineNumber }: LinePlace, problem: LineProblem): void {
    this.#all.push({ fileName, lineNumber, problem });
    this.#badLines.add(keyOf({ fileName, lineNumber }));
  }

  /** Whether something is wrong with this very line. */
  has(place: LinePlace): boolean {
    return this.#badLines.has(keyOf(place));
  }

  /** By file in the order of `fileNames`, and by line. */
  inOrder(fileNames: readonly string[]): ImportProblem[] {
    const place = ({ fileName }: LinePlace): number => fileNames.indexOf(fileName);
    return [...this.#all].sort((a, b) => place(a) - place(b) || (a.lineNumber ?? 0) - (b.lineNumber ?? 0));
  }
}

function keyOf({ fileName, lineNumber }: LinePlace): string {
  return JSON.stringify([fileName, lineNumber]);
}

export function placeOf<Kind extends CsvKind>({ fileName, lineNumber }: TableLine<Kind>): LinePlace {
  return { fileName, lineNumber };
}

/** Hands the problems of a line on; whether there were any. */
export function handOn<Kind extends CsvKind>(
  read: LineReader<Kind, LineProblem> | LineReader<Kind>,
  line: TableLine<Kind>,
  problems: ImportProblems,
): boolean {
  for (const problem of read.problems) problems.tell(placeOf(line), problem);
  return read.problems.length > 0;
}
