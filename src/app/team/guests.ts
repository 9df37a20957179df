/** People who take part in one sprint of a team only: facilitators name them, and they go when it closes. */
import { type Day, dayPlus } from '../../sprint/calendar.ts';
import { NO_DAYS_OFF } from '../../sprint/work-calendar.ts';
import type { Problem } from '../input-problem.ts';
import { peopleCalled } from '../planning/card-owners.ts';
import type { AppDependencies, Profile } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { directPost } from '../posting/post-kinds.ts';
import { Refusal } from '../refusal.ts';
import { waitForAll } from '../wait-for-all.ts';
import { mayFacilitate, whyNot } from './belonging.ts';
import { handCardsBack, letGo } from './leave-team.ts';
import {
  dayWithin,
  membershipBy,
  openSprint,
  type Place,
  requireFacilitator,
  type TeamReference,
  todayOf,
} from './place.ts';
import {
  type Actor,
  type GuestStay,
  isWorking,
  type Member,
  type Sprint,
  type SprintHeading,
  type Team,
} from './team.ts';

/** Who became a guest of the sprint, or is one no more. */
export interface GuestsChange {
  readonly heading: SprintHeading;
  readonly userIds: readonly string[];
}

interface TypedGuests {
  readonly place: Place;
  /** `@ana @ben` */
  readonly words: string;
}

/** Each is looked up on the platform, which answers a hundred such questions a minute for the whole workspace. */
const MOST_AT_ONCE = 20;

const MENTIONS = /<@([A-Z0-9]+)(?:\|[^>]*)?>/g;

/**
 * Adds guests to the running sprint, or to the next one while none is running; for facilitators.
 *
 * @throws Refusal `bad-argument`, `not-a-facilitator`, `no-sprint-running`
 */
export async function addGuests(
  deps: AppDependencies,
  actor: Actor,
  { place, words }: TypedGuests,
): Promise<GuestsChange> {
  const ids = [...new Set([...words.matchAll(MENTIONS)].map(([, id]) => id as string))];
  const others = words
    .replaceAll(MENTIONS, ' ')
    .split(/[\s,;&]+/)
    .filter((word) => !/^(and)?$/i.test(word));
  if (ids.length === 0 || others.length > 0) throw unread({ code: 'which-guests' });
  if (ids.length > MOST_AT_ONCE) throw unread({ code: 'guests-at-once', most: MOST_AT_ONCE });
  const candidates = await candidatesOf(deps, actor, { place }, ids);
  return deps.store.transaction(async (tx) => {
    const now = deps.clock.now();
    const found = await openSprint(tx, actor, { place }, now);
    requireFacilitator(found, 'guests');
    const { team, sprint, members } = found;
    const [problem] = guestProblems(candidates, members);
    if (problem) throw unread(problem);
    const from = dayWithin(sprint, todayOf(team, now));
    await welcomeGuests(tx, team, sprint, { guests: candidates, from, byUserId: actor.userId });
    return { heading: { team, sprint }, userIds: ids };
  });
}

/** Why somebody can't be a guest. Whom the bot asks every day can read the channel to which the answers go. */
export function guestProblems(candidates: readonly Candidate[], members: readonly Member[]): Problem[] {
  return candidates.flatMap((profile): Problem[] => {
    const code = whyNot(profile, 'member') ?? (profile.isInChannel ? undefined : 'not-in-channel');
    if (code) return [{ code, person: profile.name }];
    const isMember = members.some((one) => one.userId === profile.userId && one.isActive && one.isMember);
    return isMember ? [{ code: 'is-member-already', person: profile.name }] : [];
  });
}

/** Makes people guests of the sprint, and tells those who weren't what it means. The team must be locked. */
export async function welcomeGuests(
  tx: Transaction,
  team: Team,
  { id: sprintId }: Sprint,
  { guests, from, byUserId }: { readonly guests: readonly Profile[]; from: Day; byUserId: string },
): Promise<void> {
  const known = new Map((await tx.read.membersOf(team.id)).map((person) => [person.userId, person]));
  const fresh = guests.filter(({ userId }) => {
    const stay = known.get(userId)?.guestIn.find((one) => one.sprintId === sprintId);
    return !stay || stay.until !== undefined;
  });
  if (fresh.length === 0) return;
  await tx.write.teams.saveMembers(
    team.id,
    fresh.map((profile): Member => {
      const guest = asGuest(profile, known.get(profile.userId));
      const others = guest.guestIn.filter((stay) => stay.sprintId !== sprintId);
      return { ...guest, guestIn: [...others, { sprintId, from, until: undefined }] };
    }),
  );
  await tx.write.posts.add(
    fresh.map(({ userId }) => directPost(team, userId, { kind: 'guest-welcome', sprintId, byUserId })),
  );
}

/** What is known of the person on this team stays; they are no member. */
function asGuest({ userId, name, isGuest }: Profile, known: Member | undefined): Member {
  return {
    worksOn: undefined,
    worksOnBefore: [],
    daysOff: NO_DAYS_OFF,
    guestIn: [],
    getsVerdicts: false,
    ...known,
    userId,
    name,
    isFacilitator: known?.isActive === true && known.isFacilitator,
    isMember: false,
    isActive: true,
    mayFacilitate: mayFacilitate({ isGuest }) ? undefined : false,
    joinedOn: undefined,
    leftOn: undefined,
  };
}

