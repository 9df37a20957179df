/**
 * What follows when the platform says that a channel changed: a team whose channel is closed to the bot hears of it before a
 * verdict is lost, and a channel that got another id keeps its team.
 */
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { tellOfChannel } from '../posting/tell-undelivered.ts';
import type { Team } from './team.ts';

export type ChannelChange =
  | { readonly kind: 'closed' | 'bot-left'; readonly channelId: string }
  | { readonly kind: 'new-id'; readonly channelId: string; readonly newChannelId: string };

type Ports = Pick<AppDependencies, 'store' | 'clock' | 'directory'>;

/** May be repeated, and may come late. */
export async function watchChannel(ports: Ports, workspaceId: string, change: ChannelChange): Promise<void> {
  const { store } = ports;
  const team = await store.read((read) => read.teamByChannel(workspaceId, change.channelId));
  if (!team) return;
  if (change.kind === 'new-id') await moveTo(ports, team, change.newChannelId);
  else await tellIfClosed(ports, team, change.kind);
}

/** @throws Refusal `channel-has-a-team` */
async function moveTo({ store }: Ports, { id, workspaceId, channelId }: Team, newId: string): Promise<void> {
  await store.transaction(async (tx) => {
    await tx.lock.team(id);
    const team = await tx.read.teamById(id);
    if (team?.channelId !== channelId) return;
    await tx.write.teams.save({ ...team, channelId: newId });
    await tx.write.posts.moveChannel(workspaceId, channelId, newId);
  });
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
