/**
 * Erases a person for good. What they said about cards becomes the team's: no id, no name, no notes; every number stays.
 * Decides whether it may be done; the store knows where the person occurs.
 */

import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { Refusal } from '../refusal.ts';
import { letGo, tellIfStuck } from '../team/leave-team.ts';
import type { Actor } from '../team/team.ts';
import { countOf } from './personal-data.ts';

/** What a request that was under way has written in the meantime is erased as well. */
const MOST_ROUNDS = 3;

export interface Erased {
  /** Records that were deleted or lost their name. */
  readonly records: number;
  readonly teamNames: readonly string[];
  /** Whether the bot's messages to the person are being deleted; undefined: that was not asked for. */
  readonly removesMessages?: boolean;
}

export interface Wish {
  /** The bot's messages to the person are to be deleted on the platform as well. */
  readonly removeMessages?: boolean;
}

/** What is known of the person from the rounds before. */
interface Known {
  readonly teamIds: readonly string[];
  readonly names: readonly string[];
}

/**
 * Erases the one who asks, or, for the operator, somebody who can't ask any more.
 *
 * @throws Refusal `nothing-stored`
 */
export async function erasePerson(
  deps: Pick<AppDependencies, 'store' | 'clock'>,
  person: Actor,
  { removeMessages = false }: Wish = {},
): Promise<Erased> {
  let known: Known = { teamIds: [], names: [] };
  let erased: Erased | undefined;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const beginAt = removeMessages && !erased ? deps.clock.now() : undefined;
    const done = await deps.store.transaction((tx) => eraseOnce(tx, person, known, beginAt));
    if (!done) break;
    erased ??= done;
    known = done;
  }
  if (!erased) throw new Refusal('nothing-stored', {});
  const { records, teamNames, removesMessages } = erased;
  return { records, teamNames, ...(removeMessages && { removesMessages: removesMessages ?? false }) };
}

/** Undefined: nothing is stored. */
async function eraseOnce(
  tx: Transaction,
  actor: Actor,
  known: Known,
  removeMessagesFrom: Date | undefined,
): Promise<(Erased & Known) | undefined> {
  // A request that saw the person on a team a moment ago and waits for it comes first, and is cleaned up after.
  for (const teamId of known.teamIds) await tx.lock.team(teamId);
  await tx.lock.teamsOfPerson(actor);
  const records = countOf(await tx.read.personalSums(actor));
  if (records === 0) return undefined;
  const memberships = await tx.read.personalRecords(actor, 'memberships');
  const teams = await tx.read.teamsOfPerson(actor);
  const peopleOf = await tx.read.peopleOf(teams.map(({ id }) => id));
  for (const team of teams) await letGo(tx, team, [actor.userId]);
  const names = [...new Set([...known.names, ...memberships.map(({ name }) => String(name))])];
  // While it is known where they are.
  const removesMessages = removeMessagesFrom && (await tx.write.removals.begin(actor, removeMessagesFrom));
  await tx.write.people.erase(actor, names);
  for (const team of teams) await tellIfStuck(tx, team, peopleOf.get(team.id) ?? []);
  const teamIds = new Set([...known.teamIds, ...teams.map(({ id }) => id)]);
  return {
    records,
    ...(removesMessages !== undefined && { removesMessages }),
    teamNames: teams.map(({ name }) => name),
    names,
    // In one order for all, as everywhere that several teams are locked.
    teamIds: [...teamIds].sort(),
  };
}
