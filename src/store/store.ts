/** Runs the use cases' work in transactions. */
import { setTimeout as pause } from 'node:timers/promises';
import { sql } from 'drizzle-orm';
import type { Store, Transaction } from '../app/ports/store.ts';
import { StoreTrouble, type StoreTroubleCode } from '../app/ports/store-trouble.ts';
import type { TroubleOf } from './database-trouble.ts';
import { BE_PATIENT, heldIn, Lines } from './held-locks.ts';
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

export interface StoreHost {
  /** The session of the moment: connections may be renewed. */
  readonly session: () => SqlSession;
  readonly sender: JobSender;
  readonly troubleOf: TroubleOf;
  /** Whether no other process can work on the database. */
  readonly isAlone: boolean;
  /** Hears of each transaction that the database took nothing of. */
  readonly onTrouble: (code: StoreTroubleCode) => void;
}

/**
 * A store over a drizzle session. The work may run more than once, so it must have no effect other than
 * through its transaction. What is no fault of the work is thrown as a `StoreTrouble`.
 */
export function storeOver({ session, sender, troubleOf, isAlone, onTrouble }: StoreHost): Store {
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
        return await session().transaction((tx) => work(tx as unknown as SqlSession));
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

  let outside: { readonly of: SqlSession; readonly tx: Transaction } | undefined;
  async function alone<T>(work: (tx: Transaction) => Promise<T>): Promise<T> {
    const of = session();
    if (outside?.of !== of) outside = { of, tx: transactionOver(of, sender) };
    try {
      return await work(outside.tx);
    } catch (error) {
      throw named(error);
    }
  }

  return {
    read: (work) => inTransaction((tx) => work(readingOver(tx))),
    transaction: (work) => sending((own) => inTransaction((tx) => work(transactionOver(tx, own)))),
    single: {
      rememberEvent: (eventId, at) =>
        alone(({ events }) => events.remember(eventId, at)).catch((error: unknown) => {
          if (heldIn(error) === undefined) throw error;
          return inTransaction((tx) => transactionOver(tx, sender).events.remember(eventId, at));
        }),
      updatePost: (...given) => alone(({ write }) => write.posts.update(...given)),
      homeOpenedBy: (...given) => alone(({ read }) => read.homeOpenedBy(...given)),
    },
  };
}
