/** What may keep a line or a file from being imported, and all of it by file and line. */
import type { CsvKind, ImportedKind } from '../csv/csv-columns.ts';
import type { CsvProblem } from '../csv/csv-problem.ts';
import type { LineReader } from '../csv/line-reader.ts';
import type { TableLine } from '../csv/read-table.ts';

export type LineProblem =
  | CsvProblem
  | FilesProblem
  | SprintProblem
  | CardProblem
  | AnswerProblem
  | ChangeProblem
  | BodyProblem;

type FilesProblem =
  | { readonly code: 'all-too-long'; readonly most: number }
  | { readonly code: 'too-many-in-all'; readonly most: number }
  | { readonly code: 'needs-file'; readonly kind: ImportedKind };

/** Where another sprint is given: `here` is in the same file. */
interface OtherSprint {
  readonly sprint: string;
  readonly line: number;
  readonly where: 'here' | 'elsewhere';
  readonly file: string;
}

/** Two amounts that must be the same. */
interface DifferingSum {
  readonly column: string;
  readonly said: number;
  readonly is: number;
}

type SprintProblem =
  | { readonly code: 'member-days'; readonly most: number }
  | { readonly code: 'days-reversed'; readonly first: string; readonly last: string }
  | { readonly code: 'sprint-too-long'; readonly days: number; readonly most: number }
  | { readonly code: 'too-early'; readonly first: string; readonly earliest: string }
  | { readonly code: 'finished-more'; readonly finished: number; readonly held: number }
  | { readonly code: 'finished-of-commitment' }
  | { readonly code: 'finished-beside' }
  | { readonly code: 'too-many-sprints'; readonly sprints: number; readonly most: number }
  | {
      readonly code: 'days-taken';
      readonly sprint: string;
      readonly first: string;
      readonly last: string;
    }
  | ({ readonly code: 'sprint-twice' } & OtherSprint)
  | ({ readonly code: 'days-shared' } & OtherSprint)
  | { readonly code: 'closed-before'; readonly day: string }
  | { readonly code: 'closed-later'; readonly day: string }
  | { readonly code: 'not-over'; readonly last: string }
  | { readonly code: 'several-sprints'; readonly sprint: string }
  | { readonly code: 'not-closed'; readonly sprint: string }
  | { readonly code: 'not-closed-then'; readonly sprint: string; readonly first: string }
  | { readonly code: 'no-such-sprint'; readonly sprint: string }
  | { readonly code: 'no-such-sprint-then'; readonly sprint: string; readonly first: string }
  | { readonly code: 'no-cards'; readonly sprint: string }
  | { readonly code: 'answers-denied' }
  | { readonly code: 'sums-differ'; readonly sums: readonly DifferingSum[] };

type CardProblem =
  | { readonly code: 'too-many-cards'; readonly cards: number; readonly most: number }
  | { readonly code: 'card-link'; readonly most: number }
  | { readonly code: 'number-zero' }
  | { readonly code: 'number-twice'; readonly number: number; readonly sprint: string; readonly line: number }
  | { readonly code: 'name-twice'; readonly name: string; readonly line: number }
  | { readonly code: 'no-coming-day' }
  | { readonly code: 'coming-day-outside'; readonly day: string; readonly sprint: string }
  | { readonly code: 'planned-later'; readonly first: string }
  | { readonly code: 'no-end' }
  | { readonly code: 'nothing-left' }
  | { readonly code: 'worked-out-of-bounds'; readonly worked: number; readonly most: number }
  | { readonly code: 'end-outside'; readonly day: string; readonly sprint: string }
  | { readonly code: 'grown-too-large'; readonly most: number }
  | { readonly code: 'unbalanced'; readonly held: number; readonly done: number }
  | ({ readonly code: 'amount-differs' } & DifferingSum)
  | { readonly code: 'end-differs'; readonly column: string; readonly said: string; readonly is: string }
  | { readonly code: 'never-ended'; readonly column: string; readonly said: string };

interface Growth {
  readonly worked: number;
  readonly left: number;
  readonly before: number;
  readonly growth: number;
}

type AnswerProblem =
  | { readonly code: 'no-such-card'; readonly sprint: string; readonly card: string }
  | {
      readonly code: 'day-outside';
      readonly day: string;
      readonly sprint: string;
      readonly first: string;
      readonly last: string;
    }
  | { readonly code: 'before-card'; readonly day: string; readonly came: string }
  | { readonly code: 'after-drop'; readonly day: string; readonly dropped: string }
  | {
      readonly code: 'answer-twice';
      readonly answer: number;
      readonly day: string;
      readonly line: number;
    }
  | ({ readonly code: 'surprise-differs'; readonly said: number; readonly most: number } & Growth)
  | ({ readonly code: 'growth-differs'; readonly said: number } & Growth);

type ChangeProblem =
  | { readonly code: 'dropped-twice'; readonly line: number }
  | { readonly code: 'change-alone' }
  | { readonly code: 'after-answer'; readonly said: number; readonly answers: number };

/** Another line of the same kind. */
interface OtherLine {
  readonly line: number;
  readonly file: string;
}

type BodyProblem =
  | { readonly code: 'body-name'; readonly most: number }
  | { readonly code: 'body-points'; readonly most: number }
  | { readonly code: 'body-growth'; readonly most: number }
  | { readonly code: 'body-growth-alone' }
  | { readonly code: 'body-growth-reversed'; readonly least: number; readonly most: number }
  | { readonly code: 'body-share'; readonly least: number }
  | { readonly code: 'body-shares'; readonly share: number }
  | { readonly code: 'bodies-many'; readonly count: number; readonly most: number }
  | { readonly code: 'day-early'; readonly column: string; readonly day: string; readonly earliest: string }
  | { readonly code: 'day-not-come'; readonly column: string; readonly day: string }
  | { readonly code: 'before-kept'; readonly column: string; readonly day: string; readonly kept: string }
  | ({ readonly code: 'body-twice'; readonly body: string } & OtherLine)
  | ({ readonly code: 'turn-twice'; readonly body: string; readonly turn: number } & OtherLine)
  | { readonly code: 'no-body'; readonly body: string }
  | { readonly code: 'no-body-then'; readonly body: string; readonly kept: string }
  | { readonly code: 'several-bodies'; readonly body: string }
  | { readonly code: 'told-order' }
  | ({ readonly code: 'told-twice'; readonly body: string; readonly day: string } & OtherLine);

/** What may be a slip, or will leave questions open later. None of it stops the import. */
export interface ImportWarning {
  readonly code: 'same-name' | 'no-finished' | 'no-working-day';
  readonly sprints: readonly string[];
}

/** Where something is. */
export interface LinePlace {
  readonly fileName: string;
  /** 1 for the first line; undefined: the file as a whole. */
  readonly lineNumber: number | undefined;
}

export interface ImportProblem extends LinePlace {
  readonly problem: LineProblem;
}

/** What keeps files from being imported, by file and line. */
export class ImportProblems {
  readonly #all: ImportProblem[] = [];
  readonly #badLines = new Set<string>();

  get count(): number {
    return this.#all.length;
  }

  /** Lines with a problem, and files that can't be used as a whole. */
  get badLines(): number {
    return this.#badLines.size;
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
