/** Runs the use cases' work in transactions. */
import { setTimeout as pause } from 'node:timers/promises';
import { sql } from 'drizzle-orm';
import type { Store } from '../app/ports/store.ts';
import { StoreTrouble, type StoreTroubleCode } from '../app/ports/store-trouble.ts';
import type { TroubleOf } from './database-trouble.ts';
import { BE_PATIENT, heldIn, Lines } from './held-locks.ts';
import { rememberAlone } from './queries/repeatable-queries.ts';
import type { SqlSession } from './queries/sql-session.ts';
import { readingOver, transactionOver } from './queries/transaction.ts';
import type { JobSender } from './queue/job-sender.ts';
import { SQL_STATE, sqlErrorOf } from './sql-error.ts';

const MAX_ATTEMPTS = 5;

/**
 * Postgres gave up one of several transactions that blocked each other; or there was no connection for another one, and
 * by now one of our own may be free.
 */
const WORTH_TRYING_AGAIN: readonly (string | undefined)[] = [
  SQL_STATE.deadlockDetected,
  SQL_STATE.serializationFailure,
  SQL_STATE.tooManyConnections,
];

interface StoreHost {
  /** The session of the moment: connections may be renewed. */
  readonly session: () => SqlSession;
  readonly sender: JobSender;
  readonly troubleOf: TroubleOf;
  /** Whether no other process can work on the database. */
  readonly isAlone: boolean;
  /** Hears of each transaction that the database took nothing of. */
  readonly onTrouble: (code: StoreTroubleCode) => void;
}

type Run = <T>(work: (session: SqlSession) => Promise<T>) => Promise<T>;

/**
 * A store over a drizzle session. The work may run more than once, so it must have no effect other than
 * through its transaction. What is no fault of the work is thrown as a `StoreTrouble`.
 */
export function storeOver({ session, sender, troubleOf, isAlone, onTrouble }: StoreHost): Store {
  const lines = new Lines();

  /** What only reads needs no transaction: under read committed each statement in it would see the latest as well. */
  const asItIs: Run = (work) => work(session());
  const inTransaction: Run = (work) => session().transaction((tx) => work(tx as unknown as SqlSession));

  async function carriedOut<T>(run: Run, work: (session: SqlSession) => Promise<T>): Promise<T> {
    try {
      return await attempted(run, work);
    } catch (error) {
      const what = heldIn(error);
      if (what === undefined) throw error;
      const patiently = async (tx: SqlSession): Promise<T> => {
        await tx.execute(sql.raw(BE_PATIENT));
        return work(tx);
      };
      return lines.stand(what, () => attempted(inTransaction, patiently));
    }
  }

  /** Again, when the database gave it up for another. */
  async function attempted<T>(run: Run, work: (session: SqlSession) => Promise<T>): Promise<T> {
    for (let attempt = 1; ; attempt += 1) {
      try {
        return await run(work);
      } catch (error) {
        const isWorthIt = WORTH_TRYING_AGAIN.includes(sqlErrorOf(error)?.sqlState);
        if (attempt === MAX_ATTEMPTS || !isWorthIt) throw named(error);
        // Not the same pause for all, or the same transactions would meet again.
        await pause(attempt * 10 * (1 + Math.random()));
      }
    }
  }

  function named(error: unknown): unknown {
    const code = troubleOf(error);
    if (code === undefined) return error;
    onTrouble(code);
    return new StoreTrouble(code, { isAlone, cause: error });
  }

  /** Runs it with a sender of its own, and once it is committed says so if it has queued anything. */
  async function sending<T>(run: (own: JobSender) => Promise<T>): Promise<T> {
    let hasSent = false;
    const own: JobSender = {
      ...sender,
      send(tx, jobs) {
        hasSent ||= jobs.length > 0;
        return sender.send(tx, jobs);
      },
    };
    const result = await run(own);
    if (hasSent) sender.committed();
    return result;
  }

  return {
    read: (work) => carriedOut(asItIs, (own) => work(readingOver(own))),
    transaction: (work) =>
      sending((own) => carriedOut(inTransaction, (tx) => work(transactionOver(tx, own)))),
    single: {
      rememberEvent: (eventId, at) => carriedOut(asItIs, (own) => rememberAlone(own, eventId, at)),
      updatePost: (...given) =>
        carriedOut(asItIs, (own) => transactionOver(own, sender).write.posts.update(...given)),
    },
  };
}
