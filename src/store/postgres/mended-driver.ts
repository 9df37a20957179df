/**
 * Mends a fault of the Postgres driver as it is loaded: a small write waits for the end of the turn, and when the
 * connection is lost in the meantime, the driver writes to a socket that is no more. The error reaches nobody and ends
 * the process; or the connection, once made again, never sends anything. Reported as github.com/porsager/postgres,
 * issues 1066, 1154 and 1208; to be taken away with the release that mends it. A driver that does not have the faulty
 * lines is left as it is.
 */
import { registerHooks } from 'node:module';

const FILE = '/postgres/src/connection.js';

/** Faulty lines, and what goes in their place. */
const MENDINGS: readonly (readonly [faulty: string, mended: string])[] = [
  [
    `    const x = socket.write(chunk, fn)
    nextWriteTimer !== null && clearImmediate(nextWriteTimer)
    chunk = nextWriteTimer = null
    return x
`,
    `    nextWriteTimer !== null && clearImmediate(nextWriteTimer)
    const waiting = chunk
    chunk = nextWriteTimer = null
    if (socket !== null) return socket.write(waiting, fn)
    error(Errors.connection('CONNECTION_CLOSED', options, socket))
    query = null
    return false
`,
  ],
  [
    `
    clearImmediate(nextWriteTimer)
`,
    `
    clearImmediate(nextWriteTimer)
    chunk = nextWriteTimer = null
`,
  ],
];

/** @returns the driver's source without the fault; as it was when it does not have it */
export function mendSource(source: string): string {
  return MENDINGS.reduce((text, [faulty, mended]) => text.replaceAll(faulty, mended), source);
}

let isMending = false;

/** Takes effect when the driver is loaded afterwards. */
export function mendDriver(): void {
  if (isMending) return;
  isMending = true;
  registerHooks({
    load(url, context, nextLoad) {
      const loaded = nextLoad(url, context);
      if (!url.endsWith(FILE) || loaded.source === undefined || loaded.source === null) return loaded;
      return { ...loaded, source: mendSource(String(loaded.source)) };
    },
  });
}
