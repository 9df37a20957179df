/**
 * Node.js understands all that has come over a connection in one go, up to 64 KiB, before anybody can say no: some two
 * thousand short requests, with a kilobyte or two of memory each. In slices, a connection that was closed over the first of
 * them is not read any further.
 */
import type { Socket } from 'node:net';

/** Most requests of the platform's have a few. */
const SLICE_BYTES = 2_048;

/** @param isTrusted whether it has brought a signed request, so that the rest need not be cut */
export function readInSlices(socket: Socket, isTrusted: () => boolean): void {
  // Node.js hands over what it reads only when somebody listens; else it goes to the parser directly.
  socket.on('data', () => undefined);
  const push = socket.push.bind(socket);
  socket.push = (chunk: unknown, encoding) => {
    if (!Buffer.isBuffer(chunk) || isTrusted()) return push(chunk, encoding);
    let wantsMore = true;
    for (let at = 0; at < chunk.length && !socket.destroyed; at += SLICE_BYTES) {
      wantsMore = push(chunk.subarray(at, at + SLICE_BYTES));
    }
    return wantsMore;
  };
}
