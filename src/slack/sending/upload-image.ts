/**
 * Uploads an image privately, for a block to show by its id: keeps alternative text, metadata and post in
 * one message. Flow: docs.slack.dev/messaging/working-with-files. Must not share the file anywhere.
 */
import type { WebClient } from '@slack/web-api';
import type { PostImage } from '../../app/ports/messenger.ts';
import { DeliveryFailure } from '../../app/posting/delivery-failure.ts';
import { uploadBytes } from './upload-bytes.ts';

/** The platform takes about a second to make an image showable. */
const READY_POLL_MS = 500;
const READY_ATTEMPTS = 20;

export interface UploadTools {
  readonly client: WebClient;
  readonly wait: (ms: number) => Promise<unknown>;
}

/**
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
