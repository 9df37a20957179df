/**
 * Reduces sprints that ended longer ago than their team keeps details to their totals: cards, answers, changes, prompts
 * and posts go, results and what the statistics read stay. Any number of processes may do this at the same time, and
 * again; one batch a call, so that nothing else waits for long.
 */
import { pastSprints } from '../history/team-history.ts';
import { type Claiming, failAtOnce, type NotePassedOver, portions } from '../in-portions.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';

/** Sprints in one transaction: some thousands of rows. */
const SPRINTS_BATCH = 20;
/** Rows of each other kind. */
const ROWS_BATCH = 1_000;

/** One batch. @returns how much was done; 0: nothing is left to do now */
export async function reduceSprints(
  ports: Pick<AppDependencies, 'store' | 'clock'>,
  note: NotePassedOver = failAtOnce,
): Promise<number> {
  const next = portions(ports.store, SPRINTS_BATCH, (claiming) => reduceSome(ports, claiming), note);
  return next();
}

async function reduceSome(
  { store, clock }: Pick<AppDependencies, 'store' | 'clock'>,
  { portion, claimed }: Claiming,
): Promise<number> {
  return store.transaction(async (tx) => {
    const now = clock.now();
    const due = await tx.claim.sprintsToReduce(now, portion);
    claimed(due.map(({ sprintId }) => sprintId));
    const teams = new Map(due.map(({ team }) => [team.id, team]));
    // What the statistics need must be there before the cards that it is made of are gone.
    for (const team of teams.values()) await pastSprints(tx, team);
    for (const { sprintId } of due) await tx.write.retention.reduceSprint(sprintId, now);
    return due.length > 0 ? due.length : tx.write.retention.dropOldRecords(now, ROWS_BATCH);
  });
}
