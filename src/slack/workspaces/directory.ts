/**
 * What the platform knows of people and channels, remembered for a few minutes. Must not keep more of a
 * person than name, time zone and whether they are there.
 */
import {
  type ConversationsInfoResponse,
  type UsersInfoResponse,
  WebAPIPlatformError,
  type WebClient,
} from '@slack/web-api';
import type { Directory, Profile } from '../../app/ports/app-dependencies.ts';
import { visibleText } from '../../app/visible-text.ts';
import { connected, type Workspaces } from './workspaces.ts';

/** Long enough for a form and its submission, short enough for a changed time zone to be seen the same day. */
const KEPT_MS = 5 * 60_000;
const KEPT_ENTRIES = 5_000;
/** Each takes a call while somebody waits for a form, for which the platform gives three seconds. */
const MOST_MEMBERS = 40;
const MEMBERS_PAGE = 100;
/** The most that the platform gives at once, and how often it is asked: a channel of 100,000. */
const LARGEST_PAGE = 1_000;
const MOST_PAGES = 100;
/** The platform's answers for a channel that the bot can't see. */
const UNSEEN_CHANNEL = new Set(['channel_not_found', 'not_in_channel', 'missing_scope']);

interface DirectoryOptions {
  readonly workspaces: Workspaces;
  readonly nowMs: () => number;
}

type Person = NonNullable<UsersInfoResponse['user']>;

export function createDirectory({ workspaces, nowMs }: DirectoryOptions): Directory {
  const clientOf = async (workspaceId: string): Promise<WebClient> =>
    (await connected(workspaces, workspaceId)).interactive;
  const profiles = new Map<string, { readonly profile: Promise<Profile>; readonly untilMs: number }>();

  function remember(workspaceId: string, userId: string, profile: Promise<Profile>): Promise<Profile> {
    const key = keyOf(workspaceId, userId);
    profiles.delete(key);
    profiles.set(key, { profile, untilMs: nowMs() + KEPT_MS });
    // A failed look-up is not kept.
    profile.catch(() => profiles.delete(key));
    const oldest = profiles.keys().next().value;
    if (profiles.size > KEPT_ENTRIES && oldest !== undefined) profiles.delete(oldest);
    return profile;
  }

  function remembered(workspaceId: string, userId: string): Promise<Profile> | undefined {
    const kept = profiles.get(keyOf(workspaceId, userId));
    return kept && kept.untilMs > nowMs() ? kept.profile : undefined;
  }

  function profile(workspaceId: string, userId: string): Promise<Profile> {
    const lookedUp = () => clientOf(workspaceId).then((client) => lookUp(client, workspaceId, userId));
    return remembered(workspaceId, userId) ?? remember(workspaceId, userId, lookedUp());
  }

  return {
    profile,

    async channelMembers(workspaceId, channelId) {
      const ids = await fewMemberIds(await clientOf(workspaceId), channelId);
      const people = await Promise.all(ids.map((id) => profile(workspaceId, id)));
      return people.filter(({ isBot, isDeactivated }) => !isBot && !isDeactivated);
    },

    async notInChannel(workspaceId, channelId, userIds) {
      const sought = new Set(userIds);
      for await (const ids of memberPages(await clientOf(workspaceId), channelId)) {
        for (const id of ids) sought.delete(id);
        if (sought.size === 0) break;
      }
      return [...sought];
    },

    async channel(workspaceId, channelId) {
      const client = await clientOf(workspaceId);
      const { channel } =
        (await client.conversations.info({ channel: channelId }).catch(nothingIfUnseen)) ?? {};
      if (!channel || (channel.is_private && !channel.is_member)) return undefined;
      return {
        name: shownName(channel.name) || undefined,
        isArchived: channel.is_archived === true,
        isShared: isShared(channel),
      };
    },
  };
}

/** Whoever is invited reads what was posted before they came. Workspaces of one organisation are no strangers to each other. */
export function isShared(channel: ConversationsInfoResponse['channel']): boolean {
  return channel?.is_ext_shared === true || channel?.is_pending_ext_shared === true;
}

/** Ids hold no spaces, so no two pairs give the same key. */
function keyOf(workspaceId: string, userId: string): string {
  return `${workspaceId} ${userId}`;
}

async function lookUp(client: WebClient, workspaceId: string, userId: string): Promise<Profile> {
  try {
    const { user } = await client.users.info({ user: userId });
    return profileOf(userId, user, {
      isDeactivated: user === undefined || user.deleted === true,
      isOutsider: user !== undefined && isOfAnother(workspaceId, user),
    });
  } catch (error) {
    const code = error instanceof WebAPIPlatformError ? error.data.error : undefined;
    // Whom the platform doesn't know can't be reached either. Whom it hides may well be there.
    if (code !== 'user_not_found' && code !== 'user_not_visible') throw error;
    return profileOf(userId, undefined, { isDeactivated: code === 'user_not_found', isOutsider: false });
  }
}

function profileOf(
  userId: string,
  person: Person | undefined,
  judged: Pick<Profile, 'isDeactivated' | 'isOutsider'>,
): Profile {
  const names = [person?.profile?.display_name, person?.profile?.real_name, person?.real_name, person?.name];
  return {
    userId,
    name: names.map(shownName).find((name) => name !== '') ?? userId,
    timeZone: person?.tz || undefined,
    isBot: person?.is_bot === true || userId === 'USLACKBOT',
    isAdmin: person?.is_admin === true || person?.is_owner === true,
    isGuest: person?.is_restricted === true || person?.is_ultra_restricted === true,
    ...judged,
  };
}

/** An organisation's person has one home workspace, and may work in others of it (docs.slack.dev/reference/objects/user-object). */
function isOfAnother(workspaceId: string, { team_id, enterprise_user, is_stranger }: Person): boolean {
  if (is_stranger) return true;
  const ofOrganisation = enterprise_user?.teams?.filter((id) => id !== '');
  if (ofOrganisation?.length) return !ofOrganisation.includes(workspaceId);
  return Boolean(team_id) && team_id !== workspaceId;
}

/** People name themselves and their channels as they like. */
function shownName(name: string | undefined): string {
  return visibleText(name ?? '')
    .replace(/\s+/g, ' ')
    .trim();
}

/** Everybody in the channel; nobody when they are many, or the bot can't see it. */
async function fewMemberIds(client: WebClient, channelId: string): Promise<string[]> {
  const page = await client.conversations
    .members({ channel: channelId, limit: MEMBERS_PAGE })
    .catch(nothingIfUnseen);
  const ids = page?.members ?? [];
  const areMany = ids.length > MOST_MEMBERS || page?.response_metadata?.next_cursor;
  return areMany ? [] : ids;
}

/** The people of a channel of any size; none when the bot can't see it. */
async function* memberPages(client: WebClient, channelId: string): AsyncGenerator<string[]> {
  let cursor = '';
  for (let pages = 0; pages < MOST_PAGES; pages += 1) {
    const page = await client.conversations
      .members({ channel: channelId, limit: LARGEST_PAGE, ...(cursor === '' ? {} : { cursor }) })
      .catch(nothingIfUnseen);
    yield page?.members ?? [];
    cursor = page?.response_metadata?.next_cursor ?? '';
    if (cursor === '') return;
  }
}

function nothingIfUnseen(error: unknown): undefined {
  if (error instanceof WebAPIPlatformError && UNSEEN_CHANNEL.has(error.data.error)) return undefined;
  throw error;
}
