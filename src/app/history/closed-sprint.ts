/** Finds a closed sprint that somebody named, and says why when there is none. Reads only. */

import type { Reading, Transaction } from '../ports/store.ts';
import { Refusal } from '../refusal.ts';
import { type Audience, audienceBy, audienceInTeam, type TeamReference } from '../team/place.ts';
import type { Actor, Team } from '../team/team.ts';
import type { PastSprint } from './past-sprint.ts';

/** A sprint by its id (from a form), or by its name as typed. */
export type ClosedSprintReference = { readonly sprintId: string } | { readonly sprintName: string };

/** The team with its members, locked against other changes and read again under the lock. */
export async function lockedAudience(
  tx: Transaction,
  actor: Actor,
  reference: TeamReference,
): Promise<Audience> {
  const found = await audienceBy(tx.read, actor, reference);
  await tx.lock.team(found.team.id);
  return audienceInTeam(tx.read, actor, found.team.id);
}

/**
 * @param past the team's closed sprints, oldest first
 * @throws Refusal `no-closed-sprint`, `no-such-sprint`, `sprint-not-closed`.
 */
export async function closedSprint(
  read: Reading,
  team: Team,
  past: readonly PastSprint[],
  reference: ClosedSprintReference,
): Promise<PastSprint> {
  const isMeant =
    'sprintId' in reference
      ? ({ id }: Named): boolean => id === reference.sprintId
      : ({ name }: Named): boolean => isSameName(name, reference.sprintName);
  const found = past.findLast(({ sprintId, name }) => isMeant({ id: sprintId, name }));
  if (found) return found;
  const other = (await read.sprintsOf(team.id)).findLast(isMeant);
  if (other && other.state !== 'closed') {
    throw new Refusal('sprint-not-closed', { sprintName: other.name, state: other.state });
  }
  if (past.length === 0) throw new Refusal('no-closed-sprint', { teamName: team.name, withVelocity: false });
  const typed = 'sprintName' in reference ? reference.sprintName : '';
  throw new Refusal('no-such-sprint', {
    reference: typed,
    known: past.map(({ name }) => name).reverse(),
  });
}

interface Named {
  readonly id: string;
  readonly name: string;
}

/** Whatever their case and spaces. */
export function isSameName(one: string, other: string): boolean {
  return alike(one) === alike(other);
}

function alike(name: string): string {
  return name.normalize('NFKC').replace(/\s+/g, ' ').trim().toLowerCase();
}
