/** Asks the bot in this container whether it lives; the exit code is the answer. For container engines. */
const port = process.env.LOADLINE_HEALTH_PORT?.trim() || process.env.PORT?.trim() || '3000';
const host = process.env.LOADLINE_HOST?.trim() || '127.0.0.1';
const LIMIT_MS = 4_000;

try {
  const address = host.includes(':') ? `[${host}]` : host;
  const { ok } = await fetch(`http://${address}:${port}/healthz`, { signal: AbortSignal.timeout(LIMIT_MS) });
  process.exitCode = ok ? 0 : 1;
} catch {
  process.exitCode = 1;
}
