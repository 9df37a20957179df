/**
 * What the platform knows of people and channels, remembered for a few minutes. Must not keep more of a
 * person than name, time zone and whether they are there.
 */
import {
  type UsersInfoResponse,
  type UsersListResponse,
  WebAPIPlatformError,
  type WebClient,
} from '@slack/web-api';
import type { Directory, Profile } from '../../app/ports/app-dependencies.ts';
import { visibleText } from '../../app/visible-text.ts';
import { connected, type Workspaces } from './workspaces.ts';

/** Long enough for a form and its submission, short enough for a changed time zone to be seen the same day. */
const KEPT_MS = 5 * 60_000;
const KEPT_ENTRIES = 5_000;
const MEMBERS_PAGE = 1_000;
const USERS_PAGE = 200;
/** People looked up one by one; for more, the list of all people takes fewer calls (tier 4 against tier 2). */
const MOST_SINGLE_LOOKUPS = 40;
/** The platform's answers for somebody or something that the bot can't see. */
const UNSEEN = new Set([
  'user_not_found',
  'user_not_visible',
  'channel_not_found',
  'not_in_channel',
  'missing_scope',
]);

export interface DirectoryOptions {
  readonly workspaces: Workspaces;
  readonly nowMs: () => number;
}

type Person = NonNullable<UsersInfoResponse['user']> | NonNullable<UsersListResponse['members']>[number];

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
    const lookedUp = () => clientOf(workspaceId).then((client) => lookUp(client, userId));
    return remembered(workspaceId, userId) ?? remember(workspaceId, userId, lookedUp());
  }

  /** Fills the memory from the list of all people, until everybody wanted is in it. */
  async function readList(workspaceId: string, wanted: readonly string[]): Promise<void> {
    const client = await clientOf(workspaceId);
    const missing = new Set(wanted);
    let cursor: string | undefined;
    do {
      const page = await client.users.list({ limit: USERS_PAGE, ...(cursor ? { cursor } : {}) });
      for (const person of page.members ?? []) {
        if (!person.id || !missing.delete(person.id)) continue;
        remember(workspaceId, person.id, Promise.resolve(profileOf(person.id, person)));
      }
      cursor = page.response_metadata?.next_cursor || undefined;
    } while (cursor && missing.size > 0);
  }

  return {
    profile,

    async channelMembers(workspaceId, channelId) {
      const ids = await memberIds(await clientOf(workspaceId), channelId);
      const unknown = ids.filter((id) => remembered(workspaceId, id) === undefined);
      if (unknown.length > MOST_SINGLE_LOOKUPS) await readList(workspaceId, unknown);
      const people = await Promise.all(ids.map((id) => profile(workspaceId, id)));
      return people.filter(({ isBot, isDeactivated }) => !isBot && !isDeactivated);
    },

    async channel(workspaceId, channelId) {
      const client = await clientOf(workspaceId);
      const { channel } =
        (await client.conversations.info({ channel: channelId }).catch(nothingIfUnseen)) ?? {};
      if (!channel || (channel.is_private && !channel.is_member)) return undefined;
      return { name: shownName(channel.name) || undefined, isArchived: channel.is_archived === true };
    },
  };
}

/** Ids hold no spaces, so no two pairs give the same key. */
function keyOf(workspaceId: string, userId: string): string {
  return `${workspaceId} ${userId}`;
}

async function lookUp(client: WebClient, userId: string): Promise<Profile> {
  const answer = await client.users.info({ user: userId }).catch(nothingIfUnseen);
  return profileOf(userId, answer?.user);
}

/** Somebody whom the platform does not show can't be reached either, like a deactivated account. */
function profileOf(userId: string, person: Person | undefined): Profile {
  const names = [person?.profile?.display_name, person?.profile?.real_name, person?.real_name, person?.name];
  return {
    userId,
    name: names.map(shownName).find((name) => name !== '') ?? userId,
    timeZone: person?.tz || undefined,
    isBot: person?.is_bot === true || userId === 'USLACKBOT',
    isDeactivated: person === undefined || person.deleted === true,
  };
}

/** People name themselves and their channels as they like. */
function shownName(name: string | undefined): string {
  return visibleText(name ?? '')
    .replace(/\s+/g, ' ')
    .trim();
}

/** Everybody in the channel; nobody when the bot can't see it. */
async function memberIds(client: WebClient, channelId: string): Promise<string[]> {
  const ids: string[] = [];
  let cursor: string | undefined;
  do {
    const page = await client.conversations
      .members({ channel: channelId, limit: MEMBERS_PAGE, ...(cursor ? { cursor } : {}) })
      .catch(nothingIfUnseen);
    ids.push(...(page?.members ?? []));
    cursor = page?.response_metadata?.next_cursor || undefined;
  } while (cursor);
  return ids;
}

function nothingIfUnseen(error: unknown): undefined {
  if (error instanceof WebAPIPlatformError && UNSEEN.has(error.data.error)) return undefined;
  throw error;
}
