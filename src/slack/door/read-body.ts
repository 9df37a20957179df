/** Reads a request's body up to a limit. Must not keep more than the limit in memory, nor fail when the sender does. */
import type { IncomingMessage } from 'node:http';

/** Why there is no body: the rest of it is then left unread. `cut off`: there is nobody left to answer. */
export type UnreadBody = 'too large' | 'no room' | 'cut off';

/** The memory that unfinished requests hold together. Makes nobody wait: there is room, or there is not. */
export interface BodyRoom {
  /** @returns false, and takes nothing, when there is not that much room. */
  take(bytes: number): boolean;
  giveBack(bytes: number): void;
}

export async function readBody(
  request: IncomingMessage,
  limitBytes: number,
  room: BodyRoom,
): Promise<Buffer | UnreadBody> {
  if (Number(request.headers['content-length'] ?? 0) > limitBytes) return 'too large';
  const parts: Buffer[] = [];
  let lengthBytes = 0;
  try {
    // The answer goes out on the same connection, so an end in the middle must not close it.
    for await (const part of request.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
      if (lengthBytes + part.length > limitBytes) return 'too large';
      if (!room.take(part.length)) return 'no room';
      lengthBytes += part.length;
      parts.push(part);
    }
    return Buffer.concat(parts);
  } catch {
    // The sender hung up, was too slow, had to make room, or sent what is no HTTP; the connection is closed.
    return 'cut off';
  } finally {
    room.giveBack(lengthBytes);
  }
}
