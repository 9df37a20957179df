/**
 * Lets only the rehearsal's own page use the page API: other web sites open in the same browser, and names that
 * someone points at this machine, are turned away.
 */
import type { IncomingMessage } from 'node:http';

/** What is wrong with a request; undefined when it may be answered. */
export function strangeRequest(request: IncomingMessage, standInUrl: string): string | undefined {
  const { port } = new URL(standInUrl);
  const hosts = [`127.0.0.1:${port}`, `localhost:${port}`];
  const { host, origin } = request.headers;
  if (!host || !hosts.includes(host)) return 'Open the rehearsal by its own address.';
  if (origin !== undefined && origin !== `http://${host}`) return 'Other sites may not use the rehearsal.';
  const site = request.headers['sec-fetch-site'];
  const top = request.headers['sec-fetch-dest'] === 'document' && request.method === 'GET';
  if (site !== undefined && !['same-origin', 'none'].includes(String(site)) && !top) {
    return 'Other sites may not use the rehearsal.';
  }
  const type = request.headers['content-type'] ?? '';
  // A cross-site form can send neither, so a post of another type does not come from the page.
  const ownType = type.startsWith('application/json') || type === 'application/octet-stream';
  return request.method === 'POST' && !ownType ? 'Send JSON.' : undefined;
}
