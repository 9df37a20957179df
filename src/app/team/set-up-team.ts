/** Sets a team up in its channel, and changes who is on it and when it is asked. */

import { randomUUID } from 'node:crypto';
import { setTimeout as pause } from 'node:timers/promises';
import type { Day } from '../../sprint/calendar.ts';
import { DEFAULT_THRESHOLDS } from '../../sprint/thresholds.ts';
import { NO_DAYS_OFF } from '../../sprint/work-calendar.ts';
import { isTimeOfDay, isTimeZone, type TimeOfDay } from '../clock/local-time.ts';
import { resetClocks } from '../clock/sprint-clock.ts';
import type { InputProblem, Problem } from '../input-problem.ts';
import type { AppDependencies, Channel, Directory, Profile } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { channelPost } from '../posting/post-kinds.ts';
import { Refusal, type RefusalDetails, refuseIfAny } from '../refusal.ts';
import { waitForAll } from '../wait-for-all.ts';
import { mayFacilitate, requireMaySetUp, whyNot } from './belonging.ts';
import { newPeopleOutside, type Profiles, peopleIn, profilesOf, withoutLeavers } from './chosen-people.ts';
import { gonePerson, letGo } from './leave-team.ts';
import {
  isDesertedBy,
  membershipAt,
  membershipInTeam,
  type Place,
  requireFacilitator,
  todayOf,
} from './place.ts';
import { settingsOf, USUAL_SETTINGS } from './settings.ts';
import { type Actor, activeMembers, isWorking, type Member, type Team } from './team.ts';
import { tellOfChanges, tellOfRoles } from './tell-of-changes.ts';

const DEFAULTS = { promptAt: '09:15', workingDays: [1, 2, 3, 4, 5] } as const;

const MAX_NAME_LENGTH = 80;

/** A form must be open within three seconds. A channel of many thousands takes longer to look through. */
const FOUND_WITHIN_MS = 1_000;

export interface SetupForm {
  /** Whether the channel has a team already, whose settings these are. */
  readonly existing: boolean;
  /** How many sprints there were before everybody left the channel's team, which is now set up again. */
  readonly sprintsLeftBehind?: number;
  readonly channelId: string;
  /** Empty where none is known yet. */
  readonly name: string;
  readonly timeZone: string;
  readonly promptAt: TimeOfDay;
  readonly workingDays: readonly number[];
  readonly memberIds: readonly string[];
  readonly facilitatorIds: readonly string[];
  readonly productOwnerId: string | undefined;
  /** Whether people of another organisation read the channel too. */
  readonly isShared: boolean;
  /** Whether the team's posts go there all the same. */
  readonly acceptsShared: boolean;
}

export type SetupInput = Omit<SetupForm, 'existing' | 'sprintsLeftBehind' | 'isShared' | 'acceptsShared'> & {
  readonly acceptsShared?: boolean;
  /** Who was on the team when the form was opened, so that nobody is put back on it who has left or was erased since. */
  readonly shownIds?: readonly string[] | undefined;
};

/** What the set-up form shows at first: the team's settings, or defaults from channel and caller. */
export async function setupForm(deps: AppDependencies, actor: Actor, place: Place): Promise<SetupForm> {
  if (place.isDirect) throw new Refusal('set-up-in-channel', {});
  const { directory } = deps;
  const { existing, deserted } = await deps.store.read(async (read) => {
    const team = await read.teamByChannel(actor.workspaceId, place.channelId);
    if (!team) return {};
    if (isDesertedBy(await read.membersOf(team.id))) {
      return { deserted: { team, sprintsLeftBehind: (await read.sprintsOf(team.id)).length } };
    }
    const membership = await membershipAt(read, actor, place);
    requireFacilitator(membership, 'change-settings');
    return { existing: membership };
  });
  // The form opens without an answer as well: channel and people are looked up again when it is sent.
  const unknown = () => undefined;
  const channelLookup = directory
    .channel(actor.workspaceId, place.channelId)
    .then((channel) => ({ channel }), unknown);
  const [lookup, caller, people] = await waitForAll([
    channelLookup,
    existing ? undefined : directory.profile(actor.workspaceId, actor.userId).catch(unknown),
    existing ? undefined : directory.channelMembers(actor.workspaceId, place.channelId).catch(unknown),
  ]);
  if (lookup) requireReachable(lookup.channel);
  if (caller) requireMaySetUp(caller, deps);
  if (!existing && (await isOutside(directory, actor, place, people ?? []))) {
    throw new Refusal('set-up-from-outside', {});
  }
  const isShared = lookup?.channel?.isShared === true;
  if (existing) {
    const active = existing.members.filter(({ isActive }) => isActive);
    return {
      ...existing.team,
      existing: true,
      isShared,
      acceptsShared: existing.team.sharedChannelId === place.channelId,
      memberIds: activeMembers(active).map(({ userId }) => userId),
      facilitatorIds: active.filter(({ isFacilitator }) => isFacilitator).map(({ userId }) => userId),
    };
  }
  const memberIds = (people ?? []).filter((one) => !whyNot(one, 'member')).map(({ userId }) => userId);
  return {
    existing: false,
    channelId: place.channelId,
    name: lookup?.channel?.name ?? '',
    timeZone: caller?.timeZone ?? 'UTC',
    promptAt: DEFAULTS.promptAt,
    workingDays: DEFAULTS.workingDays,
    memberIds: memberIds.length > 0 ? memberIds : [actor.userId],
    facilitatorIds: [actor.userId],
    productOwnerId: undefined,
    ...(deserted && { ...askedAs(deserted.team), sprintsLeftBehind: deserted.sprintsLeftBehind }),
    isShared,
    acceptsShared: false,
  };
}

