/**
 * Uploaded files in memory: announced, then filled, then completed, each once; what a person picks is all that
 * at once. Flow: docs.slack.dev/messaging/working-with-files.
 */
import type { IdMaker } from './id-maker.ts';

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
  /** Set when completed; real time, ms. */
  completedAtMs?: number;
}

const PICTURE_TYPES: readonly { type: string; mime: string; magic: readonly number[] }[] = [
  { type: 'png', mime: 'image/png', magic: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a] },
  { type: 'jpg', mime: 'image/jpeg', magic: [0xff, 0xd8, 0xff] },
  { type: 'gif', mime: 'image/gif', magic: [0x47, 0x49, 0x46, 0x38] },
];

/** The kind of picture by its first bytes; undefined when it is none that the platform can show. */
export function pictureType(bytes: Uint8Array): { type: string; mime: string } | undefined {
  return PICTURE_TYPES.find((one) => one.magic.every((byte, at) => bytes[at] === byte));
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
    const stored = { ...file, id, title: file.name, ticket: crypto.randomUUID() };
    this.#files.set(id, stored);
    return stored;
  }

  /** A file that a person picks from their machine, to give with a form. */
  pick(file: { name: string; userId: string; bytes: Buffer }): StoredFile {
    const { bytes, ...rest } = file;
    const stored: StoredFile = this.announce({ ...rest, lengthBytes: bytes.length, altText: '' });
    return Object.assign(stored, { bytes, completedAtMs: this.#nowMs() });
  }

  get(id: string): StoredFile | undefined {
    return this.#files.get(id);
  }

  /** @returns false when no upload with this ticket awaits exactly these bytes. */
  fill(id: string, ticket: string, bytes: Buffer): boolean {
    const file = this.#files.get(id);
    if (!file || file.ticket !== ticket || file.completedAtMs !== undefined) return false;
    if (bytes.length !== file.lengthBytes) return false;
    file.bytes = bytes;
    return true;
  }

  /** False when nothing was uploaded, or it is complete already. */
  canComplete(file: StoredFile): boolean {
    return file.bytes !== undefined && file.completedAtMs === undefined;
  }

  complete(file: StoredFile, title: string | undefined): void {
    file.completedAtMs = this.#nowMs();
    if (title) file.title = title;
  }

  isReady(file: StoredFile): boolean {
    return file.completedAtMs !== undefined && this.#nowMs() - file.completedAtMs >= this.#readyAfterMs;
  }

  /** Whether an image block may show this file now. Only files of this workspace, by id or private address. */
  canShow(reference: { id?: string; url?: string }): boolean {
    const id = reference.id ?? /\/(F[A-Z0-9]+)\//.exec(reference.url ?? '')?.[1];
    const file = id === undefined ? undefined : this.#files.get(id);
    return file?.bytes !== undefined && this.isReady(file) && pictureType(file.bytes) !== undefined;
  }
}
