/**
 * Makes a folder from an image (`data-folder-image.ts`). The folder appears whole or not at all, wherever the process is
 * stopped meanwhile; nobody waits for the disk, as PGlite never does. Knows only as much of the tar format as PGlite uses.
 */
import {
  closeSync,
  fstatSync,
  ftruncateSync,
  mkdirSync,
  openSync,
  readSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';

const BLOCK_BYTES = 512;
/** Two empty blocks end a tar. */
const END_BYTES = 2 * BLOCK_BYTES;

/** Where it stands in the block before each file, as POSIX has it: IEEE Std 1003.1, pax, "ustar Interchange Format". */
const FIELDS = { name: [0, 100], size: [124, 136], type: [156, 157] } as const;
const IS_FOLDER = '5';

/** As a server of Postgres wants its folder. */
const OWNER_ONLY = 0o600;
const OWNER_ONLY_FOLDER = { mode: 0o700 };

/** One piece at a time, since a whole image takes the system longer to make room for than to read. */
const PIECE_BYTES = 1_048_576;

/**
 * @param folder must not be there, but its parent must
 * @throws when there is no image or not all of it, or the folder can't be made; nothing is left then
 */
export function unpackImage(imageFile: string, folder: string): void {
  const unfinished = `${folder}.unfinished`;
  const image = openSync(imageFile, 'r');
  try {
    // Of a process that was stopped here.
    rmSync(unfinished, { recursive: true, force: true });
    mkdirSync(unfinished, OWNER_ONLY_FOLDER);
    unpackInto(unfinished, image);
    renameSync(unfinished, folder);
  } catch (error) {
    rmSync(unfinished, { recursive: true, force: true });
    throw error;
  } finally {
    closeSync(image);
  }
}

function unpackInto(folder: string, image: number): void {
  const piece = Buffer.alloc(PIECE_BYTES);
  const read = (at: number, bytes: number): Buffer => {
    if (readSync(image, piece, 0, bytes, at) < bytes) throw new Error('The image is not whole.');
    return piece.subarray(0, bytes);
  };
  const endsAt = fstatSync(image).size - END_BYTES;
  if (endsAt < 0 || !isEmpty(read(endsAt, END_BYTES))) throw new Error('The image is not whole.');
  let at = 0;
  while (at < endsAt) {
    const header = read(at, BLOCK_BYTES);
    const field = (name: keyof typeof FIELDS): string =>
      header.toString('latin1', ...FIELDS[name]).replace(/\0.*$/s, '');
    const path = join(folder, field('name'));
    const sizeBytes = Number.parseInt(field('size'), 8);
    at += BLOCK_BYTES;
    if (field('type') === IS_FOLDER) mkdirSync(path, OWNER_ONLY_FOLDER);
    else {
      const from = at;
      write(path, sizeBytes, (offset, bytes) => read(from + offset, bytes));
    }
    at += Math.ceil(sizeBytes / BLOCK_BYTES) * BLOCK_BYTES;
  }
}

function write(path: string, sizeBytes: number, read: (offset: number, bytes: number) => Buffer): void {
  const file = openSync(path, 'wx', OWNER_ONLY);
  try {
    for (let offset = 0; offset < sizeBytes; offset += PIECE_BYTES) {
      const content = read(offset, Math.min(PIECE_BYTES, sizeBytes - offset));
      // A third of an image is log that holds nothing yet.
      if (!isEmpty(content)) writeSync(file, content, 0, content.length, offset);
    }
    ftruncateSync(file, sizeBytes);
  } finally {
    closeSync(file);
  }
}

const NOTHING = Buffer.alloc(PIECE_BYTES);

function isEmpty(content: Buffer): boolean {
  return NOTHING.subarray(0, content.length).equals(content);
}
