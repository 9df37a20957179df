/**
 * The first half of every upload: announces a file and sends its bytes. What becomes of it, the caller says by
 * completing the upload. Flow: docs.slack.dev/messaging/working-with-files.
 */
import type { FilesGetUploadURLExternalResponse, WebClient } from '@slack/web-api';
import { DeliveryFailure } from '../../app/posting/delivery-failure.ts';

/** docs.slack.dev/reference/block-kit/blocks/image-block */
const ALT_TEXT_MAX_LENGTH = 2_000;
const UPLOAD_TIMEOUT_MS = 30_000;

export interface UploadedBytes {
  readonly fileName: string;
  /** At least one byte: the platform takes no empty file. */
  readonly bytes: Uint8Array;
  readonly mimeType: string;
  /** Of an image. */
  readonly altText?: string;
}

/**
 * @returns the id of a file that is there and not complete yet
 * @throws DeliveryFailure `not-sent` with `upload_failed`; what the client throws
 */
export async function uploadBytes(
  client: WebClient,
  { fileName, bytes, mimeType, altText }: UploadedBytes,
): Promise<string> {
  // Called by name: the client's own method knows the description under a name that the platform does not.
  const ticket = await client.apiCall('files.getUploadURLExternal', {
    filename: fileName,
    length: bytes.byteLength,
    ...(altText === undefined ? {} : { alt_txt: altText.slice(0, ALT_TEXT_MAX_LENGTH) }),
  });
  const { upload_url: address, file_id: fileId } = ticket as FilesGetUploadURLExternalResponse;
  if (!address || !fileId) throw new DeliveryFailure('not-sent', 'upload_failed');
  const response = await fetch(address, {
    method: 'POST',
    body: new Blob([Uint8Array.from(bytes)], { type: mimeType }),
    signal: AbortSignal.timeout(UPLOAD_TIMEOUT_MS),
  }).catch((cause: unknown) => {
    throw new DeliveryFailure('not-sent', 'upload_failed', { cause });
  });
  if (!response.ok) throw new DeliveryFailure('not-sent', 'upload_failed');
  return fileId;
}
