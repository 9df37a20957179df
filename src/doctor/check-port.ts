/** Whether the bot can have its port, or has it already. */
import { once } from 'node:events';
import { createServer } from 'node:net';
import { type Finding, findingsOf } from './finding.ts';

const { ok, mend } = findingsOf('port');

const HEALTH_LIMIT_MS = 3_000;

export async function checkPort(port: number): Promise<Finding[]> {
  const problem = await listenProblem(port);
  if (problem === undefined) return [ok(`${port === 0 ? 'Any free one' : port} can be had.`)];
  if (problem === 'EADDRINUSE' && (await isBot(port))) return [ok(`A running bot has ${port}.`)];
  return [
    mend(
      problem === 'EADDRINUSE'
        ? `Another program has port ${port}.`
        : `Port ${port} can not be had (${problem}).`,
      'Stop that program, or set PORT to another one.',
    ),
  ];
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

/** Whether what listens there answers as the bot's own health route does. */
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
