/** Whether the bot's port is free, or a running bot has it. */
import { once } from 'node:events';
import { createServer } from 'node:net';
import type { Finding } from './finding.ts';

const HEALTH_LIMIT_MS = 3_000;

export async function checkPort(number: number): Promise<Finding[]> {
  const port = String(number);
  const reason = await listenProblem(number);
  if (reason === undefined) return [number === 0 ? { code: 'port-any' } : { code: 'port-free', port }];
  if (reason !== 'EADDRINUSE') return [{ code: 'port-refused', port, reason }];
  return [{ code: (await isBot(number)) ? 'port-ours' : 'port-taken', port }];
}

async function listenProblem(port: number): Promise<string | undefined> {
  const server = createServer();
  try {
    server.listen(port);
    await once(server, 'listening');
    const closed = once(server, 'close');
    server.close();
    await closed;
    return undefined;
  } catch (error) {
    return String((error as { code?: unknown }).code);
  }
}

/** Whether the program on this port answers as the bot's health route does. */
async function isBot(port: number): Promise<boolean> {
  try {
    const response = await fetch(`http://127.0.0.1:${port}/healthz`, {
      signal: AbortSignal.timeout(HEALTH_LIMIT_MS),
      redirect: 'error',
    });
    return ((await response.json()) as { status?: unknown }).status === 'alive';
  } catch {
    return false;
  }
}
