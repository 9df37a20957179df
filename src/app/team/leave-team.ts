/**
 * What follows when people are no longer on a team: they are asked nothing more, and their open cards need another
 * owner, which the facilitators hear once. What they said stays. Who was taken off hears it; nobody else is told who left, nor why.
 */
import type { Day } from '../../sprint/calendar.ts';
import { isOpenCard, statesOf } from '../cards/card-line.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import type { DeliveryFailure } from '../posting/delivery-failure.ts';
import { directPost } from '../posting/post-kinds.ts';
import type { Post } from '../posting/posts.ts';
import { Refusal } from '../refusal.ts';
import {
  type Audience,
  audienceAt,
  audienceInTeam,
  dayWithin,
  facilitatorIdsOf,
  facilitatorsOrMembers,
  type Place,
  teamsReadBy,
  todayOf,
} from './place.ts';
import type { Actor, Member, Sprint, Team } from './team.ts';

/**
 * The team must be locked, and its members saved as they are now.
 *
 * @param at undefined: they are erased, and so that they went isn't recorded
 * @param byUserId who took them off the team; undefined: they left
 */
export async function letGo(
  tx: Transaction,
  team: Team,
  userIds: readonly string[],
  { at, byUserId }: { readonly at?: Date; readonly byUserId?: string } = {},
): Promise<void> {
  if (userIds.length === 0) return;
  await tx.write.posts.skipUnsentTo(team.id, userIds);
  for (const sprint of await tx.read.openSprintsOf(team.id)) {
    await handCardsBack(tx, team, sprint, userIds, { at, byUserId });
  }
  if (byUserId === undefined) return;
  const others = userIds.filter((userId) => userId !== byUserId);
  await tx.write.posts.add(
    others.map((userId) => directPost(team, userId, { kind: 'taken-off', teamId: team.id, byUserId })),
  );
}

/** Takes people off the open cards of a sprint, and tells the facilitators when one is nobody's then. */
export async function handCardsBack(
  tx: Transaction,
  team: Team,
  sprint: Sprint,
  userIds: readonly string[],
  { at, byUserId }: { readonly at?: Date | undefined; readonly byUserId?: string | undefined },
): Promise<void> {
  const gone = new Set(userIds);
  const open = statesOf(await tx.read.recordsOf(sprint.id)).filter(isOpenCard);
  const theirs = open.filter(({ card }) => card.ownerIds.some((id) => gone.has(id)));
  await tx.write.cards.changeOwners(
    theirs.map(({ card }) => ({
      card,
      ownerIds: card.ownerIds.filter((id) => !gone.has(id)),
      by: at && {
        userId: byUserId ?? (card.ownerIds.find((id) => gone.has(id)) as string),
        day: dayWithin(sprint, todayOf(team, at)),
        at,
      },
    })),
  );
  const needsOwner = open.some(
    ({ card }) => card.ownerIds.length > 0 && card.ownerIds.every((id) => gone.has(id)),
  );
  if (!needsOwner) return;
  const staying = (await tx.read.membersOf(team.id)).filter(({ userId }) => !gone.has(userId));
  await tellOfOwnerless(tx, team, staying, sprint.id);
}

/** Tells the facilitators that open cards are nobody's. @param exceptUserId who knows already */
export async function tellOfOwnerless(
  tx: Transaction,
  team: Team,
  members: readonly Member[],
  sprintId: string,
  exceptUserId?: string,
): Promise<void> {
  // Nobody works on them any more.
  if (team.endedAt) return;
  const posts = facilitatorsOrMembers(members)
    .filter((userId) => userId !== exceptUserId)
    .map((userId) => directPost(team, userId, { kind: 'owner-needed', sprintId }));
  if (posts.length > 0) await tx.write.posts.add(posts);
}

/** What somebody reads before they leave. */
export interface LeaveForm {
  readonly team: Team;
  /** Their open cards that nobody else owns: those will be nobody's. */
  readonly leftAlone: number;
  /** Their other open cards. */
  readonly shared: number;
  /** Nobody else facilitates, so each of those who stay may then act as a facilitator. */
  readonly isLastFacilitator: boolean;
  readonly isMember: boolean;
  readonly isProductOwner: boolean;
}

/** Which team is left: the one of a place, or one of the person's by its name, as they may be out of its channel by now. */
interface LeaveInput {
  readonly place: Place;
  /** Empty: the only one. */
  readonly teamName: string;
}

/** @throws Refusal `which-team-is-left`, and those of finding the team */
export async function leaveForm(deps: AppDependencies, actor: Actor, input: LeaveInput): Promise<LeaveForm> {
  return deps.store.read(async (read) => {
    const { team, members, isProductOwner } = await teamToLeave(read, actor, input);
    const openSprints = await read.openSprintsOf(team.id);
    const records = await read.recordsOfMany(openSprints.map(({ id }) => id));
    const cards = [...records.values()]
      .flatMap((one) => statesOf(one).filter(isOpenCard))
      .filter(({ card }) => card.ownerIds.includes(actor.userId));
    const leftAlone = cards.filter(({ card }) => card.ownerIds.length === 1).length;
    const facilitatorIds = facilitatorIdsOf(members);
    return {
      team,
      leftAlone,
      shared: cards.length - leftAlone,
      isLastFacilitator: facilitatorIds.join() === actor.userId,
      isMember: members.some(({ userId, isActive }) => userId === actor.userId && isActive),
      isProductOwner,
    };
  });
}

