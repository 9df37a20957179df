/** An open database of either kind. */
import type { Store } from '../app/ports/store.ts';
import type { Encryption } from './postgres/server-address.ts';
import type { SqlSession } from './queries/sql-session.ts';
import type { QueueHost } from './queue/delivery-queue.ts';

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
  /** Ends all connections. Stop the queue first. Calling it again does nothing. */
  close(): Promise<void>;
}
