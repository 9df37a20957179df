/** Reads a request's body up to a limit. Must not keep more than the limit in memory, nor fail when the sender does. */
import type { IncomingMessage } from 'node:http';

/**
 * Why there is no body: the rest of it is then left unread. `in crumbs`: each byte comes by itself, which takes a hundred
 * times the work. `cut off`: there is nobody left to answer.
 */
export type UnreadBody = 'too large' | 'in crumbs' | 'no room' | 'cut off';

/** The memory that unfinished requests hold together. Makes nobody wait: there is room, or there is not. */
export interface BodyRoom {
  /** @returns false, and takes nothing, when there is not that much room. */
  take(bytes: number): boolean;
  giveBack(bytes: number): void;
}

/** The longest body, over a line that carries the shortest packets that are usual, comes in half as many. */
export const MOST_PIECES = 2_000;
/** What a piece takes besides its bytes. */
const PIECE_BYTES = 512;

export function readBody(
  request: IncomingMessage,
  limitBytes: number,
  room: BodyRoom,
): Promise<Buffer | UnreadBody> {
  if (Number(request.headers['content-length'] ?? 0) > limitBytes) return Promise.resolve('too large');
  const parts: Buffer[] = [];
  let lengthBytes = 0;
  let heldBytes = 0;
  return new Promise((resolve) => {
    /** @returns why it ends here; undefined: it goes on */
    const keep = (part: Buffer): UnreadBody | undefined => {
      if (lengthBytes + part.length > limitBytes) return 'too large';
      if (parts.length >= MOST_PIECES) return 'in crumbs';
      if (!room.take(part.length + PIECE_BYTES)) return 'no room';
      heldBytes += part.length + PIECE_BYTES;
      lengthBytes += part.length;
      parts.push(part);
    };
    const end = (body: Buffer | UnreadBody): void => {
      request.off('data', take);
      request.pause();
      room.giveBack(heldBytes);
      heldBytes = 0;
      resolve(body);
    };
    const take = (part: Buffer): void => {
      const why = keep(part);
      if (why) end(why);
    };
    request.on('data', take);
    request.once('end', () => end(Buffer.concat(parts)));
    // The sender hung up, was too slow, had to make room, or sent what is no HTTP; the connection is closed.
    request.once('error', () => end('cut off'));
    request.once('close', () => end('cut off'));
  });
}
