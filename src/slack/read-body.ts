/** Reads a request's body up to a limit. Must not keep more than the limit in memory. */
import type { IncomingMessage } from 'node:http';

/** @returns undefined when the body is longer than the limit; the rest of it is then left unread. */
export async function readBody(request: IncomingMessage, limitBytes: number): Promise<Buffer | undefined> {
  if (Number(request.headers['content-length'] ?? 0) > limitBytes) return undefined;
  const parts: Buffer[] = [];
  let lengthBytes = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    lengthBytes += part.length;
    if (lengthBytes > limitBytes) return undefined;
    parts.push(part);
  }
  return Buffer.concat(parts);
}
