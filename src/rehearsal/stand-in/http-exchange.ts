/** What the stand-in's server and its page API share: reading a request's body, and two kinds of answers. */
import type { IncomingMessage, ServerResponse } from 'node:http';

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

export function sendJson(
  response: ServerResponse,
  status: number,
  body: unknown,
  headers: Record<string, string> = {},
): void {
  response.writeHead(status, { 'content-type': 'application/json; charset=utf-8', ...headers });
  response.end(JSON.stringify(body));
}

/**
 * Headers that make a browser save a file, no matter what it holds, and never show it as a page. Names of people's files
 * can hold anything: RFC 6266 gives an ASCII name for old clients and the whole one in percent signs (RFC 8187).
 */
export function attachmentHeaders(fileName: string): Record<string, string> {
  const ascii = fileName.replaceAll(/[^\x20-\x7e]|["\\%]/g, '_');
  const whole = encodeURIComponent(fileName.toWellFormed()).replaceAll(
    /['()*!]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`,
  );
  return {
    'content-disposition': `attachment; filename="${ascii}"; filename*=UTF-8''${whole}`,
    'x-content-type-options': 'nosniff',
  };
}
