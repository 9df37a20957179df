/** A store without a database, for tests of what is in front of it. */
import type { Reading, Store, Transaction } from '../../src/app/ports/store.ts';

/** What the test expects to be asked; anything else fails. */
interface Expected {
  readonly read?: Partial<Reading>;
  readonly rememberEvent?: Store['single']['rememberEvent'];
}

export function fakeStore({ read, rememberEvent }: Expected): Store {
  const tx = { read, events: { remember: rememberEvent } } as Transaction;
  return {
    read: (work) => work(tx.read),
    transaction: (work) => work(tx),
    single: { rememberEvent } as Store['single'],
  };
}

/** Remembers events as the database does. */
export function eventMemory(): Pick<Store['single'], 'rememberEvent'> {
  const seen = new Set<string>();
  return {
    async rememberEvent(eventId) {
      const isNew = !seen.has(eventId);
      seen.add(eventId);
      return isNew;
    },
  };
}
