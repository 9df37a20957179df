/**
 * Hands files to one person, in their direct messages with the bot, as one message. Must not send them anywhere
 * else: what somebody exports is for them to pass on. Flow: docs.slack.dev/messaging/working-with-files.
 */
import type { WebClient } from '@slack/web-api';
import { directConversation } from './direct-conversation.ts';
import { uploadBytes } from './upload-bytes.ts';

export interface ShareTools {
  readonly client: WebClient;
}

export interface SharedFile {
  readonly fileName: string;
  /** At least one byte. */
  readonly bytes: Uint8Array;
}

export interface SharedFiles {
  readonly userId: string;
  /** The message's text, 4,000 characters at most; the platform reads marks and mentions in it. */
  readonly comment: string;
  /** At least one. */
  readonly files: readonly SharedFile[];
}

/**
 * Nothing is seen before the last call, so that a failure on the way leaves no half of it behind.
 *
 * @throws DeliveryFailure `not-sent` with `upload_failed` or `unreadable_answer`; what the client throws: a failure
 *   of the last call may have come after the message appeared
 */
export async function shareFiles({ client }: ShareTools, shared: SharedFiles): Promise<void> {
  const channelId = await directConversation(client, shared.userId);
  const files: { id: string; title: string }[] = [];
  for (const { fileName, bytes } of shared.files) {
    const id = await uploadBytes(client, { fileName, bytes, mimeType: 'application/octet-stream' });
    files.push({ id, title: fileName });
  }
  const [first, ...others] = files;
  if (!first) throw new RangeError('there is no file to share');
  await client.files.completeUploadExternal({
    files: [first, ...others],
    channel_id: channelId,
    initial_comment: shared.comment,
  });
}
