/**
 * Uploads files: an image that a block of a message shows, or files for one person. Both announce a file and send its
 * bytes first; completing the upload says what becomes of it. Flow: docs.slack.dev/messaging/working-with-files.
 */
import type { FilesGetUploadURLExternalResponse, WebClient } from '@slack/web-api';
import type { PostImage } from '../../app/ports/messenger.ts';
import { DeliveryFailure } from '../../app/posting/delivery-failure.ts';
import { postWhole } from './whole-call.ts';

const UPLOAD_TIMEOUT_MS = 30_000;

interface UploadedBytes {
  readonly fileName: string;
  /** At least one byte: the platform takes no empty file. */
  readonly bytes: Uint8Array;
  readonly mimeType: string;
  /** Of an image; 1,000 characters at most. */
  readonly altText?: string;
}

/**
 * @returns the id of a file that is there and not complete yet
 * @throws DeliveryFailure `not-sent` with `upload_failed`; what the client throws
 */
async function uploadBytes(
  client: WebClient,
  { fileName, bytes, mimeType, altText }: UploadedBytes,
): Promise<string> {
  // Called by name: the client's own method knows the description under a name that the platform does not.
  const ticket = await client.apiCall('files.getUploadURLExternal', {
    filename: fileName,
    length: bytes.byteLength,
    ...(altText === undefined ? {} : { alt_txt: altText }),
  });
  const { upload_url: address, file_id: fileId } = ticket as FilesGetUploadURLExternalResponse;
  if (!address || !fileId) throw new DeliveryFailure('not-sent', 'upload_failed');
  const response = await postWhole(address, {
    headers: { 'content-type': mimeType },
    body: bytes,
    timeoutMs: UPLOAD_TIMEOUT_MS,
  }).catch((cause: unknown) => {
    throw new DeliveryFailure('not-sent', 'upload_failed', { cause });
  });
  if (!response.ok) throw new DeliveryFailure('not-sent', 'upload_failed');
  return fileId;
}

/** The platform takes about a second to make an image showable. */
const READY_POLL_MS = 500;
const READY_ATTEMPTS = 20;

interface UploadTools {
  readonly client: WebClient;
  readonly wait: (ms: number) => Promise<unknown>;
}

/**
 * Uploads an image privately, for a block to show by its id: keeps alternative text, metadata and post in one message.
 * Must not share the file anywhere.
 *
 * @returns the id of a file that an image block can show
 * @throws DeliveryFailure `not-sent` with `upload_failed` or `file_not_ready`; what the client throws
 */
export async function uploadImage({ client, wait }: UploadTools, image: PostImage): Promise<string> {
  const { fileName, png, altText } = image;
  const fileId = await uploadBytes(client, { fileName, bytes: png, mimeType: 'image/png', altText });
  await client.files.completeUploadExternal({ files: [{ id: fileId, title: fileName }] });
  for (let attempt = 0; attempt < READY_ATTEMPTS; attempt += 1) {
    const { file } = await client.files.info({ file: fileId });
    // A file that is still being worked on has no type yet.
    if (file?.mimetype) return fileId;
    await wait(READY_POLL_MS);
  }
  throw new DeliveryFailure('not-sent', 'file_not_ready');
}

/** As many as the platform lets people put into one message. Whether it takes more of an app is written nowhere. */
const FILES_PER_MESSAGE = 10;

export interface SharedFiles {
  readonly userId: string;
  /** The message's text, 4,000 characters at most; the platform reads marks and mentions in it. */
  readonly comment: string;
  /** At least one. */
  readonly files: readonly Pick<UploadedBytes, 'fileName' | 'bytes'>[];
}

/**
 * Hands files to one person, in their direct messages with the bot, as one message or as few as hold them all. Must not
 * send them anywhere else: what somebody exports is for them to pass on. Nothing is seen before all are uploaded, so that a
 * failure on the way leaves no half of it behind.
 *
 * @throws DeliveryFailure `not-sent` with `upload_failed` or `unreadable_answer`; what the client throws: a failure
 *   of the last call may have come after the message appeared
 */
export async function shareFiles(client: WebClient, shared: SharedFiles): Promise<void> {
  const channelId = await directConversation(client, shared.userId);
  const files: { id: string; title: string }[] = [];
  for (const { fileName, bytes } of shared.files) {
    const id = await uploadBytes(client, { fileName, bytes, mimeType: 'application/octet-stream' });
    files.push({ id, title: fileName });
  }
  if (files.length === 0) throw new RangeError('there is no file to share');
  for (let from = 0; from < files.length; from += FILES_PER_MESSAGE) {
    const [first, ...others] = files.slice(from, from + FILES_PER_MESSAGE) as [(typeof files)[0]];
    await client.files.completeUploadExternal({
      files: [first, ...others],
      channel_id: channelId,
      ...(from === 0 ? { initial_comment: shared.comment } : {}),
    });
  }
}

/**
 * Opens the direct messages with a person. Most calls take the person's id instead; files and histories don't.
 *
 * @returns the id of the conversation
 * @throws DeliveryFailure `not-sent` with `unreadable_answer`; what the client throws
 */
export async function directConversation(client: WebClient, userId: string): Promise<string> {
  const { channel } = await client.conversations.open({ users: userId });
  if (!channel?.id) throw new DeliveryFailure('not-sent', 'unreadable_answer');
  return channel.id;
}
