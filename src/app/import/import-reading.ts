/**
 * Reads the files of an import and makes of them what a person is shown first, and what is written when they have seen it.
 * It takes seconds for large files, so it is done where it holds nobody up. Pure but for the ids it makes.
 */
import { createHash } from 'node:crypto';
import type { Day } from '../../sprint/calendar.ts';
import type { CsvFile } from '../csv/csv-rows.ts';
import { decoded, type GivenFile } from '../csv/given-file.ts';
import type { ImportPiece } from '../ports/imports.ts';
import type { NewFact, RecordedFact, SprintCard, Team } from '../team/team.ts';
import { type ImportPlan, importPlan, importWarnings, type PlannedSprint } from './import-plan.ts';
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
export interface PreviewedSprint {
  readonly name: string;
  readonly startsOn: Day;
  readonly endsOn: Day;
  readonly commitmentPoints: number;
  readonly velocityPoints: number | undefined;
  /** 0 when only its sums are known. */
  readonly cards: number;
}

export interface ImportPreview {
  readonly team: Team;
  readonly files: readonly ReadFile[];
  /** By first day. Empty while a line is bad. */
  readonly sprints: readonly PreviewedSprint[];
  readonly cards: number;
  readonly answers: number;
  readonly leftOut: readonly LeftOutSprint[];
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

/** More are not told one by one: a file in which everything is wrong has as many as it has lines. */
export const MOST_PROBLEMS_TOLD = 500;

/** @returns undefined when every file is blank @throws NoText */
export function readImportFiles({ files, context, seen }: ImportQuestion): {
  readonly reading: ImportReading | undefined;
  readonly planned: readonly PlannedSprint[];
} {
  const given = files.map(decoded).filter(({ text }) => text.trim() !== '');
  if (given.length === 0) return { reading: undefined, planned: [] };
  const problems = new ImportProblems();
  const read = readImport(given, problems);
  const plan = problems.hasWholeFile ? { sprints: [], leftOut: [] } : importPlan(read, context, problems);
  const preview = previewOf(context.team, given, read, plan, problems);
  const mayImport = problems.count === 0 && plan.sprints.length > 0 && seen === preview.fingerprint;
  return { reading: { preview, mayImport }, planned: mayImport ? plan.sprints : [] };
}

function previewOf(
  team: Team,
  files: readonly CsvFile[],
  read: ReadImport,
  plan: ImportPlan,
  problems: ImportProblems,
): ImportPreview {
  const isFine = problems.count === 0;
  const count = (sprint: PlannedSprint): number =>
    sprint.records.facts.filter(({ kind }) => kind === 'answer').length;
  const sprints = isFine ? plan.sprints.map(previewedSprint) : [];
  const told = problems.inOrder(files.map(({ fileName }) => fileName)).slice(0, MOST_PROBLEMS_TOLD);
  return {
    team,
    files: read.files,
    sprints,
    cards: sprints.reduce((sum, { cards }) => sum + cards, 0),
    answers: isFine ? plan.sprints.reduce((sum, sprint) => sum + count(sprint), 0) : 0,
    leftOut: plan.leftOut,
    problems: told,
    problemsUntold: problems.count - told.length,
    badLines: problems.badLines,
    warnings: isFine ? importWarnings(plan.sprints) : [],
    fingerprint: fingerprintOf(files),
  };
}

function previewedSprint({ sprint, records, past }: PlannedSprint): PreviewedSprint {
  const { name, startsOn, endsOn } = sprint;
  const { commitmentPoints, velocityPoints } = past;
  return { name, startsOn, endsOn, commitmentPoints, velocityPoints, cards: records.cards.length };
}

function fingerprintOf(files: readonly CsvFile[]): string {
  const hash = createHash('sha256');
  for (const { text } of files) hash.update(`${text.length}:${text}`);
  return hash.digest('base64url');
}

/** The embedded database takes a tenth of a second for a thousand. */
const ROWS_A_PIECE = 100;

export function* importPieces(
  planned: readonly PlannedSprint[],
  { team, now }: PlanContext,
): Generator<ImportPiece, undefined> {
  type Mutable = { -readonly [Kind in keyof ImportPiece]: ImportPiece[Kind][number][] };
  const empty = (): Mutable => ({ sprints: [], past: [], values: [], cards: [], facts: [] });
  let piece = empty();
  let rows = 0;
  for (const { sprint, records, past, workingDays, memberDays, value } of planned) {
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
  if (rows > 0) yield piece;
  return undefined;
}

/** They get their places when they are written. */
function withoutOrder({ order: _, ...fact }: RecordedFact): NewFact {
  return fact;
}
