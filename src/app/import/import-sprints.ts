/**
 * Brings past sprints in from files: first shows what would be imported and every bad line, then imports all of it or
 * nothing. Only what was shown is imported. An imported sprint is closed, is posted nowhere, and is never opened again.
 */
import { createHash } from 'node:crypto';
import type { Day } from '../../sprint/calendar.ts';
import type { CsvFile } from '../csv/csv-rows.ts';
import { pastSprints } from '../history/team-history.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import { Refusal } from '../refusal.ts';
import {
  type Membership,
  membershipAt,
  membershipInTeam,
  type Place,
  requireFacilitator,
  todayOf,
} from '../team/place.ts';
import type { Actor, Team } from '../team/team.ts';
import { type ImportPlan, importPlan, importWarnings, type PlannedSprint } from './import-plan.ts';
import { type ImportProblem, ImportProblems, type ImportWarning } from './import-problem.ts';
import { type ReadFile, type ReadImport, readImport } from './read-import.ts';
import type { LeftOutSprint } from './sprints-to-import.ts';

/** What only a facilitator may do. */
const ACT = 'import';

export interface ImportForm {
  readonly team: Team;
  /** Closed sprints that the team has already. */
  readonly knownSprints: number;
}

export interface ImportInput {
  readonly teamId: string;
  /** Empty ones are passed over. */
  readonly files: readonly CsvFile[];
  /** The fingerprint of the preview that was seen; undefined when none was. */
  readonly seen: string | undefined;
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
  /** By file and line; while there is one nothing can be imported. */
  readonly problems: readonly ImportProblem[];
  /** None stops the import. */
  readonly warnings: readonly ImportWarning[];
  /** A mark of the files' content: only what was previewed is imported. */
  readonly fingerprint: string;
}

export interface SprintsImported {
  readonly team: Team;
  readonly sprints: readonly PreviewedSprint[];
  readonly cards: number;
  readonly answers: number;
  readonly leftOut: readonly LeftOutSprint[];
  /** Closed sprints that the team has now. */
  readonly knownSprints: number;
}

export type ImportOutcome =
  | { readonly kind: 'preview'; readonly preview: ImportPreview }
  | { readonly kind: 'imported'; readonly imported: SprintsImported };

/** @throws Refusal `not-a-facilitator`, and those of finding the team. */
export async function importForm(deps: AppDependencies, actor: Actor, place: Place): Promise<ImportForm> {
  return deps.store.transaction(async (tx) => {
    const membership = await membershipAt(tx.read, actor, place);
    requireFacilitator(membership, ACT);
    return { team: membership.team, knownSprints: (await pastSprints(tx, membership.team)).length };
  });
}

/**
 * Imports the sprints when this very content was previewed before and nothing is wrong with it; else previews it.
 *
 * @throws Refusal `bad-input` (field `files`) when nothing was given, `not-a-facilitator`, and those of finding the team.
 */
export async function importSprints(
  deps: AppDependencies,
  actor: Actor,
  input: ImportInput,
): Promise<ImportOutcome> {
  const files = input.files.filter(({ text }) => text.trim() !== '');
  return deps.store.transaction(async (tx) => {
    const membership = await membershipInTeam(tx.read, actor, input.teamId);
    requireFacilitator(membership, ACT);
    if (files.length === 0) {
      throw new Refusal('bad-input', { problems: [{ field: 'files', problem: { code: 'no-files' } }] });
    }
    // Before the team is held, for large files take seconds.
    const problems = new ImportProblems();
    const given = readImport(files, problems);
    // Held until the end, so that no sprint comes between checking and recording.
    await tx.lock.team(input.teamId);
    const plan = problems.hasWholeFile
      ? { sprints: [], leftOut: [] }
      : importPlan(given, await planContext(tx.read, deps, membership, actor), problems);
    const preview = previewOf(membership.team, files, given, plan, problems);
    const mayImport = problems.count === 0 && plan.sprints.length > 0 && input.seen === preview.fingerprint;
    if (!mayImport) return { kind: 'preview', preview };
    await record(tx, membership.team, plan.sprints, actor, deps.clock.now());
    const { team, sprints, cards, answers, leftOut } = preview;
    const knownSprints = (await pastSprints(tx, team)).length;
    return { kind: 'imported', imported: { team, sprints, cards, answers, leftOut, knownSprints } };
  });
}

async function planContext(
  read: Reading,
  deps: AppDependencies,
  { team }: Membership,
  actor: Actor,
): Promise<Parameters<typeof importPlan>[1]> {
  const now = deps.clock.now();
  const existing = await read.sprintsOf(team.id);
  return { team, existing, today: todayOf(team, now), now, byUserId: actor.userId };
}

function previewOf(
  team: Team,
  files: readonly CsvFile[],
  given: ReadImport,
  plan: ImportPlan,
  problems: ImportProblems,
): ImportPreview {
  const isFine = problems.count === 0;
  const count = (sprint: PlannedSprint): number =>
    sprint.records.facts.filter(({ kind }) => kind === 'answer').length;
  const sprints = isFine ? plan.sprints.map(previewedSprint) : [];
  return {
    team,
    files: given.files,
    sprints,
    cards: sprints.reduce((sum, { cards }) => sum + cards, 0),
    answers: isFine ? plan.sprints.reduce((sum, sprint) => sum + count(sprint), 0) : 0,
    leftOut: plan.leftOut,
    problems: problems.inOrder(files.map(({ fileName }) => fileName)),
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

async function record(
  tx: Transaction,
  team: Team,
  planned: readonly PlannedSprint[],
  actor: Actor,
  at: Date,
): Promise<void> {
  for (const { sprint } of planned) await tx.write.sprints.insert(sprint);
  const cards = planned.flatMap(({ records }) => records.cards);
  if (cards.length > 0) await tx.write.cards.insert(cards);
  await tx.write.cards.insertFacts(
    planned.flatMap(({ records }) => records.facts.map(({ order: _order, ...fact }) => fact)),
  );
  for (const { sprint, past, workingDays, memberDays, value } of planned) {
    await tx.write.history.savePastSprint({
      ...past,
      sprintId: sprint.id,
      teamId: team.id,
      workspaceId: team.workspaceId,
      endsOn: sprint.endsOn,
      workingDays,
      memberDays,
      recordedAt: at,
    });
    if (value !== undefined)
      await tx.write.history.recordValue({ sprintId: sprint.id, value, byUserId: actor.userId, at });
  }
}
