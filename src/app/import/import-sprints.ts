/**
 * Brings past sprints in from files: first shows what would be imported and every bad line, then imports all of it or
 * nothing. Only what was shown is imported. An imported sprint is closed, is posted nowhere, and is never opened again.
 */
import type { GivenFile } from '../csv/given-file.ts';
import { pastSprints } from '../history/team-history.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import { Refusal } from '../refusal.ts';
import { membershipAt, membershipInTeam, type Place, requireFacilitator, todayOf } from '../team/place.ts';
import type { Actor, Sprint, Team } from '../team/team.ts';
import type { ImportPiece, ImportPreview, PreviewedSprint } from './import-reading.ts';
import type { LeftOutSprint, PlanContext } from './sprints-to-import.ts';

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
  readonly files: readonly GivenFile[];
  /** The fingerprint of the preview that was seen; undefined when none was. */
  readonly seen: string | undefined;
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
 * @throws Refusal `bad-input` (field `files`) when nothing was given, `file-unreadable`, `not-a-facilitator`, and those of
 * finding the team.
 */
export async function importSprints(
  deps: AppDependencies,
  actor: Actor,
  { teamId, files, seen }: ImportInput,
): Promise<ImportOutcome> {
  const context = await deps.store.read((read) => planContext(read, deps, actor, teamId));
  // Large files take seconds, in which no transaction may be open.
  return deps.files.imports({ files, context, seen }, async ({ reading, pieces }) => {
    if (!reading) {
      throw new Refusal('bad-input', { problems: [{ field: 'files', problem: { code: 'no-files' } }] });
    }
    const { preview, mayImport } = reading;
    if (!mayImport) return { kind: 'preview', preview };
    return deps.store.transaction(async (tx) => {
      // Held until the end, so that no sprint comes between checking and recording.
      await tx.lock.team(teamId);
      const { team, existing } = await planContext(tx.read, deps, actor, teamId);
      // Somebody was quicker: what they see now has that in it.
      if (!isSame(existing, context.existing)) return { kind: 'preview', preview };
      for await (const piece of pieces()) await record(tx, piece, actor, context.now);
      const { sprints, cards, answers, leftOut } = preview;
      const knownSprints = (await pastSprints(tx, team)).length;
      return { kind: 'imported', imported: { team, sprints, cards, answers, leftOut, knownSprints } };
    });
  });
}

async function planContext(
  read: Reading,
  deps: AppDependencies,
  actor: Actor,
  teamId: string,
): Promise<PlanContext> {
  const membership = await membershipInTeam(read, actor, teamId);
  requireFacilitator(membership, ACT);
  const { team } = membership;
  const now = deps.clock.now();
  const existing = await read.sprintsOf(team.id);
  return { team, existing, today: todayOf(team, now), now, byUserId: actor.userId };
}

/** Whether nothing has changed in what an import must not touch. */
function isSame(sprints: readonly Sprint[], before: readonly Sprint[]): boolean {
  const marks = (all: readonly Sprint[]): string =>
    JSON.stringify(all.map(({ id, name, startsOn, endsOn, state }) => [id, name, startsOn, endsOn, state]));
  return marks(sprints) === marks(before);
}

async function record(tx: Transaction, piece: ImportPiece, actor: Actor, at: Date): Promise<void> {
  const { sprints, past, values, cards, facts } = piece;
  for (const sprint of sprints) await tx.write.sprints.insert(sprint);
  if (cards.length > 0) await tx.write.cards.insert(cards);
  await tx.write.cards.insertFacts(facts);
  for (const one of past) await tx.write.history.savePastSprint(one);
  for (const { sprintId, value } of values) {
    await tx.write.history.recordValue({ sprintId, value, byUserId: actor.userId, at });
  }
}
