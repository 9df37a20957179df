/** Finds the team, the sprint and the right to touch them. Every use case that takes an actor starts here. */
import type { Day } from '../../sprint/calendar.ts';
import { NO_DAYS_OFF } from '../../sprint/work-calendar.ts';
import { dayAt } from '../clock/local-time.ts';
import type { SprintWithTeam } from '../ports/sprints.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import { erasedOn } from '../privacy/promised-times.ts';
import { type FacilitatorAct, Refusal } from '../refusal.ts';
import { waitForAll } from '../wait-for-all.ts';
import type { Actor, Member, Sprint, Team } from './team.ts';

/** Where something was said. */
export interface Place {
  readonly channelId: string;
  /** In the person's direct messages with the bot. */
  readonly isDirect: boolean;
}

/** The team, and the actor's membership of it. */
export interface Membership {
  readonly team: Team;
  readonly member: Member;
  readonly members: readonly Member[];
}

/** Who is let in: those on the team; or its product owner as well, who sees everything of a sprint and may drop cards. */
export type Admitted = 'members' | 'product-owner-too';

/**
 * The team of a place (the channel's, or in direct messages the person's only one), and its open sprints,
 * earliest first. A product owner who is let in is in nobody's list of members.
 *
 * @param now where a running sprint is meant: of several teams the only one that has one then is it
 * @throws Refusal `no-team-here`, `no-team-of-yours`, `several-teams`, `not-a-member`.
 */
export async function membershipAt(
  read: Reading,
  actor: Actor,
  place: Place,
  admitted: Admitted = 'members',
  now?: Date,
): Promise<
  Membership & { readonly openSprints: readonly Sprint[]; readonly pastVersion?: string | undefined }
> {
  if (!place.isDirect) {
    const found = await read.teamInChannel(actor.workspaceId, place.channelId);
    if (!found) throw new Refusal('no-team-here', {});
    const { team, members, openSprints, pastVersion } = found;
    return { ...membershipOf(actor, team, members, admitted), openSprints, pastVersion };
  }
  const own = await read.teamsOf(actor);
  const all = own.length === 0 && admitted === 'product-owner-too' ? await read.teamsOwnedBy(actor) : own;
  const teams = now !== undefined && all.length > 1 ? await withSprint(read, all, now) : all;
  const [only, ...others] = teams;
  if (!only) throw await nonMembers(read, actor);
  if (others.length > 0) throw new Refusal('several-teams', { teamNames: teams.map((team) => team.name) });
  const [members, openSprints] = await waitForAll([read.membersOf(only.id), read.openSprintsOf(only.id)]);
  return { ...membershipOf(actor, only, members, admitted), openSprints };
}

/** Those of the teams that have a running sprint; all, where none has. */
async function withSprint(read: Reading, teams: readonly Team[], now: Date): Promise<readonly Team[]> {
  const open = await waitForAll(teams.map(({ id }) => read.openSprintsOf(id)));
  const running = teams.filter((team, i) => open[i]?.some(({ startsOn }) => startsOn <= todayOf(team, now)));
  return running.length > 0 ? running : teams;
}

/**
 * The same for a team that was ended, or may have been: the one of the channel, or in direct messages the person's only one
 * that was.
 *
 * @throws Refusal `no-team-here`, `no-team-of-yours`, `several-teams`, `not-a-member`.
 */
export async function endedMembershipAt(read: Reading, actor: Actor, place: Place): Promise<Membership> {
  if (!place.isDirect) {
    const found = await read.teamInChannel(actor.workspaceId, place.channelId);
    if (!found) throw new Refusal('no-team-here', {});
    return anyMembershipOf(actor, found.team, found.members);
  }
  const ended = (await read.teamsOfPerson(actor)).filter(({ endedAt }) => endedAt);
  const [only, ...others] = ended;
  if (!only) throw new Refusal('no-team-of-yours', {});
  if (others.length > 0) throw new Refusal('several-teams', { teamNames: ended.map(({ name }) => name) });
  return anyMembershipOf(actor, only, await read.membersOf(only.id));
}

/** @throws Refusal `not-a-member`, also for a team of another workspace. */
export async function membershipInTeam(read: Reading, actor: Actor, teamId: string): Promise<Membership> {
  const [team, members] = await waitForAll([read.teamById(teamId), read.membersOf(teamId)]);
  if (!team || team.workspaceId !== actor.workspaceId) throw new Refusal('no-team-of-yours', {});
  return membershipOf(actor, team, members);
}

/**
 * A sprint named by its id (which a button carried and anybody may have forged), with the membership of
 * its team.
 */
export async function sprintForMember(
  read: Reading,
  actor: Actor,
  sprintId: string,
  admitted: Admitted = 'members',
): Promise<Membership & { sprint: Sprint }> {
  return memberOfSprint(actor, await read.sprintWithTeam(sprintId), admitted);
}

