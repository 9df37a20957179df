/** Who hears of a change in how a team is set up: its channel of its settings, and each person of their roles. */
import type { Transaction } from '../ports/store.ts';
import { channelPost, directPost } from '../posting/post-kinds.ts';
import { activeMembers, type Member, type Role, type Team } from './team.ts';
import { type TeamAndPeople, teamChanges, writtenChanges } from './team-changes.ts';

/** In the team's channel: by whom, and what is another now. Records nothing where nothing has changed. */
export async function tellOfChanges(
  tx: Transaction,
  before: TeamAndPeople,
  after: TeamAndPeople,
  byUserId: string,
): Promise<void> {
  const changes = teamChanges(before, after);
  if (changes.length === 0) return;
  const { team } = after;
  await tx.write.posts.add([
    channelPost(team, { kind: 'team-changed', teamId: team.id, byUserId, reason: writtenChanges(changes) }),
  ]);
}

interface RolesChange {
  /** Undefined: the team is new. */
  readonly before: Team | undefined;
  /** The team's people as they were. */
  readonly known: readonly Member[];
  readonly now: {
    readonly memberIds: readonly string[];
    readonly facilitatorIds: readonly string[];
    readonly productOwnerId: string | undefined;
  };
  readonly byUserId: string;
}

/**
 * Nobody is made something on a team without hearing of it: from whom, what it means, and how to leave. Records a message to
 * each person who is now what they weren't before: one, however many roles they got.
 */
export async function tellOfRoles(
  tx: Transaction,
  team: Team,
  { before, known, now, byUserId }: RolesChange,
): Promise<void> {
  const active = known.filter(({ isActive }) => isActive);
  const given = new Map<string, Role[]>();
  const give = (role: Role, userIds: readonly string[], had: readonly string[]): void => {
    for (const userId of new Set(userIds)) {
      if (!had.includes(userId)) given.set(userId, [...(given.get(userId) ?? []), role]);
    }
  };
  give('member', now.memberIds, idsOf(activeMembers(active)));
  give('facilitator', now.facilitatorIds, idsOf(active.filter(({ isFacilitator }) => isFacilitator)));
  give('product-owner', listOf(now.productOwnerId), listOf(before?.productOwnerId));
  const posts = [...given].map(([userId, roles]) =>
    directPost(team, userId, { kind: 'role-given', teamId: team.id, byUserId, reason: roles.join(' ') }),
  );
  if (posts.length > 0) await tx.write.posts.add(posts);
}

function idsOf(people: readonly Member[]): string[] {
  return people.map(({ userId }) => userId);
}

function listOf(id: string | undefined): string[] {
  return id === undefined ? [] : [id];
}
