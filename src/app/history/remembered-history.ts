/**
 * What projections have learnt from the past, kept from one status to the next: to learn it is most of what a status
 * computes, and the past changes only when a sprint ends. Must give what `projectionHistory` gives, for the very same past.
 */
import { createHash } from 'node:crypto';
import type { ProjectionHistory } from '../../forecast/project-velocity.ts';
import type { PastTrace } from './past-sprint.ts';
import { projectionHistory, tracePointAt } from './team-history.ts';

/** About ten megabytes when each has as long a past as is looked back at. */
const MOST_KEPT = 200;

/** By what went in, in the order of their last use. */
const kept = new Map<string, ProjectionHistory>();

/** @param elapsedShare from 0 to 1 */
export function rememberedHistory(past: readonly PastTrace[], elapsedShare: number): ProjectionHistory {
  const key = keyOf(past, elapsedShare);
  const history = kept.get(key) ?? projectionHistory(past, elapsedShare);
  kept.delete(key);
  kept.set(key, history);
  const [oldest] = kept.keys();
  if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
  return history;
}

/** Everything that the history is made of. */
function keyOf(past: readonly PastTrace[], elapsedShare: number): string {
  const rows = past.map(({ teamId, endsOn, commitmentPoints, velocityPoints, trace }) => {
    const at = tracePointAt(trace, elapsedShare);
    const known = at && [at.cardPoints, at.finishedPoints, at.underwayPoints];
    return [teamId, endsOn, commitmentPoints, velocityPoints, known];
  });
  return createHash('sha256').update(JSON.stringify(rows)).digest('base64');
}
