/**
 * Moves a team to another channel, by hand and from there: its own may be archived, and takes no commands then. What waits
 * to be posted goes to the new channel; what was posted stays, and is corrected where it is.
 */
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading } from '../ports/store.ts';
import { channelPost } from '../posting/post-kinds.ts';
import { Refusal } from '../refusal.ts';
import { type Membership, membershipInTeam, type Place, requireFacilitator } from './place.ts';
import { requireReachable, requireUnshared } from './set-up-team.ts';
import type { Actor, Team } from './team.ts';

interface MoveInput {
  /** Where to: the channel in which it was asked. */
  readonly place: Place;
  /** Which team, for somebody who facilitates several; empty: the only one. */
  readonly teamName: string;
  /** Whether it moves even where people of another organisation read what is posted. */
  readonly acceptsShared?: boolean;
}

/**
 * @throws Refusal `move-in-channel`, `channel-not-seen`, `channel-archived`, `channel-shared`, `channel-has-a-team`, `team-is-here`,
 *   `no-team-of-yours`, `not-a-facilitator`, `which-team-moves`
 */
export async function moveTeam(
  deps: AppDependencies,
  actor: Actor,
  { place, teamName, acceptsShared = false }: MoveInput,
): Promise<Team> {
  if (place.isDirect) throw new Refusal('move-in-channel', {});
  const { workspaceId } = actor;
  const channel = await deps.directory.channel(workspaceId, place.channelId);
  requireReachable(channel);
  const meant = await deps.store.read((read) => teamMeant(read, actor, teamName));
  requireUnshared(channel, acceptsShared, { act: 'move', teamName });
  // Nobody reads a farewell in an archive, and the platform refuses it.
  const former = await deps.directory.channel(workspaceId, meant.team.channelId).catch(() => undefined);
  return deps.store.transaction(async (tx) => {
    await tx.lock.team(meant.team.id);
    const membership = await membershipInTeam(tx.read, actor, meant.team.id);
    requireFacilitator(membership, 'move');
    const before = membership.team;
    const taken = await tx.read.teamByChannel(workspaceId, place.channelId);
    if (taken?.id === before.id) throw new Refusal('team-is-here', { teamName: before.name });
    if (taken) throw new Refusal('channel-has-a-team', { teamName: taken.name });
    const { channelId } = place;
    const team = { ...before, channelId, sharedChannelId: channel.isShared ? channelId : undefined };
    await tx.write.teams.save(team);
    await tx.write.posts.redirect(workspaceId, before.channelId, team.channelId);
    // What waited for a yes in the former one.
    await tx.write.posts.queueAllOf(workspaceId, team.channelId);
    const subject = { kind: 'team-moved', teamId: team.id, byUserId: actor.userId } as const;
    const isFormerOpen = former !== undefined && !former.isArchived;
    await tx.write.posts.add([
      channelPost(team, subject),
      ...(isFormerOpen ? [channelPost(before, subject)] : []),
    ]);
    return team;
  });
}

async function teamMeant(read: Reading, actor: Actor, teamName: string): Promise<Membership> {
  const own: Membership[] = [];
  for (const { id } of await read.teamsOf(actor)) own.push(await membershipInTeam(read, actor, id));
  const [any] = own;
  if (!any) throw new Refusal('no-team-of-yours', {});
  const facilitated = own.filter(({ member }) => member.isFacilitator);
  if (facilitated.length === 0) requireFacilitator(any, 'move');
  const wanted = teamName.trim().toLowerCase();
  const named = facilitated.filter(({ team }) => wanted === '' || team.name.toLowerCase() === wanted);
  const [only, ...others] = named;
  if (only && others.length === 0) return only;
  throw new Refusal('which-team-moves', { teamNames: facilitated.map(({ team }) => team.name) });
}
