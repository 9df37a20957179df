/**
 * Loaded before a program (`--import`), gives it a disk of few bytes: a write that would need more room than there is
 * fails as on a full disk. How much room there is stands in the file that `SMALL_DISK` names, and can be changed at any
 * time. All files count that the program writes synchronously, as the embedded database does.
 */
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

const roomFile = process.env.SMALL_DISK as string;
const { fstatSync, ftruncateSync, readFileSync, statfsSync, writeSync } = fs;

/** What was written since the room was last set. */
let writtenBytes = 0;
let lastRoom = '';

function leftBytes(): number {
  const room = readFileSync(roomFile, 'utf8');
  if (room !== '' && room !== lastRoom) [lastRoom, writtenBytes] = [room, 0];
  return Math.max(0, Number(lastRoom) - writtenBytes);
}

function take(fd: number, endBytes: number): void {
  const bytes = Math.max(0, endBytes - fstatSync(fd).size);
  if (bytes === 0) return;
  if (bytes > leftBytes()) {
    throw Object.assign(new Error('ENOSPC: no space left on device, write'), { code: 'ENOSPC', errno: -28 });
  }
  writtenBytes += bytes;
}

Object.assign(fs, {
  writeSync(fd: number, buffer: Uint8Array, offset?: number, length?: number, position?: number | null) {
    // Standard output and the like have no end to grow at.
    if (fd > 2 && typeof position === 'number') take(fd, position + (length ?? buffer.length));
    return writeSync(fd, buffer, offset, length, position);
  },
  ftruncateSync(fd: number, length = 0) {
    take(fd, length);
    ftruncateSync(fd, length);
  },
  statfsSync(path: string) {
    return { ...statfsSync(path), bsize: 1, bavail: leftBytes() };
  },
});
syncBuiltinESMExports();