/** What stays as it was when a team that everybody left is set up again. */
function askedAs({ name, timeZone, promptAt, workingDays, productOwnerId }: Team) {
  return { name, timeZone, promptAt, workingDays, productOwnerId };
}

/**
 * Whether the person isn't in the channel; undefined while that isn't known in time for a form to open.
 *
 * @param people who is in it; nobody when they are many
 */
async function isOutside(
  directory: Directory,
  { workspaceId, userId }: Actor,
  { channelId }: Place,
  people: readonly Profile[],
): Promise<boolean | undefined> {
  if (people.length > 0) return !people.some((one) => one.userId === userId);
  const found = directory.notInChannel(workspaceId, channelId, [userId]).then(
    (outside) => outside.includes(userId),
    () => undefined,
  );
  return Promise.race([found, pause(FOUND_WITHIN_MS, undefined, { ref: false })]);
}

/**
 * Posts into a channel that the bot is not in may seem to succeed although nobody reads them.
 *
 * @throws Refusal `channel-not-seen`, `channel-archived`
 */
export function requireReachable(channel: Channel | undefined): asserts channel is Channel {
  if (!channel) throw new Refusal('channel-not-seen', {});
  if (channel.isArchived) throw new Refusal('channel-archived', {});
}

/**
 * What others would read there must have been accepted.
 *
 * @throws Refusal `channel-shared`
 */
export function requireUnshared(
  { isShared }: Channel,
  isAccepted: boolean,
  where: RefusalDetails['channel-shared'],
): void {
  if (isShared && !isAccepted) throw new Refusal('channel-shared', where);
}

function problemsOf(input: SetupInput): InputProblem[] {
  const problems: InputProblem[] = [];
  const check = (fine: boolean, field: keyof SetupInput, problem: Problem): void => {
    if (!fine) problems.push({ field, problem });
  };
  const name = input.name.trim();
  check(name.length > 0 && name.length <= MAX_NAME_LENGTH, 'name', {
    code: 'team-name',
    most: MAX_NAME_LENGTH,
  });
  check(isTimeZone(input.timeZone.trim()), 'timeZone', { code: 'no-time-zone' });
  check(isTimeOfDay(input.promptAt), 'promptAt', { code: 'no-time', example: '09:15' });
  const days = new Set(input.workingDays);
  const daysAreFine =
    days.size > 0 && [...days].every((day) => Number.isInteger(day) && day >= 1 && day <= 7);
  check(daysAreFine, 'workingDays', { code: 'no-working-day' });
  check(input.memberIds.length > 0, 'memberIds', { code: 'no-members' });
  check(input.facilitatorIds.length > 0, 'facilitatorIds', { code: 'no-facilitators' });
  return problems;
}

/**
 * Creates the channel's team or changes its settings. People who are no longer among the members or
 * facilitators become inactive; their answers stay. A team that everybody has left is taken over by whoever may set one up
 * there: its past was posted in this very channel, and goes on.
 *
 * @throws Refusal `bad-input`, `channel-not-seen`, `channel-archived`, `not-a-facilitator`, `not-a-member`,
 * `channel-shared`, `outsider`, `guest-set-up`, `set-up-left-to-others`, `set-up-from-outside`.
 */
