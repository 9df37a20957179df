/** Runs the use cases' work in transactions. */
import { setTimeout as pause } from 'node:timers/promises';
import type { Store } from '../app/ports/store.ts';
import type { SqlSession } from './queries/sql-session.ts';
import { transactionOver } from './queries/transaction.ts';
import type { JobSender } from './queue/job-sender.ts';
import { SQL_STATE, sqlErrorOf } from './sql-error.ts';

const MAX_ATTEMPTS = 5;

/** Postgres gave up one of several transactions that stood in each other's way; trying again is right. */
function isWorthTryingAgain(error: unknown): boolean {
  const sqlState = sqlErrorOf(error)?.sqlState;
  return sqlState === SQL_STATE.deadlockDetected || sqlState === SQL_STATE.serializationFailure;
}

/**
 * A store over a drizzle session. The work may run more than once, so it must have no effect other than
 * through its transaction.
 */
export function storeOver(session: SqlSession, sender: JobSender): Store {
  const { rememberEvent, updatePost } = transactionOver(session, sender);
  return {
    single: { rememberEvent, updatePost },

    async transaction(work) {
      for (let attempt = 1; ; attempt += 1) {
        try {
          return await session.transaction((tx) =>
            work(transactionOver(tx as unknown as SqlSession, sender)),
          );
        } catch (error) {
          if (attempt === MAX_ATTEMPTS || !isWorthTryingAgain(error)) throw error;
          // Not the same pause for all, lest the same transactions meet again.
          await pause(attempt * 10 * (1 + Math.random()));
        }
      }
    },
  };
}
