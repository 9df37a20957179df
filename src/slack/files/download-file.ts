/**
 * Fetches a file that came with a form. The bot's token goes to the platform only, never to another address; what
 * comes back is read up to a limit, even if it claims to be smaller. Must not understand what the file holds.
 * docs.slack.dev/messaging/working-with-files
 */

import type { WebClient } from '@slack/web-api';
import { z } from 'zod';
import { letOthersTurn } from '../../app/let-others-turn.ts';
import { Refusal, type UnreadableFile } from '../../app/refusal.ts';
import { visibleText } from '../../app/visible-text.ts';
import type { Logger } from '../../logger.ts';
import { isOfPlatform } from '../platform-host.ts';

/** Ten years of a team's answers are a third of it. */
export const DOWNLOAD_BYTES_MAX = 5_000_000;
const NAME_MAX_LENGTH = 80;
const DOWNLOAD_TIMEOUT_MS = 15_000;
const BYTES_A_TURN = 500_000;
/** Between hosts of the platform; a sign-in page is two away. */
const REDIRECTS_MAX = 3;

interface DownloadTools {
  readonly client: WebClient;
  readonly botToken: string;
  /** Address of the Web API where it is not the platform's own. */
  readonly apiUrl: string | undefined;
  readonly logger: Logger;
  readonly timeoutMs?: number;
}

/**
 * @returns what is in the file, in memory of its own that can be handed on
 * @throws Refusal `file-unreadable`; what the client throws
 */
export async function downloadFile(tools: DownloadTools, file: SentFile): Promise<Uint8Array> {
  const refuse = (why: UnreadableFile): Refusal =>
    new Refusal('file-unreadable', { field: file.field, fileName: file.name, why });
  if (file.sizeBytes > DOWNLOAD_BYTES_MAX) throw refuse('too large');
  const address = file.url ?? (await addressOf(tools.client, file.id));
  const got = await fetchBytes(tools, address);
  if (typeof got === 'string') throw refuse(got);
  return got;
}

/** Forms from shared channels hold the id of a file only. */
async function addressOf(client: WebClient, fileId: string): Promise<string | undefined> {
  const { file } = await client.files.info({ file: fileId });
  return file?.url_private_download;
}

async function fetchBytes(
  tools: DownloadTools,
  address: string | undefined,
): Promise<Uint8Array | UnreadableFile> {
  const signal = AbortSignal.timeout(tools.timeoutMs ?? DOWNLOAD_TIMEOUT_MS);
  try {
    const response = await fetchFromPlatform(tools, address, signal);
    if (response === undefined) return 'not handed over';
    return await readAsMuchAsIsKept(response);
  } catch (error) {
    tools.logger.warn({ err: error }, 'A file of a form could not be read: no answer.');
    return 'no answer';
  }
}

/** @returns undefined when the platform answers with anything but the file */
async function fetchFromPlatform(
  { botToken, apiUrl, logger }: DownloadTools,
  address: string | undefined,
  signal: AbortSignal,
): Promise<Response | undefined> {
  const headers = { authorization: `Bearer ${botToken}` };
  let at = address !== undefined && URL.canParse(address) ? new URL(address) : undefined;
  for (let hops = 0; hops <= REDIRECTS_MAX; hops += 1) {
    if (at === undefined || !isOfPlatform(at, apiUrl)) {
      logger.warn({ host: at?.host }, 'A file of a form lies elsewhere than on the platform.');
      return undefined;
    }
    const response = await fetch(at, { headers, signal, redirect: 'manual' });
    const type = response.headers.get('content-type') ?? '';
    // Without the right to read files, the platform answers with a page to sign in, and status 200.
    if (response.ok && !/^\s*(text\/html|application\/xhtml)/i.test(type)) return response;
    await response.body?.cancel();
    const next = response.headers.get('location');
    if (response.status < 300 || response.status >= 400 || next === null || !URL.canParse(next, at.href)) {
      logger.warn({ status: response.status, type }, 'A file of a form was not handed over.');
      return undefined;
    }
    at = new URL(next, at);
  }
  logger.warn('A file of a form was not handed over: too many redirects.');
  return undefined;
}

/**
 * Leaving the loop closes the connection, so no more is read than is kept. What has arrived already is read without a pause,
 * so others get their turn in between.
 */
async function readAsMuchAsIsKept(response: Response): Promise<Uint8Array | UnreadableFile> {
  const buffer = new ArrayBuffer(0, { maxByteLength: DOWNLOAD_BYTES_MAX });
  let turnAtBytes = BYTES_A_TURN;
  for await (const chunk of response.body ?? []) {
    const place = buffer.byteLength;
    const lengthBytes = place + chunk.byteLength;
    if (lengthBytes > DOWNLOAD_BYTES_MAX) return 'too large';
    buffer.resize(lengthBytes);
    new Uint8Array(buffer).set(chunk, place);
    if (lengthBytes < turnAtBytes) continue;
    turnAtBytes = lengthBytes + BYTES_A_TURN;
    await letOthersTurn();
  }
  return new Uint8Array(buffer.transferToFixedLength());
}

export interface SentFile {
  /** The field that it was given in. */
  readonly field: string;
  readonly id: string;
  readonly name: string;
  readonly sizeBytes: number;
  /** Address that only those who may read the file can read; undefined when the platform names none. */
  readonly url: string | undefined;
}

/** A file of an earlier round of a form, of which little was kept. */
export function sentBefore(
  field: string,
  { id, name, size = 0 }: { readonly id: string; readonly name: string; readonly size?: number | undefined },
): SentFile {
  return { field, id, name, sizeBytes: size, url: undefined };
}

const stated = z.looseObject({
  id: z
    .string()
    .max(255)
    .regex(/^[\x21-\x7e]+$/),
  name: z.string().max(1_000).nullish(),
  size: z.number().nonnegative().nullish(),
  url_private_download: z.string().max(3_000).nullish(),
});

/**
 * A file that somebody gave with a form, as far as the bot reads what the platform says of it.
 *
 * @returns undefined when this is no file
 */
export function sentFile(field: string, value: unknown): SentFile | undefined {
  const parsed = stated.safeParse(value);
  if (!parsed.success) return undefined;
  const { id, name, size, url_private_download: url } = parsed.data;
  return {
    field,
    id,
    name: shortName(
      visibleText(name ?? '')
        .replace(/\s+/g, ' ')
        .trim() || 'file',
    ),
    sizeBytes: size ?? 0,
    url: url || undefined,
  };
}

/** Forms carry names from round to round in a small place; the ending stays. */
function shortName(name: string): string {
  if (name.length <= NAME_MAX_LENGTH) return name;
  return `${name.slice(0, NAME_MAX_LENGTH / 2)}…${name.slice(-10)}`.toWellFormed();
}
