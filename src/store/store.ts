/** Runs the use cases' work in transactions. */
import { setTimeout as pause } from 'node:timers/promises';
import { sql } from 'drizzle-orm';
import type { Store } from '../app/ports/store.ts';
import { BE_PATIENT, heldIn, Lines } from './held-locks.ts';
import type { SqlSession } from './queries/sql-session.ts';
import { readingOver, transactionOver } from './queries/transaction.ts';
import type { JobSender } from './queue/job-sender.ts';
import { SQL_STATE, sqlErrorOf } from './sql-error.ts';

const MAX_ATTEMPTS = 5;

/** Postgres gave up one of several transactions that blocked each other; trying again is right. */
function isWorthTryingAgain(error: unknown): boolean {
  const sqlState = sqlErrorOf(error)?.sqlState;
  return sqlState === SQL_STATE.deadlockDetected || sqlState === SQL_STATE.serializationFailure;
}

/**
 * A store over a drizzle session. The work may run more than once, so it must have no effect other than
 * through its transaction.
 */
export function storeOver(session: SqlSession, sender: JobSender): Store {
  const lines = new Lines();

  async function inTransaction<T>(work: (tx: SqlSession) => Promise<T>): Promise<T> {
    try {
      return await attempted(work);
    } catch (error) {
      const what = heldIn(error);
      if (what === undefined) throw error;
      const patiently = async (tx: SqlSession): Promise<T> => {
        await tx.execute(sql.raw(BE_PATIENT));
        return work(tx);
      };
      return lines.stand(what, () => attempted(patiently));
    }
  }

  /** Again, when the database gave it up for another. */
  async function attempted<T>(work: (tx: SqlSession) => Promise<T>): Promise<T> {
    for (let attempt = 1; ; attempt += 1) {
      try {
        return await session.transaction((tx) => work(tx as unknown as SqlSession));
      } catch (error) {
        if (attempt === MAX_ATTEMPTS || !isWorthTryingAgain(error)) throw error;
        // Not the same pause for all, or the same transactions would meet again.
        await pause(attempt * 10 * (1 + Math.random()));
      }
    }
  }

  const { events, read, write } = transactionOver(session, sender);
  return {
    read: (work) => inTransaction((tx) => work(readingOver(tx))),
    transaction: (work) => inTransaction((tx) => work(transactionOver(tx, sender))),
    single: {
      rememberEvent: (eventId, at) =>
        events.remember(eventId, at).catch((error: unknown) => {
          if (heldIn(error) === undefined) throw error;
          return inTransaction((tx) => transactionOver(tx, sender).events.remember(eventId, at));
        }),
      updatePost: write.posts.update,
      postById: read.postById,
      homeOpenedBy: read.homeOpenedBy,
    },
  };
}
