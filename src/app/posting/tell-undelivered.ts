/**
 * A post that can't be delivered must not be lost in silence: the team's facilitators hear of it, each in their direct messages,
 * with what to do. Once a week for each place and cause, however many posts fail there.
 */
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { facilitatorsOrMembers } from '../team/place.ts';
import type { Team } from '../team/team.ts';
import type { ChannelCause, UndeliveredCause } from './delivery-failure.ts';
import { directPost, type PostKind, type SubjectOf } from './post-kinds.ts';
import type { Post } from './posts.ts';

const WEEK_MS = 7 * 86_400_000;
/** Would be told of themselves. */
const TELLS_OF_IT: readonly string[] = [
  'channel-unreachable',
  'member-unreachable',
] satisfies readonly PostKind[];

export async function tellUndelivered(
  { store, clock }: Pick<AppDependencies, 'store' | 'clock'>,
  post: Post,
  cause: UndeliveredCause,
): Promise<void> {
  if (TELLS_OF_IT.includes(post.subject.kind)) return;
  await store.transaction(async (tx) => {
    const team = await teamOf(tx, post);
    if (!team) return;
    if (isFarewell(post, team)) return;
    if (!('userId' in post.recipient)) return tellOfChannel(tx, team, cause, clock.now());
    const { userId } = post.recipient;
    const about = { kind: 'member-unreachable', teamId: team.id, userId, reason: cause } as const;
    await tellOnceAWeek(tx, team, { where: userId, cause, about }, clock.now());
  });
}

/** Nobody needs to hear that a channel which the team has left didn't hear of it, nor that of a team that was ended. */
function isFarewell({ subject, recipient }: Post, { channelId, endedAt }: Team): boolean {
  if (endedAt) return true;
  return subject.kind === 'team-moved' && 'channelId' in recipient && recipient.channelId !== channelId;
}

/** The same for a channel, whether a post failed there or the platform said that it is closed to the bot. */
export async function tellOfChannel(
  tx: Transaction,
  team: Team,
  cause: ChannelCause,
  now: Date,
): Promise<void> {
  if (cause === 'place-gone') await tx.write.teams.noteChannelClosed(team.id, now);
  const about = { kind: 'channel-unreachable', teamId: team.id, reason: cause } as const;
  await tellOnceAWeek(tx, team, { where: team.channelId, cause, about }, now);
}

interface Trouble {
  /** A person or a channel. */
  readonly where: string;
  readonly cause: string;
  readonly about: SubjectOf<PostKind>;
}

async function tellOnceAWeek(
  tx: Transaction,
  team: Team,
  { where, cause, about }: Trouble,
  now: Date,
): Promise<void> {
  const week = Math.floor(now.getTime() / WEEK_MS);
  if (!(await tx.events.remember(`undelivered ${team.id} ${where} ${cause} ${week}`, now))) return;
  const others = facilitatorsOrMembers(await tx.read.membersOf(team.id)).filter((id) => id !== where);
  const posts = others.map((userId) => directPost(team, userId, about));
  if (posts.length > 0) await tx.write.posts.add(posts);
}

/** The team that a post is about. */
export async function teamOf({ read }: Transaction, { subject }: Post): Promise<Team | undefined> {
  if (subject.teamId !== undefined) return read.teamById(subject.teamId);
  return subject.sprintId === undefined ? undefined : (await read.sprintWithTeam(subject.sprintId))?.team;
}
