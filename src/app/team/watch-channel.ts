/**
 * What follows when the platform says that a channel changed: a team whose channel is closed to the bot hears of it before a
 * verdict is lost, and a channel that got another id keeps its team.
 */
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { tellOfChannel } from '../posting/tell-undelivered.ts';
import type { Team } from './team.ts';

export type ChannelChange =
  | { readonly kind: 'closed' | 'bot-left' | 'shared' | 'unshared'; readonly channelId: string }
  | { readonly kind: 'new-id'; readonly channelId: string; readonly newChannelId: string };

type Ports = Pick<AppDependencies, 'store' | 'clock' | 'directory'>;

/** May be repeated, and may come late. */
export async function watchChannel(ports: Ports, workspaceId: string, change: ChannelChange): Promise<void> {
  const { store } = ports;
  const team = await store.read((read) => read.teamByChannel(workspaceId, change.channelId));
  if (!team) return;
  if (change.kind === 'new-id') await moveTo(ports, team, change.newChannelId);
  else if (change.kind === 'shared') await tellIfUnasked(ports, team);
  else if (change.kind === 'unshared') await release(ports, team);
  else await tellIfClosed(ports, team, change.kind);
}

/** @throws Refusal `channel-has-a-team` */
async function moveTo({ store }: Ports, { id, workspaceId, channelId }: Team, newId: string): Promise<void> {
  await store.transaction(async (tx) => {
    await tx.lock.team(id);
    const team = await tx.read.teamById(id);
    if (team?.channelId !== channelId) return;
    // To begin to share a channel may change its id.
    const sharedChannelId = team.sharedChannelId === channelId ? newId : team.sharedChannelId;
    await tx.write.teams.save({ ...team, channelId: newId, sharedChannelId });
    await tx.write.posts.moveChannel(workspaceId, channelId, newId);
  });
}

/** The facilitators hear what others would read, before anything is posted. */
async function tellIfUnasked({ store, clock }: Ports, team: Team): Promise<void> {
  if (team.sharedChannelId === team.channelId) return;
  await store.transaction((tx) => tellOfChannel(tx, team, 'shared', clock.now()));
}

/** What waited goes out; if another organisation still reads the channel, it waits again. */
async function release({ store }: Ports, { workspaceId, channelId }: Team): Promise<void> {
  await store.transaction((tx) => tx.write.posts.queueAllOf(workspaceId, channelId));
}

async function tellIfClosed(
  { store, clock, directory }: Ports,
  team: Team,
  kind: 'closed' | 'bot-left',
): Promise<void> {
  // The platform's word now counts more than an event that came late; without an answer the event does.
  const asked = await directory.channel(team.workspaceId, team.channelId).then(
    (channel) => ({ isClosed: !channel || channel.isArchived }),
    () => ({ isClosed: kind === 'closed' }),
  );
  if (!asked.isClosed && kind === 'closed') return;
  const cause = asked.isClosed ? 'place-gone' : 'bot-left';
  await store.transaction((tx) => tellOfChannel(tx, team, cause, clock.now()));
}
