/**
 * Sends the bot's posts. Each carries its key as metadata, so that it can be found again when nobody knows
 * whether it was sent. The key is opaque, since others in the workspace can read metadata. Tries everything
 * once; whether and when to try again is for the caller, who learns it from a `DeliveryFailure`.
 */
import type { ConversationsHistoryResponse, WebClient } from '@slack/web-api';
import type { Messenger, PostImage } from '../../app/ports/messenger.ts';
import { DeliveryFailure } from '../../app/posting/delivery-failure.ts';
import type { MessageContent } from '../../app/posting/post-kinds.ts';
import type { PostedAt, Recipient } from '../../app/posting/posts.ts';
import type { Logger } from '../../logger.ts';
import type { ChartImage } from '../views/block-builders.ts';
import type { MessageView } from '../views/message-view.ts';
import { postMessage } from '../views/post-message.ts';
import { isShared } from '../workspaces/directory.ts';
import { VOID_TOKEN_CODES, type Workspaces } from '../workspaces/workspaces.ts';
import { toDeliveryFailure } from './delivery-errors.ts';
import { removeOwnMessages } from './remove-own.ts';
import { directConversation, uploadImage } from './upload-files.ts';

const METADATA_EVENT = 'loadline_post';
/** The platform's clock stamps messages, ours says since when to look: allow for the two to differ. */
const CLOCK_MARGIN_SECONDS = 300;
const HISTORY_PAGE = 200;
/** A verdict and what follows in its thread take one look; a channel that others have joined since takes no more posts. */
const SHARING_KEPT_MS = 60_000;
const SHARING_ENTRIES = 5_000;
/** The platform's answers about the blocks of a message; a picture that can't be shown is one of their causes. */
const BAD_BLOCKS = new Set(['invalid_blocks', 'invalid_blocks_format', 'msg_blocks_too_long']);

interface MessengerOptions {
  readonly workspaces: Workspaces;
  readonly logger: Logger;
  readonly wait: (ms: number) => Promise<unknown>;
  readonly nowMs?: () => number;
}

/** What was asked of the platform for a message before it is sent. */
interface Shown {
  readonly chart?: ChartImage | undefined;
  readonly replacedLink: string | undefined;
}

type FoundMessage = NonNullable<ConversationsHistoryResponse['messages']>[number];

export function createMessenger({
  workspaces,
  logger,
  wait,
  nowMs = () => performance.now(),
}: MessengerOptions): Messenger {
  const searchedTo = new Map<string, string>();
  const sharing = new Map<string, { readonly isShared: boolean; readonly untilMs: number }>();

  /** Works with the workspace's own client. Without the bot there, or after its removal, nothing is sent. */
  async function within<T>(
    workspaceId: string,
    work: (client: WebClient, botUserId: string) => Promise<T>,
  ): Promise<T> {
    const workspace = await workspaces.find(workspaceId).catch((cause: unknown) => {
      throw new DeliveryFailure('not-sent', 'workspace_unreadable', { cause });
    });
    if (!workspace) throw new DeliveryFailure('not-installed', 'not_installed');
    try {
      return await work(workspace.bulk, workspace.botUserId);
    } catch (error) {
      if (!(error instanceof DeliveryFailure) || !VOID_TOKEN_CODES.has(error.code)) throw error;
      const outcome = await workspaces.tokenIsVoid(workspace);
      if (outcome === 'kept') throw error;
      const kind = outcome === 'removed' ? 'not-installed' : 'not-sent';
      throw new DeliveryFailure(kind, error.code, { cause: error });
    }
  }

  async function upload(client: WebClient, image: PostImage | undefined): Promise<ChartImage | undefined> {
    if (!image) return undefined;
    try {
      return { fileId: await uploadImage({ client, wait }, image), altText: image.altText };
    } catch (error) {
      const failure = toDeliveryFailure(error);
      if (failure.kind === 'rate-limited') throw failure;
      // The words hold every number, so a post without its chart is better than none.
      logger.warn({ err: failure }, 'A chart could not be uploaded; the post goes out without it.');
      return undefined;
    }
  }

  async function prepared(
    client: WebClient,
    { replaces }: MessageContent,
    image: PostImage | undefined,
  ): Promise<Shown> {
    return {
      chart: await upload(client, image),
      replacedLink: replaces && (await linkTo(client, replaces)),
    };
  }

  /** Sends the words with the chart, or without it when the platform takes the blocks only so. */
  async function send<T>(
    content: MessageContent,
    { chart, replacedLink }: Shown,
    call: (view: MessageView) => Promise<T>,
  ): Promise<T> {
    try {
      return await call(postMessage(content, chart, replacedLink));
    } catch (error) {
      const failure = toDeliveryFailure(error);
      if (!chart || !BAD_BLOCKS.has(failure.code)) throw failure;
      logger.warn({ err: failure }, 'A message was refused with its chart; it goes out without it.');
      return send(content, { replacedLink }, call);
    }
  }

  return {
    isShared: async (workspaceId, channelId) => {
      const key = `${workspaceId} ${channelId}`;
      const known = sharing.get(key);
      if (known && nowMs() < known.untilMs) return known.isShared;
      const isSharedNow = await within(workspaceId, (client) => sharedNow(client, channelId));
      if (sharing.size >= SHARING_ENTRIES) sharing.clear();
      sharing.set(key, { isShared: isSharedNow, untilMs: nowMs() + SHARING_KEPT_MS });
      return isSharedNow;
    },

    post: (workspaceId, to, key, content, image, maySend) =>
      within(workspaceId, async (client) => {
        const shown = await prepared(client, content, image);
        const destination = await destinationOf(client, to);
        if (!maySend()) throw new DeliveryFailure('not-sent', 'took_too_long');
        const sent = await send(content, shown, (view) =>
          client.chat.postMessage({
            ...destination,
            ...view,
            metadata: { event_type: METADATA_EVENT, event_payload: { key } },
            unfurl_links: false,
            unfurl_media: false,
          }),
        );
        if (sent.channel && sent.ts) return { channelId: sent.channel, ts: sent.ts };
        throw new DeliveryFailure('uncertain', 'unreadable_answer');
      }),

    find: (workspaceId, to, key, since) =>
      within(workspaceId, async (client) => {
        try {
          const channelId = await conversationOf(client, to);
          const look = () =>
            findInHistory(client, { channelId, threadTs: to.threadTs }, key, since, searchedTo);
          return await look().catch(async (error: DeliveryFailure) => {
            if (error.code !== 'not_in_channel') throw error;
            await join(client, channelId, error);
            return look();
          });
        } catch (error) {
          throw toDeliveryFailure(error);
        }
      }),

    update: (workspaceId, at, content, image, maySend) =>
      within(workspaceId, async (client) => {
        const shown = await prepared(client, content, image);
        if (!maySend()) throw new DeliveryFailure('not-sent', 'took_too_long');
        await send(content, shown, (view) =>
          client.chat.update({ channel: at.channelId, ts: at.ts, ...view }),
        );
      }),

    removeOwn: (workspaceId, channelId, beforeTs) =>
      within(workspaceId, (client, botUserId) => removeOwnMessages(client, botUserId, channelId, beforeTs)),
  };
}