/** The same, with the team locked against other changes. */
export async function sprintForMemberLocked(
  tx: Transaction,
  actor: Actor,
  sprintId: string,
  admitted: Admitted = 'members',
): Promise<Membership & { sprint: Sprint }> {
  return memberOfSprint(actor, await tx.lock.sprintWithTeam(sprintId), admitted);
}

function memberOfSprint(
  actor: Actor,
  found: SprintWithTeam | undefined,
  admitted: Admitted,
): Membership & { sprint: Sprint } {
  if (!found || found.team.workspaceId !== actor.workspaceId) throw new Refusal('no-team-of-yours', {});
  return { ...membershipOf(actor, found.team, found.members, admitted), sprint: found.sprint };
}

/** What somebody without a team reads; a product owner reads what they can do instead. */
async function nonMembers(read: Reading, actor: Actor): Promise<Refusal> {
  const [owned] = await read.teamsOwnedBy(actor);
  if (!owned) return new Refusal('no-team-of-yours', {});
  return new Refusal('not-a-member', { teamName: owned.name, isProductOwner: true });
}

function membershipOf(
  actor: Actor,
  team: Team,
  members: readonly Member[],
  admitted: Admitted = 'members',
): Membership {
  const membership = anyMembershipOf(actor, team, members, admitted);
  refuseEnded(team);
  return membership;
}

/** Whoever may know of the team hears that it was ended, and until when it can be taken back. */
function refuseEnded(team: Team): void {
  if (!team.endedAt) return;
  const details = { teamName: team.name, erasedOn: erasedOn(team, team.endedAt) };
  throw new Refusal('team-ended', details);
}

/** Whether the team was ended or not. */
function anyMembershipOf(
  actor: Actor,
  team: Team,
  members: readonly Member[],
  admitted: Admitted = 'members',
): Membership {
  const member = members.find(({ userId, isActive }) => userId === actor.userId && isActive);
  const isProductOwner = team.productOwnerId === actor.userId;
  if (!member && isProductOwner && admitted === 'product-owner-too') {
    return { team, member: outsideMember(actor), members };
  }
  if (!member) {
    throw new Refusal('not-a-member', { teamName: team.name, isProductOwner, ...ifDeserted(members) });
  }
  return { team, member: { ...member, isFacilitator: facilitates(member, members) }, members };
}

/**
 * Whether everybody has left who could lead it. The next one who sets it up from its channel takes it over, with all that it
 * has behind it.
 */
export function isDesertedBy(members: readonly Member[]): boolean {
  return !members.some(({ isActive, mayFacilitate }) => isActive && mayFacilitate !== false);
}

function ifDeserted(members: readonly Member[]): { readonly isDeserted?: true } {
  return isDesertedBy(members) ? { isDeserted: true } : {};
}

/** The product owner as one of the team in nothing but name. */
function outsideMember({ userId }: Actor): Member {
  return {
    userId,
    name: '',
    isFacilitator: false,
    isMember: false,
    guestIn: [],
    isActive: false,
    getsVerdicts: false,
    worksOn: undefined,
    worksOnBefore: [],
    daysOff: NO_DAYS_OFF,
    joinedOn: undefined,
    leftOn: undefined,
  };
}

/** A team whose last facilitator is gone must not be stuck: until it names one, each of its members may act as one who may be. */
export function facilitates({ userId }: Member, members: readonly Member[]): boolean {
  return facilitatorsOrMembers(members).includes(userId);
}

/** Somebody who may read the team's numbers: an active member, or its product owner. */
export interface Audience {
  readonly team: Team;
  readonly members: readonly Member[];
  readonly isFacilitator: boolean;
  readonly isProductOwner: boolean;
}

/**
 * The team of a place, for those who may read its numbers: as `membershipAt`, but the product owner is let
 * in as well, member or not.
 *
 * @throws Refusal `no-team-here`, `no-team-of-yours`, `several-teams`, `not-a-member`.
 */
export async function audienceAt(read: Reading, actor: Actor, place: Place): Promise<Audience> {
  if (!place.isDirect) {
    const found = await read.teamInChannel(actor.workspaceId, place.channelId);
    if (!found) throw new Refusal('no-team-here', {});
    return audienceOf(actor, found.team, found.members);
  }
  const teams = await teamsReadBy(read, actor);
  const [only, ...others] = teams;
  if (!only) throw new Refusal('no-team-of-yours', {});
  if (others.length > 0) throw new Refusal('several-teams', { teamNames: teams.map((team) => team.name) });
  return audienceOf(actor, only, await read.membersOf(only.id));
}

/** @throws Refusal `no-team-of-yours`, also for a team of another workspace; `not-a-member`. */
export async function audienceInTeam(read: Reading, actor: Actor, teamId: string): Promise<Audience> {
  const [team, members] = await waitForAll([read.teamById(teamId), read.membersOf(teamId)]);
  if (!team || team.workspaceId !== actor.workspaceId) throw new Refusal('no-team-of-yours', {});
  return audienceOf(actor, team, members);
}

