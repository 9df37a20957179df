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

/** A body in few pieces is no trouble; one in many has so many bytes in each of them, on average, over any line. */
const FEW_PIECES = 100;
const LEAST_MEAN_BYTES = 500;

export function readBody(
  request: IncomingMessage,
  limitBytes: number,
  room: BodyRoom,
): Promise<Buffer | UnreadBody> {
  if (Number(request.headers['content-length'] ?? 0) > limitBytes) return Promise.resolve('too large');
  const parts: Buffer[] = [];
  let lengthBytes = 0;
  return new Promise((resolve) => {
    /** @returns why it ends here; undefined: it goes on */
    const keep = (part: Buffer): UnreadBody | undefined => {
      if (lengthBytes + part.length > limitBytes) return 'too large';
      if (!room.take(part.length)) return 'no room';
      lengthBytes += part.length;
      parts.push(part);
    };
    const end = (body: Buffer | UnreadBody): void => {
      request.off('data', take);
      request.pause();
      room.giveBack(lengthBytes);
      lengthBytes = 0;
      resolve(body);
    };
    // Node.js hands the pieces over one by one while it reads them, and to listeners only afterwards, when all the work is done.
    const push = request.push.bind(request);
    let pieces = 0;
    let piecesBytes = 0;
    request.push = (piece: Buffer | null, ...more) => {
      pieces += 1;
      piecesBytes += piece?.length ?? 0;
      if (pieces <= FEW_PIECES + piecesBytes / LEAST_MEAN_BYTES) return push(piece, ...more);
      end('in crumbs');
      request.socket.destroy();
      return false;
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
