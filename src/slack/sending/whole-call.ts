/**
 * Calls over HTTP that are sent whole and read whole, as all of the platform's are. Node.js' own `fetch` makes streams, signals
 * and registers for each, which the collector of garbage keeps for long; that took a tenth of a status.
 */
import http, { type IncomingMessage } from 'node:http';
import https from 'node:https';
import type { FetchFunction } from '@slack/web-api';

type WholeResponse = Awaited<ReturnType<FetchFunction>>;

interface WholeCall {
  readonly headers?: Readonly<Record<string, string>> | undefined;
  readonly body: string | Uint8Array;
  /** For the call with its answer. */
  readonly timeoutMs: number;
}

/** The connection was not made in time, so nothing was carried out. */
export const NOT_CONNECTED = 'NOT_CONNECTED_IN_TIME';

/** The means of calling that the platform's client and Bolt are given. */
export function wholeCalls(timeoutMs: number): FetchFunction {
  return async (address, { headers, body = '' } = {}) => {
    if (typeof body !== 'string') throw new TypeError('Forms in parts are not sent.');
    return postWhole(address, { headers, body, timeoutMs });
  };
}

/**
 * Follows nobody elsewhere.
 *
 * @throws Error with the code of Node.js when no whole answer came, `NOT_CONNECTED_IN_TIME`, or the name `TimeoutError`
 */
export function postWhole(address: string | URL, call: WholeCall): Promise<WholeResponse> {
  const url = new URL(address);
  const { body, timeoutMs } = call;
  const headers = { ...call.headers, 'content-length': Buffer.byteLength(body) };
  return new Promise((resolve, reject) => {
    const request = (url.protocol === 'https:' ? https : http).request(url, { method: 'POST', headers });
    let late: Error | undefined;
    const limit = setTimeout(() => {
      late = lateError(request.socket?.connecting ?? true);
      request.destroy(late);
    }, timeoutMs);
    const fail = (error: Error): void => {
      clearTimeout(limit);
      reject(late ?? error);
    };
    request.once('error', fail);
    request.once('response', (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.once('error', fail);
      response.once('end', () => {
        clearTimeout(limit);
        const { statusCode = 0 } = response;
        const isElsewhere = statusCode >= 300 && statusCode < 400;
        if (isElsewhere) reject(new TypeError('The answer is to be had elsewhere.'));
        else resolve(responseOf(url, response, Buffer.concat(parts)));
      });
    });
    request.end(body);
  });
}

function lateError(isConnecting: boolean): Error {
  if (isConnecting) return Object.assign(new Error('no connection in time'), { code: NOT_CONNECTED });
  return Object.assign(new Error('no whole answer in time'), { name: 'TimeoutError' });
}

function responseOf(
  url: URL,
  { statusCode = 0, statusMessage = '', headers }: IncomingMessage,
  body: Buffer,
) {
  const header = (name: string): string | null => headers[name.toLowerCase()]?.toString() ?? null;
  return {
    ok: statusCode >= 200 && statusCode < 300,
    status: statusCode,
    statusText: statusMessage,
    url: url.href,
    headers: {
      get: header,
      entries: () => Object.keys(headers).map((name): [string, string] => [name, header(name) ?? '']),
    },
    arrayBuffer: async () => Uint8Array.from(body).buffer,
    json: async () => JSON.parse(body.toString()) as unknown,
    text: async () => body.toString(),
  };
}
