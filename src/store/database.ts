/** An open database of either kind. */
import type { Store } from '../app/ports/store.ts';
import type { StoreTroubleCode } from '../app/ports/store-trouble.ts';
import type { Encryption } from './postgres/server-address.ts';
import type { SqlSession } from './queries/sql-session.ts';
import type { QueueHost } from './queue/delivery-queue.ts';

/** What the database says of itself when it answers. */
export interface DatabaseState {
  /** Why it takes nothing in; undefined: it does. */
  readonly trouble: StoreTroubleCode | undefined;
  /** By how much this process's clock is ahead of the database's; 0 where they are one. */
  readonly clockAheadMs: number;
}

export interface Database extends QueueHost {
  readonly kind: 'postgres' | 'pglite';
  /** Of the way to the server; undefined where there is none. */
  readonly encryption: Encryption | undefined;
  readonly store: Store;
  /** The same, for work that nobody waits for: it never takes a connection from somebody who does. */
  readonly bulkStore: Store;
  /** For tests and maintenance; use cases go through `store`. */
  readonly session: SqlSession;
  /** Resolves when the database answers; rejects when it does not. */
  ping(): Promise<void>;
  /**
   * Looks without leaving anything behind. Rejects when the database does not answer.
   *
   * @param how `reading` is told of a full disk only by what has tried to write since the last look; `writing` tries
   */
  state(how: 'reading' | 'writing'): Promise<DatabaseState>;
  /** Ends all connections. Stop the queue first. Calling it again does nothing. */
  close(): Promise<void>;
}
