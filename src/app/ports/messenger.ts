/** What the use cases need of the chat platform to send posts. */

import type { MessageContent } from '../posting/post-kinds.ts';
import type { PostedAt, Recipient } from '../posting/posts.ts';
import type { Picture } from './charts.ts';

/** An image that goes with a post. */
export interface PostImage extends Picture {
  readonly fileName: string;
}

/** Sends posts to the chat platform. Every failure is a `DeliveryFailure`. */
export interface Messenger {
  /**
   * Sends a new message that carries the key, so that `find` can find it.
   *
   * @param maySend asked at the last moment, since an image takes its time; when it says no, nothing is sent and the
   *   failure is `not-sent`
   */
  post(
    workspaceId: string,
    to: Recipient,
    key: string,
    content: MessageContent,
    image: PostImage | undefined,
    maySend: () => boolean,
  ): Promise<PostedAt>;
  /** Whether people of another organisation read the channel too. Remembered for a minute. */
  isShared(workspaceId: string, channelId: string): Promise<boolean>;
  /** Looks for a message with the key among those sent since. */
  find(workspaceId: string, to: Recipient, key: string, since: Date): Promise<PostedAt | undefined>;
  /** @param maySend as for `post` */
  update(
    workspaceId: string,
    at: PostedAt,
    content: MessageContent,
    image: PostImage | undefined,
    maySend: () => boolean,
  ): Promise<void>;
  /** Deletes some of the bot's own messages in a conversation, those before the timestamp, the latest first. */
  removeOwn(workspaceId: string, channelId: string, beforeTs: string): Promise<RemovalStep>;
}

/** What was done of a removal, and where it goes on. */
export interface RemovalStep {
  readonly removed: number;
  /** Those that the platform doesn't let the bot delete. */
  readonly left: number;
  readonly beforeTs: string;
  readonly isDone: boolean;
}
