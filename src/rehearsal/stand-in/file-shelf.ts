/**
 * Uploaded files in memory: announced, then filled, then completed, each once; what a person picks is all that
 * at once. Flow: docs.slack.dev/messaging/working-with-files.
 */
import type { IdMaker } from './ids.ts';

export interface StoredFile {
  id: string;
  name: string;
  /** Id of the person or bot it came from. */
  userId: string;
  title: string;
  altText: string;
  lengthBytes: number;
  /** Secret part of the address to upload to. */
  ticket: string;
  bytes?: Buffer;
  isComplete: boolean;
  /** Real time from which it can be shown, once it is complete. */
  readyAtMs?: number;
}

interface FileKind {
  type: string;
  mime: string;
}

const PICTURE_TYPES: readonly (FileKind & { magic: readonly number[] })[] = [
  { type: 'png', mime: 'image/png', magic: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a] },
  { type: 'jpg', mime: 'image/jpeg', magic: [0xff, 0xd8, 0xff] },
  { type: 'gif', mime: 'image/gif', magic: [0x47, 0x49, 0x46, 0x38] },
];

/** The kind of picture by its first bytes; undefined when it is none that the platform can show. */
export function pictureType(bytes: Uint8Array): FileKind | undefined {
  return PICTURE_TYPES.find((one) => one.magic.every((byte, at) => bytes[at] === byte));
}

/** The kinds that a rehearsal meets besides pictures, by the ending of the name. */
const KINDS: Record<string, FileKind> = {
  csv: { type: 'csv', mime: 'text/csv' },
  tsv: { type: 'tsv', mime: 'text/tab-separated-values' },
  txt: { type: 'text', mime: 'text/plain' },
  json: { type: 'json', mime: 'application/json' },
};
const OTHER: FileKind = { type: 'binary', mime: 'application/octet-stream' };

/** The part of a name after its last dot, in small letters; empty when there is none. */
export function endingOf(name: string): string {
  return /\.([^.]+)$/.exec(name)?.[1]?.toLowerCase() ?? '';
}

export function fileKind(file: StoredFile): FileKind {
  const ending = endingOf(file.name);
  const named = Object.hasOwn(KINDS, ending) ? KINDS[ending] : undefined;
  return (file.bytes && pictureType(file.bytes)) ?? named ?? OTHER;
}

export class FileShelf {
  readonly #ids: IdMaker;
  readonly #nowMs: () => number;
  readonly #readyAfterMs: number;
  readonly #files = new Map<string, StoredFile>();

  constructor(ids: IdMaker, nowMs: () => number, readyAfterMs: number) {
    this.#ids = ids;
    this.#nowMs = nowMs;
    this.#readyAfterMs = readyAfterMs;
  }

  announce(file: { name: string; userId: string; lengthBytes: number; altText: string }): StoredFile {
    const id = this.#ids.next('F');
    const stored = { ...file, id, title: file.name, ticket: crypto.randomUUID(), isComplete: false };
    this.#files.set(id, stored);
    return stored;
  }

  /** A file that a person picks from their machine, to give with a form. */
  pick(file: { name: string; userId: string; bytes: Buffer }): StoredFile {
    const { bytes, ...rest } = file;
    const stored: StoredFile = this.announce({ ...rest, lengthBytes: bytes.length, altText: '' });
    return Object.assign(stored, { bytes, isComplete: true });
  }

  get(id: string): StoredFile | undefined {
    return this.#files.get(id);
  }

  /** @returns false when no upload with this ticket awaits exactly these bytes. */
  fill(id: string, ticket: string, bytes: Buffer): boolean {
    const file = this.#files.get(id);
    if (!file || file.ticket !== ticket || file.isComplete) return false;
    if (bytes.length !== file.lengthBytes) return false;
    file.bytes = bytes;
    return true;
  }

  /** False when nothing was uploaded, or it is complete already. */
  canComplete(file: StoredFile): boolean {
    return file.bytes !== undefined && !file.isComplete;
  }

  complete(file: StoredFile, title: string | undefined): void {
    file.isComplete = true;
    file.readyAtMs = this.#nowMs() + this.#readyAfterMs;
    if (title) file.title = title;
  }

  /** False while the platform still works on a file that is complete. */
  isReady({ isComplete, readyAtMs = 0 }: StoredFile): boolean {
    return isComplete && this.#nowMs() >= readyAtMs;
  }

  /** Whether an image block may show this file now. */
  canShow(fileId: string): boolean {
    const file = this.#files.get(fileId);
    return file?.bytes !== undefined && this.isReady(file) && pictureType(file.bytes) !== undefined;
  }
}
