/** Whether the data folder can hold a database: there or makeable, writable, private, with room. Leaves nothing in it. */
import { randomUUID } from 'node:crypto';
import { rm, stat, statfs, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { type Finding, findingsOf } from './finding.ts';

const { ok, warning, mend } = findingsOf('data folder');

const MEGABYTE = 1024 * 1024;
/** An empty database takes about 40 MB. */
const TIGHT_BYTES = 500 * MEGABYTE;
const FULL_BYTES = 100 * MEGABYTE;
const BY_OTHERS = 0o077;

export async function checkDataFolder(dataFolder: string): Promise<Finding[]> {
  const folder = resolve(dataFolder);
  const there = await stat(folder).catch(() => undefined);
  if (there && !there.isDirectory()) {
    return [mend(`${folder} is not a folder.`, 'Give a folder in LOADLINE_DATA_FOLDER.')];
  }
  const place = there ? folder : await nearestFolder(folder);
  const problem = await writeProblem(place);
  if (problem !== undefined) {
    return [
      mend(
        `${place} can not be written to (${problem}).`,
        'Let the user that runs the bot own the folder, or set LOADLINE_DATA_FOLDER to one that it owns.',
      ),
    ];
  }
  return [
    ok(there ? `${folder} can be written to.` : `${folder} does not exist yet; the first start makes it.`),
    ...(there && (there.mode & BY_OTHERS) !== 0
      ? [
          warning(
            `Other users of this machine can look into ${folder}, which holds people's answers.`,
            `Run: chmod 700 ${folder}`,
          ),
        ]
      : []),
    ...(await aboutRoom(place)),
  ];
}

async function nearestFolder(path: string): Promise<string> {
  const parent = dirname(path);
  if (parent === path) return path;
  return (await stat(parent).catch(() => undefined)) ? parent : nearestFolder(parent);
}

/** @returns the system's code for why not; undefined when it can be written to */
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

async function aboutRoom(folder: string): Promise<Finding[]> {
  const { bavail, bsize } = await statfs(folder);
  return roomFindings(bavail * bsize, folder);
}

/** Pure part: what is to be said of so much room. */
export function roomFindings(freeBytes: number, folder: string): Finding[] {
  if (freeBytes >= TIGHT_BYTES) return [];
  const found = `${Math.floor(freeBytes / MEGABYTE)} MB are left on the disk of ${folder}.`;
  const how = 'Make room on the disk, or move the data folder to another.';
  return [freeBytes < FULL_BYTES ? mend(found, how) : warning(found, how)];
}
