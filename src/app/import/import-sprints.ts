/**
 * Brings past sprints and kept work in from files: first shows what would be imported and every bad line, then imports all of it or
 * nothing. Only what was shown is imported. An imported sprint is closed, is posted nowhere, and is never opened again.
 */
import { randomUUID } from 'node:crypto';
import type { GivenFile } from '../csv/given-file.ts';
import { pastSprints } from '../history/team-history.ts';
import { failAtOnce, type NotePassedOver, oneByOne } from '../in-portions.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { asidePrefix, type ImportPiece } from '../ports/imports.ts';
import type { Reading } from '../ports/store.ts';
import { Refusal } from '../refusal.ts';
import { membershipAt, membershipInTeam, type Place, requireFacilitator, todayOf } from '../team/place.ts';
import type { Actor, Team } from '../team/team.ts';
import type { ImportPreview } from './import-reading.ts';
import type { PlanContext } from './sprints-to-import.ts';

/** What only a facilitator may do. */
const ACT = 'import';

/** No import takes so long. */
const LEFT_AFTER_MS = 60 * 60_000;

export interface ImportForm {
  readonly team: Team;
  /** Closed sprints that the team has already. */
  readonly knownSprints: number;
}

interface ImportInput {
  readonly teamId: string;
  /** Empty ones are passed over. */
  readonly files: readonly GivenFile[];
  /** The fingerprint of the preview that was seen; undefined when none was. */
  readonly seen: string | undefined;
}

export interface SprintsImported
  extends Pick<
    ImportPreview,
    'team' | 'sprints' | 'cards' | 'answers' | 'leftOut' | 'bodies' | 'bodiesLeftOut'
  > {
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
    const { sprints, cards, answers, leftOut, bodies, bodiesLeftOut } = preview;
    const asideId = `${asidePrefix(teamId)}${randomUUID()}`;
    try {
      await prepare(deps, asideId, context, pieces());
      const team = await deps.store.transaction(async (tx) => {
        // Held, so that no sprint comes between checking and recording.
        await tx.lock.team(teamId);
        const now = await planContext(tx.read, deps, actor, teamId);
        // Somebody was quicker: what they see now has that in it.
        if (!isSame(now, context)) return undefined;
        await tx.write.imports.bringIn(asideId, now.team);
        return now.team;
      });
      if (!team) return { kind: 'preview', preview };
      const known = context.existing.filter(({ state }) => state === 'closed').length;
      const imported = {
        ...{ team, sprints, cards, answers, leftOut, bodies, bodiesLeftOut },
        knownSprints: known + sprints.length,
      };
      return { kind: 'imported', imported };
    } finally {
      // Nothing is left there once it was brought in. What can't be taken out now is taken out another day.
      await takeOut(deps, asideId).catch(() => undefined);
    }
  });
}

/** Piece by piece: an import of 30,000 cards takes seconds, in which others have their turn between the pieces. */
async function prepare(
  { store }: AppDependencies,
  asideId: string,
  { team, byUserId, now }: PlanContext,
  pieces: AsyncIterable<ImportPiece>,
): Promise<void> {
  await store.transaction((tx) => tx.aside.begin(asideId, team));
  for await (const piece of pieces) {
    await store.transaction((tx) => tx.aside.put(asideId, piece, byUserId, now));
  }
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
  const existingBodies = await read.bodiesOf(team.id);
  return { team, existing, existingBodies, today: todayOf(team, now), now, byUserId: actor.userId };
}

/** Whether nothing has changed in what an import must not touch. */
function isSame(now: PlanContext, before: PlanContext): boolean {
  const marks = ({ existing, existingBodies }: PlanContext): string =>
    JSON.stringify([
      existing.map(({ id, name, startsOn, endsOn, state }) => [id, name, startsOn, endsOn, state]),
      existingBodies,
    ]);
  return marks(now) === marks(before);
}

/** Takes out what was prepared for an import and never brought in, a sprint or body of work at a time, so that nobody waits for it. */
async function takeOut({ store }: Pick<AppDependencies, 'store'>, asideId: string): Promise<number> {
  let gone = 0;
  while (await store.transaction((tx) => tx.aside.takeOut(asideId))) gone += 1;
  return gone;
}

/** What processes left behind that ended in the middle of an import. @returns how many sprints and bodies */
export async function takeOutLeftImports(
  deps: Pick<AppDependencies, 'store' | 'clock'>,
  note: NotePassedOver = failAtOnce,
): Promise<number> {
  const before = new Date(deps.clock.now().getTime() - LEFT_AFTER_MS);
  const left = await deps.store.transaction((tx) => tx.aside.leftBefore(before));
  let gone = 0;
  const work = async (asideId: string): Promise<void> => {
    gone += await takeOut(deps, asideId);
  };
  await oneByOne(deps.store, left, { work, idOf: (asideId) => asideId, note });
  return gone;
}
