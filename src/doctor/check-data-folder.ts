/** Whether the data folder can hold a database: it exists or can be created, is writable and private, and has space. Leaves nothing in it. */
import { randomUUID } from 'node:crypto';
import { rm, stat, statfs, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { ROOM_FLOOR_BYTES } from '../store/embedded/disk-room.ts';
import type { Finding } from './finding.ts';

const MEGABYTE = 1024 * 1024;
/** An empty database takes about 40 MB. */
const TIGHT_BYTES = 500 * MEGABYTE;
const BY_OTHERS = 0o077;

export async function checkDataFolder(dataFolder: string): Promise<Finding[]> {
  const folder = resolve(dataFolder);
  const existing = await stat(folder).catch(() => undefined);
  if (existing && !existing.isDirectory()) return [{ code: 'folder-not-a-folder', folder }];
  const place = existing ? folder : await nearestFolder(folder);
  const reason = await writeProblem(place);
  if (reason !== undefined) return [{ code: 'folder-not-writable', folder: place, reason }];
  const { bavail, bsize } = await statfs(place);
  return [
    { code: existing ? 'folder-writable' : 'folder-absent', folder },
    ...(existing && (existing.mode & BY_OTHERS) !== 0 ? [{ code: 'folder-open', folder } as const] : []),
    ...diskFindings(bavail * bsize, place),
  ];
}

async function nearestFolder(path: string): Promise<string> {
  const parent = dirname(path);
  if (parent === path) return path;
  return (await stat(parent).catch(() => undefined)) ? parent : nearestFolder(parent);
}

/** @returns the system's error code; undefined when the folder can be written to */
async function writeProblem(folder: string): Promise<string | undefined> {
  const probe = join(folder, `.loadline-doctor-${randomUUID()}`);
  try {
    await writeFile(probe, '', { flag: 'wx' });
    await rm(probe);
    return undefined;
  } catch (error) {
    return String((error as { code?: unknown }).code);
  }
}

export function diskFindings(freeBytes: number, folder: string): Finding[] {
  if (freeBytes >= TIGHT_BYTES) return [];
  const megabytes = Math.floor(freeBytes / MEGABYTE);
  return [{ code: freeBytes < ROOM_FLOOR_BYTES ? 'disk-full' : 'disk-filling', megabytes, folder }];
}
