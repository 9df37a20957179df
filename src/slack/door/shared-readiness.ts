/**
 * Asks once for everybody who wants to know at the same time, so that a stranger who asks over and over costs the
 * database nothing. Must not keep an answer longer than a probe would notice.
 */
import type { Readiness } from './health-routes.ts';

/** Probes ask every few seconds; a second is no delay to them. */
export const ANSWER_KEPT_MS = 1_000;

/** @param nowMs a clock that is not set back */
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