/** Guests as they will work in a sprint that is still being planned. */
export function plannedGuests(profiles: readonly Profile[], members: readonly Member[]): Member[] {
  return profiles.map((profile) => ({
    ...asGuest(
      profile,
      members.find(({ userId }) => userId === profile.userId),
    ),
    isMember: true,
  }));
}

/** Somebody who is to be a guest, as the platform knows them. */
export type Candidate = Profile & { readonly isInChannel: boolean };

/** What the platform says of people whose ids somebody chose. @throws Refusal those of finding the team */
export async function candidatesOf(
  { directory, store }: Pick<AppDependencies, 'directory' | 'store'>,
  actor: Actor,
  reference: TeamReference,
  userIds: readonly string[],
): Promise<Candidate[]> {
  if (userIds.length === 0) return [];
  const { workspaceId } = actor;
  const { team } = await store.read((read) => membershipBy(read, actor, reference));
  const [outside, profiles] = await waitForAll([
    directory.notInChannel(workspaceId, team.channelId, userIds),
    waitForAll(userIds.map((userId) => directory.profile(workspaceId, userId))),
  ]);
  return profiles.map((profile) => ({ ...profile, isInChannel: !outside.includes(profile.userId) }));
}

/**
 * Takes guests out of the sprint again; for facilitators. Their open cards need another owner.
 *
 * @throws Refusal `bad-argument`, `not-a-facilitator`, `no-sprint-running`
 */
export async function removeGuests(
  deps: AppDependencies,
  actor: Actor,
  { place, words }: TypedGuests,
): Promise<GuestsChange> {
  return deps.store.transaction(async (tx) => {
    const at = deps.clock.now();
    const found = await openSprint(tx, actor, { place }, at);
    requireFacilitator(found, 'guests');
    const { team, sprint, members } = found;
    const guests = guestsOf(members, sprint.id);
    const userIds = peopleCalled(words, guests);
    if ('code' in userIds) {
      throw unread(
        userIds.code === 'several-people' ? userIds : { code: 'no-such-guest', typed: userIds.typed },
      );
    }
    if (userIds.length === 0) throw unread({ code: 'which-guests' });
    const leaving = guests.filter(({ userId }) => userIds.includes(userId));
    const left = leaving.map((guest) => withoutStay(guest, sprint.id, todayOf(team, at)));
    await tx.write.teams.saveMembers(team.id, left);
    const gone = left.filter(({ isActive }) => !isActive).map(({ userId }) => userId);
    await letGo(tx, team, gone, { at, byUserId: actor.userId });
    const others = userIds.filter((userId) => !gone.includes(userId));
    await handCardsBack(tx, team, sprint, others, { at, byUserId: actor.userId });
    return { heading: { team, sprint }, userIds };
  });
}

function guestsOf(people: readonly Member[], sprintId: string): Member[] {
  return people.filter(
    ({ isMember, guestIn }) =>
      !isMember && guestIn.some((stay) => stay.sprintId === sprintId && stay.until === undefined),
  );
}

/** As the person is once their part in the sprint is over; they stay on the team for anything else that they do in it. */
function withoutStay(person: Member, sprintId: string, until: Day): Member {
  const guestIn = person.guestIn.map((stay) =>
    stay.sprintId === sprintId ? { ...stay, until: stay.until ?? until } : stay,
  );
  const left = { ...person, guestIn };
  return { ...left, isActive: left.isFacilitator || isWorking(left) };
}

/** What closing a sprint means for its guests. The team must be locked. */
export async function guestsGo(tx: Transaction, sprint: Sprint): Promise<void> {
  const guests = guestsOf(await tx.read.membersOf(sprint.teamId), sprint.id);
  const until = dayAfter(sprint);
  await tx.write.teams.saveMembers(
    sprint.teamId,
    guests.map((guest) => withoutStay(guest, sprint.id, until)),
  );
}

/** What reopening a sprint means for those who were its guests until the end. The team must be locked. */
export async function guestsReturn(tx: Transaction, sprint: Sprint): Promise<void> {
  const isBack = ({ sprintId, until }: GuestStay): boolean =>
    sprintId === sprint.id && until === dayAfter(sprint);
  const guests = (await tx.read.membersOf(sprint.teamId)).filter(
    ({ isMember, guestIn }) => !isMember && guestIn.some(isBack),
  );
  await tx.write.teams.saveMembers(
    sprint.teamId,
    guests.map((guest) => ({
      ...guest,
      isActive: true,
      guestIn: guest.guestIn.map((stay) => (isBack(stay) ? { ...stay, until: undefined } : stay)),
    })),
  );
}

function dayAfter({ endsOn }: Sprint): Day {
  return dayPlus(endsOn, 1);
}

function unread(problem: Problem): Refusal {
  return new Refusal('bad-argument', { command: 'guest', problem, example: '@ana' });
}
