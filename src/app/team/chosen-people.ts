/** Checks the people whom somebody chose for a team: each can have their role, and is in the team's channel. */
import type { InputProblem } from '../input-problem.ts';
import type { Directory, Profile } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { refuseIfAny } from '../refusal.ts';
import { whyNot } from './belonging.ts';
import type { Membership } from './place.ts';
import type { Member, Role, Team } from './team.ts';

/** Who is to be what. */
interface ChosenPeople {
  readonly memberIds: readonly string[];
  readonly facilitatorIds: readonly string[];
  readonly productOwnerId: string | undefined;
}

/**
 * Nobody is asked every day, nor watches, from outside of the channel where the team's numbers can be read. Who has the role
 * already may have left the channel since.
 */
export async function newPeopleOutside(
  tx: Transaction,
  before: Team | undefined,
  { memberIds, facilitatorIds, productOwnerId }: ChosenPeople,
  { outside, profiles }: { readonly outside: readonly string[]; readonly profiles: Profiles },
): Promise<InputProblem[]> {
  const known = before ? (await tx.read.membersOf(before.id)).filter(({ isActive }) => isActive) : [];
  const had = (fits: (person: Member) => boolean) => known.filter(fits).map(({ userId }) => userId);
  const newOutside = (
    field: keyof ChosenPeople,
    userIds: readonly string[],
    already: readonly (string | undefined)[],
  ): InputProblem[] =>
    userIds
      .filter((userId) => outside.includes(userId) && !already.includes(userId))
      .map((userId) => {
        const problem = { code: 'not-in-channel', person: profiles.get(userId)?.name ?? userId } as const;
        return { field, problem };
      });
  return [
    ...newOutside(
      'memberIds',
      memberIds,
      had(({ isMember }) => isMember),
    ),
    ...newOutside(
      'facilitatorIds',
      facilitatorIds,
      had(({ isFacilitator }) => isFacilitator),
    ),
    ...newOutside('productOwnerId', listOf(productOwnerId), [before?.productOwnerId]),
  ];
}

/** Whom the form showed, and who is no longer on the team: they weren't chosen, only left in the field. */
export function withoutLeavers(
  {
    memberIds,
    facilitatorIds,
    productOwnerId,
    shownIds,
  }: ChosenPeople & { readonly shownIds?: readonly string[] | undefined },
  { team, members }: Pick<Membership, 'team' | 'members'>,
): ChosenPeople {
  const present = members.filter(({ isActive }) => isActive).map(({ userId }) => userId);
  const stays = (userId: string): boolean =>
    !shownIds?.includes(userId) || present.includes(userId) || team.productOwnerId === userId;
  return {
    memberIds: memberIds.filter(stays),
    facilitatorIds: facilitatorIds.filter(stays),
    productOwnerId: listOf(productOwnerId).find(stays),
  };
}

export function peopleIn({ memberIds, facilitatorIds, productOwnerId }: ChosenPeople): string[] {
  return [...memberIds, ...facilitatorIds, ...listOf(productOwnerId)];
}

function listOf(userId: string | undefined): string[] {
  return userId === undefined ? [] : [userId];
}

/** What the platform says of people, by their ids. */
export type Profiles = ReadonlyMap<string, Profile>;

/** @throws Refusal `bad-input` where somebody can't have the role that they were chosen for */
export async function profilesOf(
  directory: Directory,
  workspaceId: string,
  { memberIds, facilitatorIds, productOwnerId }: ChosenPeople,
): Promise<Profiles> {
  const found = new Map<string, Profile>();
  const wanted = async (
    field: keyof ChosenPeople,
    role: Role,
    userIds: readonly string[],
  ): Promise<InputProblem[]> => {
    const profiles = await Promise.all(userIds.map((userId) => directory.profile(workspaceId, userId)));
    return profiles.flatMap((profile): InputProblem[] => {
      found.set(profile.userId, profile);
      const code = whyNot(profile, role);
      return code ? [{ field, problem: { code, person: profile.name } }] : [];
    });
  };
  const problems = await Promise.all([
    wanted('memberIds', 'member', memberIds),
    wanted('facilitatorIds', 'facilitator', facilitatorIds),
    wanted('productOwnerId', 'product-owner', listOf(productOwnerId)),
  ]);
  refuseIfAny(problems.flat());
  return found;
}
