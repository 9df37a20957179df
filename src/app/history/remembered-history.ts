/**
 * What projections have learnt from the past, kept from one status to the next: to read the past and to learn from it is
 * most of what a status costs, and it changes only when a sprint ends or is reopened.
 */
import type { ProjectionHistory } from '../../forecast/project-velocity.ts';
import type { Transaction } from '../ports/store.ts';
import type { Team } from '../team/team.ts';
import { pastTraces, projectionHistory } from './team-history.ts';

/** About ten megabytes when each has as long a past as is looked back at. */
const MOST_KEPT = 200;

/** A version may come back once its rows are forgotten, a day later (`dropOldRecords`); by then nobody remembers it. */
const KEPT_MS = 12 * 3_600_000;

/** In the order of their last use. The version is part of the key, so what is out of date is not found again. */
const kept = new Map<string, { readonly history: ProjectionHistory; readonly sinceMs: number }>();

/**
 * What was learnt from the past at that share of the working days.
 *
 * @param elapsedShare from 0 to 1
 * @param version of the workspace's past, read before this in the same transaction; undefined: nothing is kept
 */
export async function rememberedHistory(
  tx: Transaction,
  team: Team,
  elapsedShare: number,
  version: string | undefined,
): Promise<ProjectionHistory> {
  const key = version && JSON.stringify([version, team.id, elapsedShare]);
  const known = key === undefined ? undefined : kept.get(key);
  const nowMs = performance.now();
  if (known && nowMs - known.sinceMs < KEPT_MS) return keepAsLatest(key as string, known);
  const { traces, isRecordedNow } = await pastTraces(tx, team, elapsedShare);
  const history = projectionHistory(traces, elapsedShare);
  // What this transaction has just recorded may yet be rolled back.
  return key === undefined || isRecordedNow ? history : keepAsLatest(key, { history, sinceMs: nowMs });
}

function keepAsLatest(
  key: string,
  known: { history: ProjectionHistory; sinceMs: number },
): ProjectionHistory {
  kept.delete(key);
  kept.set(key, known);
  const [oldest] = kept.keys();
  if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
  return known.history;
}
