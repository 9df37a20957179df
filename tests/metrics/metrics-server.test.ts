import { request } from 'node:http';
import { afterEach, describe, expect, it } from 'vitest';
import { createMetrics } from '../../src/metrics/metrics.ts';
import { type MetricsServer, startMetricsServer } from '../../src/metrics/metrics-server.ts';

const TOKEN = 'a-token-for-the-test-only';
const { register } = createMetrics({ version: '0', nodeVersion: 'v24', database: 'pglite' });
const servers: MetricsServer[] = [];

async function started(token?: string, host = '127.0.0.1'): Promise<string> {
  const server = await startMetricsServer({ host, port: 0, token, register, onError: () => undefined });
  servers.push(server);
  return `http://127.0.0.1:${server.port}`;
}

afterEach(async () => {
  await Promise.all(servers.splice(0).map((server) => server.stop()));
});

describe('the metrics’ own port', () => {
  it('serves the metrics to this machine, in the format that collectors read', async () => {
    const answer = await fetch(`${await started()}/metrics`);
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toContain('version=0.0.4');
    const text = await answer.text();
    expect(text).toContain('# TYPE loadline_prompts_due_total counter');
    expect(text).toContain('process_resident_memory_bytes');
  });

  it('refuses to listen on an address that others reach without a token', async () => {
    await expect(started(undefined, '0.0.0.0')).rejects.toThrow('need a token');
  });

  it.each([
    ['none', undefined],
    ['another', `Bearer ${TOKEN}x`],
    ['the right one in another scheme', `Basic ${TOKEN}`],
    ['an empty one', 'Bearer '],
  ])('shows nothing to a client that brings %s token', async (_which, authorization) => {
    const url = await started(TOKEN, '0.0.0.0');
    const answer = await fetch(`${url}/metrics`, authorization ? { headers: { authorization } } : {});
    expect(answer.status).toBe(401);
    expect(await answer.text()).toBe('');
  });

  it('serves who brings the token', async () => {
    const url = await started(TOKEN, '0.0.0.0');
    const answer = await fetch(`${url}/metrics`, { headers: { authorization: `Bearer ${TOKEN}` } });
    expect(answer.status).toBe(200);
  });

  it('has nothing else to say, and takes nothing', async () => {
    const url = await started();
    expect((await fetch(`${url}/healthz`)).status).toBe(404);
    expect((await fetch(`${url}/metrics`, { method: 'POST', body: 'x' })).status).toBe(405);
  });

  it('stops although somebody keeps a connection open', async () => {
    const url = await started();
    const [server] = servers.splice(0);
    const held = request(`${url}/metrics`, { headers: { connection: 'keep-alive' } });
    held.on('error', () => undefined).end();
    await new Promise((resolve) =>
      held.once('response', (response) => response.resume().once('end', resolve)),
    );
    await expect(server?.stop()).resolves.toBeUndefined();
  });
});
