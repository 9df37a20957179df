/** A store without a database, for tests of what stands in front of it. */
import type { Store, Transaction } from '../../src/app/ports/store.ts';

/** @param queries the only ones that the test expects; any other fails */
export function fakeStore(queries: Partial<Transaction>): Store {
  const tx = queries as Transaction;
  return { transaction: (work) => work(tx), single: tx };
}

/** Remembers events as the database does. */
export function eventMemory(): Pick<Transaction, 'rememberEvent'> {
  const seen = new Set<string>();
  return {
    async rememberEvent(eventId) {
      const isNew = !seen.has(eventId);
      seen.add(eventId);
      return isNew;
    },
  };
}
