/**
 * Reads the files of an import and makes of them what a person is shown first, and what is written when they have seen it.
 * It takes seconds for large files, so it is done where it holds nobody up. Pure but for the ids it makes.
 */
import { createHash } from 'node:crypto';
import { isToDo } from '../bodies/body-of-work.ts';
import type { CsvFile } from '../csv/csv-rows.ts';
import { decoded, type GivenFile } from '../csv/given-file.ts';
import type { ImportPiece } from '../ports/imports.ts';
import type { NewFact, RecordedFact, SprintCard, Team } from '../team/team.ts';
import type { LeftOutBody } from './bodies-to-import.ts';
import { type ImportPlan, importPlan, importWarnings, NO_PLAN, type SprintOutline } from './import-plan.ts';
import { type ImportProblem, ImportProblems, type ImportWarning } from './import-problem.ts';
import { type ReadFile, type ReadImport, readImport } from './read-import.ts';
import type { LeftOutSprint, PlanContext } from './sprints-to-import.ts';

export interface ImportQuestion {
  /** Blank ones are passed over. */
  readonly files: readonly GivenFile[];
  readonly context: PlanContext;
  /** The fingerprint of the preview that was seen; undefined when none was. */
  readonly seen: string | undefined;
}

/** Without one of these nothing was given. */
export interface ImportReading {
  readonly preview: ImportPreview;
  /** Whether this very content was previewed before and nothing is wrong with it. */
  readonly mayImport: boolean;
}

/** A sprint as the preview shows it. */
export type PreviewedSprint = Omit<SprintOutline, 'workingDays' | 'answers'>;

/** A body of work as the preview shows it. */
export interface PreviewedBody {
  readonly name: string;
  readonly leftPoints: number;
  readonly isDone: boolean;
}

export interface ImportPreview {
  readonly team: Team;
  readonly files: readonly ReadFile[];
  /** By first day. Empty while a line is bad. */
  readonly sprints: readonly PreviewedSprint[];
  readonly cards: number;
  readonly answers: number;
  readonly leftOut: readonly LeftOutSprint[];
  /** In their order. Empty while a line is bad. */
  readonly bodies: readonly PreviewedBody[];
  /** The first of them, if there are very many. */
  readonly bodiesLeftOut: readonly LeftOutBody[];
  /** How many more there are. */
  readonly bodiesUntold: number;
  /** By file and line; while there is one nothing can be imported. The first of them, if there are very many. */
  readonly problems: readonly ImportProblem[];
  /** How many more there are. */
  readonly problemsUntold: number;
  /** Lines with a problem, and files that can't be used as a whole. */
  readonly badLines: number;
  /** None stops the import. */
  readonly warnings: readonly ImportWarning[];
  /** A mark of the files' content: only what was previewed is imported. */
  readonly fingerprint: string;
}

/** More are not told one by one: a file in which everything is wrong, or left out, has as many as it has lines. */
export const MOST_PROBLEMS_TOLD = 500;

/** @returns undefined when every file is blank @throws NoText */
export function readImportFiles({ files, context, seen }: ImportQuestion): {
  readonly reading: ImportReading | undefined;
  /** Of what is to be written: nothing unless it may be imported. */
  readonly plan: ImportPlan;
} {
  const mark = createHash('sha256');
  let isBlank = true;
  // Each is let go of before the next is decoded.
  function* texts(): Generator<CsvFile> {
    for (const given of files) {
      const file = decoded(given);
      if (file.text.trim() === '') continue;
      isBlank = false;
      mark.update(`${file.text.length}:`).update(file.text);
      yield file;
    }
  }
  const problems = new ImportProblems();
  const read = readImport(texts(), problems);
  if (isBlank) return { reading: undefined, plan: NO_PLAN };
  const plan = problems.hasWholeFile ? NO_PLAN : importPlan(read, context, problems);
  const fileNames = files.map(({ fileName }) => fileName);
  const preview = {
    ...previewOf(fileNames, read, plan, problems),
    team: context.team,
    fingerprint: mark.digest('base64url'),
  };
  const holdsSomething = preview.sprints.length + preview.bodies.length > 0;
  const mayImport = problems.count === 0 && holdsSomething && seen === preview.fingerprint;
  return { reading: { preview, mayImport }, plan: mayImport ? plan : NO_PLAN };
}

function previewOf(
  fileNames: readonly string[],
  read: ReadImport,
  plan: ImportPlan,
  problems: ImportProblems,
): Omit<ImportPreview, 'team' | 'fingerprint'> {
  const planned = problems.count === 0 ? plan.sprints : [];
  const told = problems.inOrder(fileNames).slice(0, MOST_PROBLEMS_TOLD);
  return {
    files: read.files,
    sprints: planned.map(({ workingDays: _, answers: __, ...shown }) => shown),
    cards: planned.reduce((sum, { cards }) => sum + cards, 0),
    answers: planned.reduce((sum, { answers }) => sum + answers, 0),
    leftOut: plan.leftOut,
    bodies:
      problems.count > 0
        ? []
        : plan.bodies.bodies.map(({ body }) => ({
            name: body.name,
            leftPoints: body.leftPoints,
            isDone: !isToDo(body),
          })),
    bodiesLeftOut: plan.bodies.leftOut.slice(0, MOST_PROBLEMS_TOLD),
    bodiesUntold: Math.max(0, plan.bodies.leftOut.length - MOST_PROBLEMS_TOLD),
    problems: told,
    problemsUntold: problems.count - told.length,
    badLines: problems.badLines,
    warnings: importWarnings(planned),
  };
}

/** The embedded database takes a tenth of a second for a thousand. */
const ROWS_A_PIECE = 100;

export function* importPieces(
  { whole, bodies }: Pick<ImportPlan, 'whole' | 'bodies'>,
  { team, now }: PlanContext,
): Generator<ImportPiece, undefined> {
  type Mutable = { -readonly [Kind in keyof ImportPiece]: ImportPiece[Kind][number][] };
  const empty = (): Mutable => ({
    ...{ sprints: [], past: [], values: [], cards: [], facts: [] },
    ...{ bodies: [], told: [] },
  });
  let piece = empty();
  let rows = 0;
  for (const { sprint, records, past, workingDays, memberDays, value } of whole()) {
    const { id: sprintId, endsOn } = sprint;
    const { id: teamId, workspaceId } = team;
    piece.sprints.push(sprint);
    piece.past.push({
      ...past,
      sprintId,
      teamId,
      workspaceId,
      endsOn,
      workingDays,
      memberDays,
      recordedAt: now,
    });
    if (value !== undefined) piece.values.push({ sprintId, value });
    rows += 3;
    for (const kind of ['cards', 'facts'] as const) {
      for (const row of records[kind]) {
        if (rows >= ROWS_A_PIECE) {
          yield piece;
          piece = empty();
          rows = 0;
        }
        if (kind === 'cards') piece.cards.push(row as SprintCard);
        else piece.facts.push(withoutOrder(row as RecordedFact));
        rows += 1;
      }
    }
  }
  for (const { body, told } of bodies.bodies) {
    piece.bodies.push(body);
    rows += 1;
    for (const one of told) {
      if (rows >= ROWS_A_PIECE) {
        yield piece;
        piece = empty();
        rows = 0;
      }
      piece.told.push(one);
      rows += 1;
    }
  }
  if (rows > 0) yield piece;
  return undefined;
}

/** They get their places when they are written. */
function withoutOrder({ order: _, ...fact }: RecordedFact): NewFact {
  return fact;
}
