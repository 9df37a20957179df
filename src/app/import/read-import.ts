/** Reads all files of an import, line by line, in any order. Knows nothing of the team. Pure. */
import { IMPORTED_KINDS, type ImportedKind } from '../csv/csv-columns.ts';
import { type CsvFile, MOST_LINES } from '../csv/csv-rows.ts';
import { readTable } from '../csv/read-table.ts';
import { type BodyLine, type DatesLine, readBodyLine, readDatesLine } from './body-lines.ts';
import {
  type AnswerLine,
  type CardLine,
  type ChangeLine,
  readAnswerLine,
  readCardLine,
  readChangeLine,
} from './import-lines.ts';
import type { ImportProblems } from './import-problem.ts';
import { readSprintLine, type SprintLine } from './sprint-line.ts';

/** What became of one file. */
export interface ReadFile {
  readonly fileName: string;
  /** What a team tried isn't imported. */
  readonly kind: ImportedKind | 'experiments';
  /** How many lines it has below its names of columns. */
  readonly lines: number;
  /** Headers of columns that mean nothing here. */
  readonly unused: readonly string[];
}

export interface ReadImport {
  readonly files: readonly ReadFile[];
  readonly sprints: readonly SprintLine[];
  /** Names of sprints whose lines have something wrong with them. */
  readonly unreadSprintNames: readonly string[];
  readonly hasCards: boolean;
  readonly cards: readonly CardLine[];
  readonly answers: readonly AnswerLine[];
  readonly changes: readonly ChangeLine[];
  readonly bodies: readonly BodyLine[];
  /** Names of bodies of work whose lines have something wrong with them. */
  readonly unreadBodyNames: readonly string[];
  readonly dates: readonly DatesLine[];
}

/** Blank ones, and those within a cell, included: everything that has to be looked at. */
export const MOST_LINES_IN_ALL = 4 * MOST_LINES;

export function readImport(files: Iterable<CsvFile>, problems: ImportProblems): ReadImport {
  const read: ReadFile[] = [];
  const sprints: SprintLine[] = [];
  const unreadSprintNames: string[] = [];
  const cards: CardLine[] = [];
  const answers: AnswerLine[] = [];
  const changes: ChangeLine[] = [];
  const bodies: BodyLine[] = [];
  const unreadBodyNames: string[] = [];
  const dates: DatesLine[] = [];
  const lineCount = (): number => read.reduce((sum, { lines }) => sum + lines, 0);
  let linesInAll = 0;
  for (const file of files) {
    const whole = { fileName: file.fileName, lineNumber: undefined };
    linesInAll += linesIn(file.text);
    if (linesInAll > MOST_LINES_IN_ALL) {
      problems.tell(whole, { code: 'all-too-long', most: MOST_LINES_IN_ALL });
      break;
    }
    const table = readTable(file, [...IMPORTED_KINDS, 'experiments']);
    if ('code' in table) {
      problems.tell(whole, table);
      continue;
    }
    for (const { lineNumber, problem } of table.bad) problems.tell({ ...whole, lineNumber }, problem);
    const { fileName, kind, unused } = table;
    read.push({ fileName, kind, lines: table.lines.length, unused });
    if (lineCount() > MOST_LINES) {
      problems.tell(whole, { code: 'too-many-in-all', most: MOST_LINES });
      break;
    }
    if (table.kind === 'sprints') {
      for (const line of table.lines) {
        const sprint = readSprintLine(line, problems);
        if ('unread' in sprint) unreadSprintNames.push(sprint.name);
        else sprints.push(sprint);
      }
    } else if (table.kind === 'cards') {
      for (const line of table.lines) keep(cards, readCardLine(line, problems));
    } else if (table.kind === 'answers') {
      for (const line of table.lines) keep(answers, readAnswerLine(line, problems));
    } else if (table.kind === 'changes') {
      for (const line of table.lines) keep(changes, readChangeLine(line, problems));
    } else if (table.kind === 'bodies') {
      for (const line of table.lines) {
        const body = readBodyLine(line, problems);
        if ('unread' in body) unreadBodyNames.push(body.name);
        else bodies.push(body);
      }
    } else if (table.kind === 'dates') {
      for (const line of table.lines) keep(dates, readDatesLine(line, problems));
    }
  }
  const has = (kind: ImportedKind): boolean => read.some((file) => file.kind === kind);
  tellWhatIsMissing(read, has, problems);
  return {
    ...{ files: read, sprints, unreadSprintNames, hasCards: has('cards'), cards, answers, changes },
    ...{ bodies, unreadBodyNames, dates },
  };
}

function linesIn(text: string): number {
  let lines = 1;
  for (let i = 0; i < text.length; i += 1) {
    const sign = text[i];
    if (sign === '\n' || (sign === '\r' && text[i + 1] !== '\n')) lines += 1;
  }
  return lines;
}

function keep<Line>(lines: Line[], line: Line | undefined): void {
  if (line !== undefined) lines.push(line);
}

/** What has to be given with a file. */
const NEEDED: { readonly [Kind in ReadFile['kind']]: readonly ImportedKind[] } = {
  sprints: [],
  cards: ['sprints'],
  answers: ['sprints', 'cards'],
  changes: ['sprints', 'cards'],
  bodies: [],
  dates: ['bodies'],
  experiments: [],
};

/** Cards belong to sprints, answers and changes to cards, dates to bodies of work. */
function tellWhatIsMissing(
  read: readonly ReadFile[],
  has: (kind: ImportedKind) => boolean,
  problems: ImportProblems,
): void {
  // When a file could not be read at all, it may be the very one.
  if (problems.count > 0) return;
  for (const { fileName, kind } of read) {
    const needed = NEEDED[kind].find((other) => !has(other));
    if (needed) {
      problems.tell({ fileName, lineNumber: undefined }, { code: 'needs-file', kind: needed });
    }
  }
}
