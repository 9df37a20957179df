/** Answers `/healthz` (the process lives) and `/readyz` (it can do its work). Shows no secrets and no numbers. */
import type { IncomingMessage, ServerResponse } from 'node:http';

/** What is not ready, a short phrase each; empty when all is. */
export type Readiness = () => Promise<readonly string[]>;

/** @returns false when the request is for something else. */
export async function answerHealth(
  request: IncomingMessage,
  response: ServerResponse,
  readiness: Readiness,
): Promise<boolean> {
  if (request.method !== 'GET' && request.method !== 'HEAD') return false;
  const path = request.url?.split('?')[0];
  if (path === '/healthz') {
    answer(response, 200, { status: 'alive' });
    return true;
  }
  if (path !== '/readyz') return false;
  const missing = await readiness().catch(() => ['the check itself failed']);
  if (missing.length === 0) answer(response, 200, { status: 'ready' });
  else answer(response, 503, { status: 'not ready', missing });
  return true;
}

function answer(response: ServerResponse, status: number, body: unknown): void {
  response.writeHead(status, { 'content-type': 'application/json', 'cache-control': 'no-store' });
  response.end(JSON.stringify(body));
}

/** Probes ask every few seconds; a second is no delay to them. */
export const ANSWER_KEPT_MS = 1_000;

/**
 * Asks once for everybody who wants to know at the same time, so that a stranger who asks over and over costs the
 * database nothing. Must not keep an answer longer than a probe would notice.
 *
 * @param nowMs a clock that is not set back
 */
export function sharedReadiness(
  readiness: Readiness,
  nowMs: () => number = () => performance.now(),
): Readiness {
  let asked: { readonly answer: ReturnType<Readiness>; keptUntilMs: number } | undefined;
  return () => {
    if (asked !== undefined && nowMs() < asked.keptUntilMs) return asked.answer;
    const answer = readiness();
    // As long as it takes, it is the only one; from its end on it is kept.
    const current = { answer, keptUntilMs: Number.POSITIVE_INFINITY };
    const keep = (): void => {
      current.keptUntilMs = nowMs() + ANSWER_KEPT_MS;
    };
    answer.then(keep, keep);
    asked = current;
    return answer;
  };
}
