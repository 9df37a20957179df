/**
 * For what hardly ever writes, such as an answer that once in a while has to record first what it is about. It is read without
 * a transaction, which spares two ways to the database.
 */
import type { Store, Transaction } from './ports/store.ts';

class MustWrite extends Error {
  override readonly name = 'MustWrite';
}

/** Runs the work without a transaction; should it want more than to read, it runs again, in one. */
export async function readOrWrite<T>(store: Store, work: (tx: Transaction) => Promise<T>): Promise<T> {
  try {
    return await store.read((read) =>
      work(
        new Proxy({ read } as Transaction, {
          get(target, name) {
            if (name === 'read') return target.read;
            throw new MustWrite();
          },
        }),
      ),
    );
  } catch (error) {
    if (!(error instanceof MustWrite)) throw error;
    return store.transaction(work);
  }
}
