/** Bytes that strangers send to the metrics' own port: refused or unheard, and never a number for who has no token. */
import fc from 'fast-check';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { createMetrics } from '../../src/metrics/metrics.ts';
import { type MetricsServer, startMetricsServer } from '../../src/metrics/metrics-server.ts';
import { search } from '../support/search-width.ts';
import { exchange, withSilence } from './raw-http.ts';

const SEED = 20261128;
const TOKEN = 'a-token-for-the-test-only';

let server: MetricsServer;
const errors: unknown[] = [];
beforeAll(async () => {
  const { register } = createMetrics({ version: '0', nodeVersion: 'v24', database: 'pglite' });
  server = await startMetricsServer({
    host: '127.0.0.1',
    port: 0,
    token: TOKEN,
    register,
    onError: (error) => errors.push(error),
  });
});
afterAll(() => server.stop());

async function expectRefused(bytes: Uint8Array): Promise<void> {
  const { statuses, text } = await exchange(server.port, bytes, 'end');
  for (const status of statuses) expect(status).toSatisfy((code) => code >= 400 && code < 500);
  expect(text).not.toContain('loadline_');
  expect(errors).toEqual([]);
}

it('answers no bytes that are no request', async () => {
  const start = fc.constantFrom('', 'GET /metrics HTTP/1.1\r\n', 'POST /metrics HTTP/1.1\r\nhost: b\r\n');
  await fc.assert(
    fc.asyncProperty(start, fc.uint8Array({ maxLength: 300 }), (head, rest) =>
      expectRefused(Buffer.concat([Buffer.from(head), rest])),
    ),
    search(150, SEED),
  );
});

it('shows nothing to a client with any other authorisation', async () => {
  const near = fc.constantFrom(TOKEN.slice(1), `${TOKEN}x`, `${TOKEN} x`, `x ${TOKEN}`, `"${TOKEN}"`, '');
  const word = fc.oneof(
    near,
    fc.string({ unit: fc.constantFrom(...'aZ0-_ ,=\t"') }),
    fc.string({ unit: 'binary' }),
  );
  const scheme = fc.constantFrom('Bearer', 'bearer', 'Basic', 'Bearer Bearer', '');
  const path = fc.constantFrom('/metrics', '/metrics?x', '/metrics#', '//metrics', '/METRICS', '/metrics/..');
  await fc.assert(
    fc.asyncProperty(path, scheme, word, (at, kind, given) =>
      expectRefused(
        Buffer.from(
          `GET ${at} HTTP/1.1\r\nhost: b\r\nconnection: close\r\nauthorization: ${kind} ${given}\r\n\r\n`,
          'utf8',
        ),
      ),
    ),
    search(150, SEED),
  );
});

it('goes on answering who has the token', async () => {
  const answer = await fetch(`http://127.0.0.1:${server.port}/metrics`, {
    headers: { authorization: `Bearer ${TOKEN}` },
  });
  expect(answer.status).toBe(200);
  expect(await answer.text()).toContain('loadline_');
});

it('answers who collects while strangers hold all connections in silence', async () => {
  await withSilence(server.port, async () => {
    const asked = `GET /metrics HTTP/1.1\r\nhost: b\r\nauthorization: Bearer ${TOKEN}\r\n\r\n`;
    expect((await exchange(server.port, Buffer.from(asked), 'end')).statuses).toEqual([200]);
  });
});