/** Teams whose numbers the person may read, in order of name. */
export async function teamsReadBy(read: Reading, actor: Actor): Promise<Team[]> {
  const own = await read.teamsOf(actor);
  const owned = (await read.teamsOwnedBy(actor)).filter(({ id }) => !own.some((team) => team.id === id));
  return [...own, ...owned].sort((a, b) => a.name.localeCompare(b.name));
}

function audienceOf(actor: Actor, team: Team, members: readonly Member[]): Audience {
  const member = members.find(({ userId, isActive }) => userId === actor.userId && isActive);
  const isProductOwner = team.productOwnerId === actor.userId;
  if (!member && !isProductOwner)
    throw new Refusal('not-a-member', { teamName: team.name, ...ifDeserted(members) });
  refuseEnded(team);
  const isFacilitator = member !== undefined && facilitates(member, members);
  return { team, members, isFacilitator, isProductOwner };
}

export function requireFacilitator({ team, member, members }: Membership, act: FacilitatorAct): void {
  if (member.isFacilitator) return;
  throw new Refusal('not-a-facilitator', {
    teamName: team.name,
    facilitatorIds: facilitatorIdsOf(members),
    act,
  });
}

export function facilitatorIdsOf(members: readonly Member[]): string[] {
  return members
    .filter(({ isFacilitator, isActive }) => isFacilitator && isActive)
    .map(({ userId }) => userId);
}

/** The facilitators; without one, every member acts as one, but for guests of the workspace. */
export function facilitatorsOrMembers(members: readonly Member[]): string[] {
  const facilitatorIds = facilitatorIdsOf(members);
  if (facilitatorIds.length > 0) return facilitatorIds;
  return members
    .filter(({ isActive, mayFacilitate }) => isActive && mayFacilitate !== false)
    .map(({ userId }) => userId);
}

/** Which team is meant: the one of a place, or one that a form carried and anybody may have forged. */
export type TeamReference = { readonly place: Place } | { readonly teamId: string };

/** @throws Refusal as `membershipAt` and `membershipInTeam` do. */
export function membershipBy(read: Reading, actor: Actor, reference: TeamReference): Promise<Membership> {
  return 'teamId' in reference
    ? membershipInTeam(read, actor, reference.teamId)
    : membershipAt(read, actor, reference.place);
}

/** @throws Refusal as `audienceAt` and `audienceInTeam` do. */
export function audienceBy(read: Reading, actor: Actor, reference: TeamReference): Promise<Audience> {
  return 'teamId' in reference
    ? audienceInTeam(read, actor, reference.teamId)
    : audienceAt(read, actor, reference.place);
}

/** Where a use case finds its sprint: the running one of a place's team, or one named by id. */
export type SprintReference = { readonly place: Place } | { readonly sprintId: string };

/** The sprint that is meant, open, with the actor's membership; the team is locked against other changes. */
export async function openSprint(
  tx: Transaction,
  actor: Actor,
  reference: SprintReference,
  now: Date,
  admitted: Admitted = 'members',
): Promise<Membership & { sprint: Sprint }> {
  if ('sprintId' in reference) {
    const found = await sprintForMemberLocked(tx, actor, reference.sprintId, admitted);
    requireOpen(found.sprint);
    return found;
  }
  const found = await membershipAt(tx.read, actor, reference.place, admitted, now);
  // One after the other on the way, though nobody waits in between: what is read is read under the lock.
  const [, open] = await waitForAll([tx.lock.team(found.team.id), tx.read.openSprintsOf(found.team.id)]);
  const sprint = currentSprint(open, todayOf(found.team, now));
  if (!sprint) throw new Refusal('no-sprint-running', {});
  return { ...found, sprint };
}

/**
 * Which of the team's open sprints people mean: the one that the day lies in (open sprints never share a
 * day); else the earliest, which is one that was reopened or one that is still to begin.
 */
export function currentSprint(open: readonly Sprint[], day: Day): Sprint | undefined {
  return open.find(({ startsOn, endsOn }) => startsOn <= day && day <= endsOn) ?? open[0];
}

/** @throws Refusal `sprint-over` */
export function requireOpen(sprint: Sprint): void {
  if (sprint.state !== 'open')
    throw new Refusal('sprint-over', { sprintName: sprint.name, state: sprint.state });
}

/** @throws Refusal `sprint-not-begun` */
export function requireBegun(sprint: Sprint, today: Day): void {
  if (today < sprint.startsOn)
    throw new Refusal('sprint-not-begun', { sprintName: sprint.name, startsOn: sprint.startsOn });
}

/** A reopened sprint takes late entries for its last day, one that is still to begin for its first. */
export function dayWithin({ startsOn, endsOn }: Pick<Sprint, 'startsOn' | 'endsOn'>, today: Day): Day {
  return today > endsOn ? endsOn : today < startsOn ? startsOn : today;
}

export function todayOf(team: Pick<Team, 'timeZone'>, now: Date): Day {
  return dayAt(now, team.timeZone);
}
