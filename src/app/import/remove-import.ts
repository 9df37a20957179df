/**
 * Takes an imported sprint out of the team's history, so that it can be imported again as it should be. One that was run
 * here stays: people answered in it.
 */

import { closedSprint } from '../history/closed-sprint.ts';
import type { PastSprint } from '../history/past-sprint.ts';
import { pastSprints } from '../history/team-history.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { channelPost } from '../posting/post-kinds.ts';
import { Refusal } from '../refusal.ts';
import {
  type Membership,
  membershipAt,
  membershipInTeam,
  type Place,
  requireFacilitator,
} from '../team/place.ts';
import type { Actor, Team } from '../team/team.ts';

/** As many as a list of choices can hold. */
const SPRINTS_OFFERED = 100;

type ImportedSprint = Pick<PastSprint, 'sprintId' | 'name' | 'startsOn' | 'endsOn' | 'commitmentPoints'>;

export interface RemovalForm {
  readonly team: Team;
  /** Imported sprints, the latest first. */
  readonly sprints: readonly ImportedSprint[];
  /** Older ones, which are not in the list. */
  readonly leftOut: number;
}

export interface Removal {
  readonly team: Team;
  readonly sprint: ImportedSprint;
  /** Closed sprints that the team has without it. */
  readonly sprintsLeft: number;
}

interface RemovalInput {
  readonly teamId: string;
  readonly sprintId: string;
}

/** @throws Refusal `not-a-facilitator`, and those of finding the team. */
export async function removalForm(deps: AppDependencies, actor: Actor, place: Place): Promise<RemovalForm> {
  return deps.store.transaction(async (tx) => {
    const membership = await membershipAt(tx.read, actor, place);
    requireFacilitator(membership, 'import');
    const imported = (await importedSprints(tx, membership)).reverse();
    return {
      team: membership.team,
      sprints: imported.slice(0, SPRINTS_OFFERED),
      leftOut: Math.max(0, imported.length - SPRINTS_OFFERED),
    };
  });
}

/**
 * What taking it out means, for the question whether it is to go.
 *
 * @throws Refusal `not-a-facilitator`, `sprint-stays`, `no-such-sprint`, and those of finding the team.
 */
export async function previewRemoval(
  deps: AppDependencies,
  actor: Actor,
  input: RemovalInput,
): Promise<Removal> {
  return deps.store.transaction((tx) => removalOf(tx, actor, input));
}

/**
 * Takes it out; the channel hears who did it.
 *
 * @throws Refusal as above
 */
export async function removeImport(
  deps: AppDependencies,
  actor: Actor,
  input: RemovalInput,
): Promise<Removal> {
  return deps.store.transaction(async (tx) => {
    // Held, so that it does not become the named baseline meanwhile.
    await membershipInTeam(tx.read, actor, input.teamId);
    await tx.lock.team(input.teamId);
    const removal = await removalOf(tx, actor, input);
    const { team, sprint } = removal;
    await tx.write.retention.removeImport(sprint.sprintId);
    const subject = {
      kind: 'import-removed',
      teamId: team.id,
      byUserId: actor.userId,
      reason: sprint.name,
    } as const;
    await tx.write.posts.add([channelPost(team, subject)]);
    return removal;
  });
}

async function removalOf(
  tx: Transaction,
  actor: Actor,
  { teamId, sprintId }: RemovalInput,
): Promise<Removal> {
  const membership = await membershipInTeam(tx.read, actor, teamId);
  requireFacilitator(membership, 'import');
  const { team } = membership;
  const past = await pastSprints(tx, team);
  const { name: sprintName } = await closedSprint(tx.read, team, past, { sprintId });
  const sprint = (await importedSprints(tx, membership)).find((imported) => imported.sprintId === sprintId);
  if (!sprint) throw new Refusal('sprint-stays', { sprintName, why: 'run-here' });
  if (team.baselineSprintId === sprintId)
    throw new Refusal('sprint-stays', { sprintName, why: 'named-baseline' });
  return { team, sprint, sprintsLeft: past.length - 1 };
}

async function importedSprints(tx: Transaction, { team }: Membership): Promise<ImportedSprint[]> {
  const imported = (await tx.read.sprintsOf(team.id)).filter(({ importedAt }) => importedAt !== undefined);
  const ids = new Set(imported.map(({ id }) => id));
  return (await pastSprints(tx, team)).filter(({ sprintId }) => ids.has(sprintId));
}