export async function setUpTeam(deps: AppDependencies, actor: Actor, given: SetupInput): Promise<Team> {
  refuseIfAny(problemsOf(given));
  let input = given;
  const [caller, channel, outside, profiles] = await waitForAll([
    deps.directory.profile(actor.workspaceId, actor.userId),
    deps.directory.channel(actor.workspaceId, input.channelId),
    deps.directory.notInChannel(actor.workspaceId, input.channelId, [actor.userId, ...peopleIn(input)]),
    profilesOf(deps.directory, actor.workspaceId, input),
  ]);
  const acceptsShared = input.acceptsShared === true;
  requireReachable(channel);
  requireUnshared(channel, acceptsShared, { act: 'set-up' });
  return deps.store.transaction(async (tx) => {
    const existing = await tx.read.teamByChannel(actor.workspaceId, input.channelId);
    let before: Team | undefined;
    let isDeserted = false;
    if (existing) {
      await tx.lock.team(existing.id);
      isDeserted = isDesertedBy(await tx.read.membersOf(existing.id));
    }
    if (existing && !isDeserted) {
      const membership = await membershipInTeam(tx.read, actor, existing.id);
      requireFacilitator(membership, 'change-settings');
      // As it is under the lock: what the other form sets must not be taken back.
      before = membership.team;
      input = { ...given, ...withoutLeavers(given, membership) };
      refuseIfAny(problemsOf(input));
    } else {
      before = existing && (await tx.read.teamById(existing.id));
      requireMaySetUp(caller, deps);
      if (outside.includes(actor.userId)) throw new Refusal('set-up-from-outside', {});
    }
    refuseIfAny(await newPeopleOutside(tx, before, input, { outside, profiles }));
    const isSameOwner = input.productOwnerId === before?.productOwnerId;
    const team: Team = {
      id: before?.id ?? randomUUID(),
      workspaceId: actor.workspaceId,
      channelId: input.channelId,
      name: input.name.trim().replace(/\s+/g, ' '),
      timeZone: input.timeZone.trim(),
      promptAt: input.promptAt,
      workingDays: [...new Set(input.workingDays)].sort((a, b) => a - b),
      daysOff: before?.daysOff ?? NO_DAYS_OFF,
      productOwnerId: input.productOwnerId,
      // The next product owner chooses anew.
      ownerGetsVerdicts: isSameOwner && before?.ownerGetsVerdicts === true,
      thresholds: before?.thresholds ?? DEFAULT_THRESHOLDS,
      sharedChannelId: channel.isShared ? input.channelId : before?.sharedChannelId,
      baselineSprintId: before?.baselineSprintId,
      baselineRule: before?.baselineRule ?? 'first',
      // What had ended goes on: nothing of it is erased any more.
      resumedAt: before?.endedAt ? deps.clock.now() : before?.resumedAt,
      ...settingsOf(before ?? USUAL_SETTINGS),
    };
    await tx.write.teams.save(team);
    const today = before && todayOf(team, deps.clock.now());
    const known = await tx.read.membersOf(team.id);
    const left = await saveMembership(tx, team.id, known, input, profiles, today);
    if (before) {
      await resetClocks(tx, team, deps.clock.now());
      await letGo(tx, team, left, { at: deps.clock.now(), byUserId: actor.userId });
    }
    await tellOfRoles(tx, team, { before, known, now: input, byUserId: actor.userId });
    if (before && !isDeserted) {
      const people = await tx.read.membersOf(team.id);
      await tellOfChanges(tx, { team: before, people: known }, { team, people }, actor.userId);
    } else {
      await tx.write.posts.add([
        channelPost(team, { kind: 'team-set-up', teamId: team.id, byUserId: actor.userId }),
      ]);
    }
    const isAccepted = before !== undefined && team.sharedChannelId !== before.sharedChannelId;
    if (isAccepted) await tx.write.posts.queueAllOf(actor.workspaceId, team.channelId);
    return team;
  });
}

/**
 * @param today undefined for a new team, whose people count from its beginning
 * @returns who was on the team and is no longer
 */
async function saveMembership(
  tx: Transaction,
  teamId: string,
  known: readonly Member[],
  { memberIds, facilitatorIds }: Pick<SetupInput, 'memberIds' | 'facilitatorIds'>,
  profiles: Profiles,
  today: Day | undefined,
): Promise<string[]> {
  const before = new Map(known.map((member) => [member.userId, member]));
  // The product owner need not be on the team.
  const userIds = new Set([...memberIds, ...facilitatorIds]);
  const present = [...userIds].map((userId): Member => {
    const earlier = before.get(userId);
    const isMember = memberIds.includes(userId);
    const profile = profiles.get(userId);
    const goesOn = earlier?.isActive && (earlier.isMember || !isMember);
    return {
      userId,
      name: profile?.name ?? userId,
      isFacilitator: facilitatorIds.includes(userId),
      isMember,
      isActive: true,
      mayFacilitate: !profile || mayFacilitate(profile) ? undefined : false,
      guestIn: earlier?.guestIn ?? [],
      worksOn: earlier?.worksOn,
      worksOnBefore: earlier?.worksOnBefore ?? [],
      ownPrompt: earlier?.ownPrompt,
      digestAt: earlier?.digestAt,
      getsVerdicts: earlier?.getsVerdicts ?? false,
      daysOff: earlier?.daysOff ?? NO_DAYS_OFF,
      joinedOn: goesOn ? earlier.joinedOn : today,
      leftOn: undefined,
    };
  });
  const others = [...before.values()].filter(({ userId, isActive }) => isActive && !userIds.has(userId));
  const guests = others.filter((person) => !person.isMember && isWorking(person));
  const gone = others.filter((person) => !guests.includes(person));
  await tx.write.teams.saveMembers(teamId, [
    ...present,
    ...guests.map((guest) => ({ ...guest, isFacilitator: false })),
    ...gone.map((member) => gonePerson(member, today)),
  ]);
  return gone.map(({ userId }) => userId);
}
