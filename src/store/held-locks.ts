/**
 * What a request does when somebody else holds what it must have, such as its team. Waiting in the database takes up a connection,
 * and a team of many members would take up all of them while everybody else waits as well. So a request waits there for a
 * moment only; then it gives its connection back and stands in line here, where one after the other waits in the database.
 */
import { setTimeout as pause } from 'node:timers/promises';
import { Refusal } from '../app/refusal.ts';
import { SQL_STATE, sqlErrorOf } from './sql-error.ts';

/** For the connections of requests: who works holds a team for some milliseconds. */
export const IMPATIENT_LOCK_MS = 200;
/** Whoever is first in line waits in the database for so long, and everybody in line together no longer than twice as long. */
const PATIENT_LOCK_MS = 10_000;
/** People have given up by then. */
const LINE_LIMIT_MS = 20_000;
/** More can't be served in that time by somebody who is so slow. */
const MOST_IN_LINE = 30;

/** Another transaction holds it. */
class HeldByAnother extends Error {
  override readonly name = 'HeldByAnother';
  readonly code = 'held-by-another';
  /** One line each; the same for everybody who wants it. */
  readonly what: string;

  constructor(what: string, cause: unknown) {
    super('another transaction holds it', { cause });
    this.what = what;
  }
}

/** Takes a lock. @throws HeldByAnother when it can't be had in the connection's time */
export async function taking<T>(what: string, lock: () => Promise<T>): Promise<T> {
  try {
    return await lock();
  } catch (error) {
    throw isLockTimeout(error) ? new HeldByAnother(what, error) : error;
  }
}

function isLockTimeout(error: unknown): boolean {
  return sqlErrorOf(error)?.sqlState === SQL_STATE.lockNotAvailable;
}

/** What the failed transaction waited for in vain; undefined when it failed of something else. */
export function heldIn(error: unknown): string | undefined {
  if (error instanceof HeldByAnother) return error.what;
  // A row that another transaction writes just now, such as the key of the same request.
  return isLockTimeout(error) ? 'rows' : undefined;
}

/** For whoever is first in line; it holds for the transaction. */
export const BE_PATIENT = `set local lock_timeout = ${PATIENT_LOCK_MS}`;

export class Lines {
  /** Of each, those who are in it: they end when they leave it. */
  readonly #lines = new Map<string, Promise<void>[]>();

  /**
   * Does the work when everybody who came before and wants the same has left.
   *
   * @throws Refusal `held-up` when the line is too long or does not move, or the work does not get it either
   */
  async stand<T>(what: string, work: () => Promise<T>): Promise<T> {
    const line = this.#lines.get(what) ?? [];
    if (line.length >= MOST_IN_LINE) throw new Refusal('held-up', {});
    this.#lines.set(what, line);
    const turn = Promise.all(line).then(() => 'turn' as const);
    const { promise: gone, resolve: leave } = Promise.withResolvers<void>();
    line.push(gone);
    const limit = new AbortController();
    try {
      const waited = pause(LINE_LIMIT_MS, 'late' as const, { ref: false, signal: limit.signal });
      waited.catch(() => undefined);
      if ((await Promise.race([turn, waited])) === 'late') throw new Refusal('held-up', {});
      return await work();
    } catch (error) {
      throw heldIn(error) === undefined ? error : new Refusal('held-up', {});
    } finally {
      limit.abort();
      leave();
      line.splice(line.indexOf(gone), 1);
      if (line.length === 0) this.#lines.delete(what);
    }
  }
}
