/** A transaction whose writing goes through something else: a mark, a note, a count. */
import type { Transaction, Writing } from './ports/store.ts';

/**
 * The same transaction with other means of writing. They are made when something is written first: most transactions only
 * read, and to wrap a hundred methods for each of them took longer than a statement.
 */
export function writingBy(tx: Transaction, make: (write: Writing) => Writing): Transaction {
  let made: Writing | undefined;
  // What is spread would be made at once.
  return Object.create(tx, {
    write: {
      enumerable: true,
      get: () => {
        made ??= make(tx.write);
        return made;
      },
    },
  }) as Transaction;
}

type Changes = { readonly [Port in keyof Writing]?: (port: Writing[Port]) => Writing[Port] };

/** The same writing but for some ports, each changed when it is asked for: most transactions ask for two or three. */
export function withPorts(write: Writing, changes: Changes): Writing {
  return new Proxy(write, {
    get(target, name) {
      const port: unknown = Reflect.get(target, name);
      const change = changes[name as keyof Writing] as ((given: unknown) => unknown) | undefined;
      return change ? change(port) : port;
    },
  });
}
