import type { IncomingMessage } from 'node:http';

/** Thrown when a request's body is longer than allowed. */
export class BodyTooLarge extends Error {
  constructor(limitBytes: number) {
    super(`the body is longer than ${limitBytes} bytes`);
    this.name = 'BodyTooLarge';
  }
}

/** Reads a whole request body. @throws BodyTooLarge */
export async function readBody(request: IncomingMessage, limitBytes: number): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let lengthBytes = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    lengthBytes += chunk.length;
    if (lengthBytes > limitBytes) throw new BodyTooLarge(limitBytes);
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}
