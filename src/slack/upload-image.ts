/**
 * Uploads an image privately, for a block to show by its id: keeps alternative text, metadata and post in
 * one message. Flow: docs.slack.dev/messaging/working-with-files. Must not share the file anywhere.
 */
import type { FilesGetUploadURLExternalResponse, WebClient } from '@slack/web-api';
import { DeliveryFailure } from '../app/delivery-failure.ts';
import type { PostImage } from '../app/ports.ts';

/** docs.slack.dev/reference/block-kit/blocks/image-block */
const ALT_TEXT_MAX_LENGTH = 2_000;
const UPLOAD_TIMEOUT_MS = 30_000;
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
  // Called by name: the client's own method knows the description under a name that the platform does not.
  const ticket = await client.apiCall('files.getUploadURLExternal', {
    filename: image.fileName,
    length: image.png.byteLength,
    alt_txt: image.altText.slice(0, ALT_TEXT_MAX_LENGTH),
  });
  const { upload_url: address, file_id: fileId } = ticket as FilesGetUploadURLExternalResponse;
  if (!address || !fileId) throw new DeliveryFailure('not-sent', 'upload_failed');
  const response = await fetch(address, {
    method: 'POST',
    body: new Blob([Uint8Array.from(image.png)], { type: 'image/png' }),
    signal: AbortSignal.timeout(UPLOAD_TIMEOUT_MS),
  }).catch((cause: unknown) => {
    throw new DeliveryFailure('not-sent', 'upload_failed', { cause });
  });
  if (!response.ok) throw new DeliveryFailure('not-sent', 'upload_failed');
  await client.files.completeUploadExternal({ files: [{ id: fileId, title: image.fileName }] });
  for (let attempt = 0; attempt < READY_ATTEMPTS; attempt += 1) {
    const { file } = await client.files.info({ file: fileId });
    // A file that is still being worked on has no type yet.
    if (file?.mimetype) return fileId;
    await wait(READY_POLL_MS);
  }
  throw new DeliveryFailure('not-sent', 'file_not_ready');
}