async function teamToLeave(read: Reading, actor: Actor, { place, teamName }: LeaveInput): Promise<Audience> {
  const wanted = teamName.trim().toLowerCase();
  if (!place.isDirect && wanted === '') return audienceAt(read, actor, place);
  const teams = await teamsReadBy(read, actor);
  if (teams.length === 0) throw new Refusal('no-team-of-yours', {});
  const meant = teams.filter(({ name }) => wanted === '' || name.toLowerCase() === wanted);
  const [only, ...others] = meant;
  if (only && others.length === 0) return audienceInTeam(read, actor, only.id);
  throw new Refusal('which-team-is-left', { teamNames: teams.map(({ name }) => name) });
}

/**
 * Takes the one who asks off the team, whatever they are on it: member, facilitator, guest or product owner. What they said
 * stays.
 *
 * @throws Refusal `not-a-member`, `no-team-of-yours`
 */
export async function leaveTeam(
  deps: AppDependencies,
  actor: Actor,
  { teamId }: { readonly teamId: string },
): Promise<Team> {
  return deps.store.transaction(async (tx) => {
    await tx.lock.team(teamId);
    const { team, members, isProductOwner } = await audienceInTeam(tx.read, actor, teamId);
    const now = deps.clock.now();
    const leavers = members.filter(({ userId, isActive }) => userId === actor.userId && isActive);
    await tx.write.teams.saveMembers(
      teamId,
      leavers.map((leaver) => gonePerson(leaver, todayOf(team, now))),
    );
    if (isProductOwner) {
      await tx.write.teams.save({ ...team, productOwnerId: undefined, ownerGetsVerdicts: false });
    }
    await letGo(tx, team, [actor.userId], { at: now });
    await tellIfStuck(tx, team, members);
    return team;
  });
}

/** Tells those who stay, when nobody facilitates any more, that each of them may. @param before the people until now */
export async function tellIfStuck(tx: Transaction, team: Team, before: readonly Member[]): Promise<void> {
  // Nobody plans or closes anything there any more.
  if (team.endedAt) return;
  const people = await tx.read.membersOf(team.id);
  if (facilitatorIdsOf(people).length > 0 || facilitatorIdsOf(before).length === 0) return;
  const posts = facilitatorsOrMembers(people).map((userId) =>
    directPost(team, userId, { kind: 'no-facilitator', teamId: team.id }),
  );
  if (posts.length > 0) await tx.write.posts.add(posts);
}

/** As somebody is kept who is no longer on the team: their answers stay, and so do the days on which they were there. */
export function gonePerson(person: Member, leftOn: Day | undefined): Member {
  const guestIn = person.guestIn.map((stay) => ({ ...stay, until: stay.until ?? leftOn }));
  return { ...person, isActive: false, isFacilitator: false, guestIn, leftOn };
}

async function loseOwner(tx: Transaction, team: Team, members: readonly Member[]): Promise<void> {
  await tx.write.teams.save({ ...team, productOwnerId: undefined, ownerGetsVerdicts: false });
  if (team.endedAt) return;
  const told = facilitatorsOrMembers(members).filter((userId) => userId !== team.productOwnerId);
  await tx.write.posts.add(
    told.map((userId) =>
      directPost(team, userId, { kind: 'role-ended', teamId: team.id, reason: 'product-owner' }),
    ),
  );
}

/** Takes somebody whose account is gone, or no longer of the workspace, off every team of it that they are on. */
export async function leaveAllTeams(
  tx: Transaction,
  person: { readonly workspaceId: string; readonly userId: string },
  now: Date,
): Promise<void> {
  await tx.lock.teamsOfPerson(person);
  for (const team of await tx.read.teamsOfPerson(person)) {
    const members = await tx.read.membersOf(team.id);
    if (team.productOwnerId === person.userId) await loseOwner(tx, team, members);
    const member = members.find(({ userId, isActive }) => userId === person.userId && isActive);
    if (!member) continue;
    await tx.write.teams.saveMembers(team.id, [gonePerson(member, todayOf(team, now))]);
    await letGo(tx, team, [person.userId], { at: now });
    await tellIfStuck(tx, team, members);
  }
}

/**
 * The platform's answers that are about the recipient. Others, such as a missing scope or a token that was revoked, are
 * about the bot, and would otherwise take everybody off every team.
 */
const ABOUT_RECIPIENT = new Set([
  'user_disabled',
  'user_not_found',
  'users_not_found',
  'user_not_visible',
  'channel_not_found',
]);

/**
 * After a direct message was refused: a person whose account is gone leaves their teams, without waiting for the daily
 * look-up.
 *
 * @returns whether the person left
 */
export async function leaveIfGone(
  deps: Pick<AppDependencies, 'store' | 'directory' | 'clock'>,
  { workspaceId, recipient }: Pick<Post, 'workspaceId' | 'recipient'>,
  failure: DeliveryFailure,
): Promise<boolean> {
  if (!('userId' in recipient) || failure.kind !== 'refused' || !ABOUT_RECIPIENT.has(failure.code))
    return false;
  const { userId } = recipient;
  // The account must be gone by the platform's own word; where that can't be had, the next refusal asks again.
  const profile = await deps.directory.profile(workspaceId, userId).catch(() => undefined);
  if (!profile?.isDeactivated) return false;
  await deps.store.transaction((tx) => leaveAllTeams(tx, { workspaceId, userId }, deps.clock.now()));
  return true;
}