/** Of a channel that the bot can't see nothing is known; whether it takes a post, the post will say. */
async function sharedNow(client: WebClient, channelId: string): Promise<boolean> {
  try {
    return isShared((await client.conversations.info({ channel: channelId })).channel);
  } catch (error) {
    const failure = toDeliveryFailure(error);
    if (failure.kind === 'refused' && !VOID_TOKEN_CODES.has(failure.code)) return false;
    // What only looks has done nothing.
    if (failure.kind === 'uncertain') throw new DeliveryFailure('not-sent', failure.code, { cause: error });
    throw failure;
  }
}

/** Undefined for a message that was deleted, and whenever the platform gives none: the words do without it. */
async function linkTo(client: WebClient, at: PostedAt): Promise<string | undefined> {
  const answer = await client.chat
    .getPermalink({ channel: at.channelId, message_ts: at.ts })
    .catch(() => undefined);
  return answer?.permalink;
}

/** A person's id opens the direct messages; a thread in them is only found by their own id. */
async function destinationOf(
  client: WebClient,
  to: Recipient,
): Promise<{ channel: string; thread_ts?: string }> {
  if (to.threadTs === undefined) return { channel: 'userId' in to ? to.userId : to.channelId };
  try {
    return { channel: await conversationOf(client, to), thread_ts: to.threadTs };
  } catch (error) {
    throw toDeliveryFailure(error);
  }
}

async function conversationOf(client: WebClient, to: Recipient): Promise<string> {
  if ('channelId' in to) return to.channelId;
  return directConversation(client, to.userId);
}

/**
 * A public channel can be posted to by anybody, but only read by its members.
 *
 * @param outside what to fail with when it can't be joined
 */
async function join(client: WebClient, channelId: string, outside: DeliveryFailure): Promise<void> {
  await client.conversations.join({ channel: channelId }).catch((error: unknown) => {
    const failure = toDeliveryFailure(error);
    throw failure.kind === 'refused' ? outside : failure;
  });
}

/**
 * @param searchedTo by the post's key, where a search goes on that had to wait: an app that is distributed may read one page of
 *   15 messages a minute, and would never get beyond the first if it began again each time
 *   (docs.slack.dev/apis/web-api/rate-limits)
 */
async function findInHistory(
  client: WebClient,
  { channelId, threadTs }: { readonly channelId: string; readonly threadTs: string | undefined },
  key: string,
  since: Date,
  searchedTo: Map<string, string>,
): Promise<PostedAt | undefined> {
  const oldest = String(Math.floor(since.getTime() / 1000) - CLOCK_MARGIN_SECONDS);
  let cursor = searchedTo.get(key);
  do {
    // Forgotten by the next search, if this page fails for another reason than the pace.
    searchedTo.delete(key);
    const asked = {
      channel: channelId,
      oldest,
      inclusive: true,
      include_all_metadata: true,
      limit: HISTORY_PAGE,
      ...(cursor ? { cursor } : {}),
    };
    const reading =
      threadTs === undefined
        ? client.conversations.history(asked)
        : client.conversations.replies({ ...asked, ts: threadTs });
    const page = await reading.catch((error: unknown) => {
      const failure = toDeliveryFailure(error);
      if (cursor && failure.kind === 'rate-limited') searchedTo.set(key, cursor);
      // Cursors don't live for ever.
      throw cursor && failure.code === 'invalid_cursor'
        ? new DeliveryFailure('not-sent', failure.code, { cause: error })
        : failure;
    });
    const found = page.messages?.find((message) => carries(message, key));
    if (found?.ts) return { channelId, ts: found.ts };
    cursor = page.response_metadata?.next_cursor || undefined;
  } while (cursor);
  return undefined;
}

/** People can't write metadata, and another app would have to guess the key. */
function carries(message: FoundMessage, key: string): boolean {
  const { metadata } = message as { metadata?: { event_type?: string; event_payload?: { key?: unknown } } };
  return metadata?.event_type === METADATA_EVENT && metadata.event_payload?.key === key;
}
