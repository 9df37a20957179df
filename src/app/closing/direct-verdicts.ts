/** Who gets verdicts in their direct messages as well, with all that is in the thread: people of the team, each as they choose. */
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { directPost } from '../posting/post-kinds.ts';
import { audienceBy, type TeamReference } from '../team/place.ts';
import type { Actor, Member, Team } from '../team/team.ts';

export interface DirectVerdicts {
  readonly team: Team;
  readonly isWanted: boolean;
}

/** @throws Refusal those of finding the team */
export async function directVerdicts(
  deps: AppDependencies,
  actor: Actor,
  reference: TeamReference,
): Promise<DirectVerdicts> {
  return deps.store.read(async (read) => {
    const { team, members } = await audienceBy(read, actor, reference);
    return { team, isWanted: readersOf(team, members).includes(actor.userId) };
  });
}

/** @throws Refusal those of finding the team */
export async function chooseDirectVerdicts(
  deps: AppDependencies,
  actor: Actor,
  { isWanted, ...reference }: TeamReference & { readonly isWanted: boolean },
): Promise<DirectVerdicts> {
  return deps.store.transaction(async (tx) => {
    const found = await audienceBy(tx.read, actor, reference);
    await tx.lock.team(found.team.id);
    const { team, members, isProductOwner } = await audienceBy(tx.read, actor, { teamId: found.team.id });
    const mine = members.filter(({ userId, isActive }) => userId === actor.userId && isActive);
    await tx.write.teams.saveMembers(
      team.id,
      mine.map((member) => ({ ...member, getsVerdicts: isWanted })),
    );
    if (isProductOwner) await tx.write.teams.save({ ...team, ownerGetsVerdicts: isWanted });
    return { team, isWanted };
  });
}

/** Owes the sprint's verdict to those who want it, each once; what they have is brought up to date with the channel's. */
export async function oweDirectVerdicts(
  tx: Transaction,
  team: Team,
  { id: sprintId }: { readonly id: string },
): Promise<void> {
  const owed = await tx.read.postsAbout(sprintId, 'direct-verdict');
  const have = owed.flatMap(({ recipient }) => ('userId' in recipient ? [recipient.userId] : []));
  const posts = readersOf(team, await tx.read.membersOf(team.id))
    .filter((userId) => !have.includes(userId))
    .map((userId) => directPost(team, userId, { kind: 'direct-verdict', sprintId }));
  if (posts.length > 0) await tx.write.posts.add(posts);
}

export function readersOf({ productOwnerId, ownerGetsVerdicts }: Team, members: readonly Member[]): string[] {
  const readers = members.filter(({ isActive, getsVerdicts }) => isActive && getsVerdicts);
  const owner = productOwnerId !== undefined && ownerGetsVerdicts ? [productOwnerId] : [];
  return [...new Set([...readers.map(({ userId }) => userId), ...owner])];
}
