/**
 * Serves the files of the web page; TypeScript goes out as JavaScript with its types stripped.
 * Must not serve anything outside the page's folder, nor kinds of files that a page doesn't need.
 */
import { readFile } from 'node:fs/promises';
import type { ServerResponse } from 'node:http';
import { stripTypeScriptTypes } from 'node:module';
import { fileURLToPath } from 'node:url';

const KINDS: Record<string, string> = {
  html: 'text/html; charset=utf-8',
  css: 'text/css; charset=utf-8',
  ts: 'text/javascript; charset=utf-8',
  svg: 'image/svg+xml',
  csv: 'text/csv; charset=utf-8',
  png: 'image/png',
  woff2: 'font/woff2',
};

/** No inline scripts or styles, nothing from other hosts, no framing. */
export const PAGE_HEADERS = {
  'content-security-policy': [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "img-src 'self' data:",
    "font-src 'self'",
    "connect-src 'self'",
    "form-action 'none'",
    "base-uri 'none'",
    "frame-ancestors 'none'",
  ].join('; '),
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cache-control': 'no-store',
};

/** Plain names only, so that neither `..` nor a hidden file can be asked for. */
const PATH = /^\/(?:[a-z0-9-]+\/)*[a-z0-9-]+\.([a-z0-9]+)$/;

/** @returns false when there is no such file for the page */
export async function servePageFile(path: string, pageDir: URL, response: ServerResponse): Promise<boolean> {
  const wanted = path === '/' ? '/index.html' : path;
  const extension = PATH.exec(wanted)?.[1] ?? '';
  const kind = Object.hasOwn(KINDS, extension) ? KINDS[extension] : undefined;
  if (!kind) return false;
  let bytes: Buffer;
  try {
    bytes = await readFile(fileURLToPath(new URL(`.${wanted}`, pageDir)));
  } catch {
    return false;
  }
  const body = extension === 'ts' ? stripTypeScriptTypes(bytes.toString('utf8')) : bytes;
  response.writeHead(200, { ...PAGE_HEADERS, 'content-type': kind });
  response.end(body);
  return true;
}
