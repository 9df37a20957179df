/**
 * PGlite works in this very thread, and is done before it gives a promise back. So a chain of statements, each awaited,
 * would hold the loop from its first to its last: nobody else is answered, however small each of them is.
 */
import { setImmediate as turn } from 'node:timers/promises';
import type { PGlite, Transaction } from '@electric-sql/pglite';

type Method = (...given: unknown[]) => unknown;

/** The same database, in which the loop turns after every statement, also where several were asked for at once. */
export function lettingOthersTurn<Open extends PGlite | Transaction>(open: Open): Open {
  // One is begun when the turn after the one before it has come: PGlite would begin it at once.
  let before: Promise<unknown> = Promise.resolve();
  return new Proxy(open, {
    get(target, name) {
      const value: unknown = Reflect.get(target, name, target);
      if (typeof value !== 'function') return value;
      const method = (value as Method).bind(target);
      if (name === 'transaction') {
        return (work: (tx: Transaction) => unknown, ...rest: unknown[]) =>
          method((tx: Transaction) => work(lettingOthersTurn(tx)), ...rest);
      }
      if (name !== 'query' && name !== 'exec') return method;
      return async (...given: unknown[]) => {
        const result = before.then(() => method(...given));
        before = result.then(
          () => turn(),
          () => turn(),
        );
        await before;
        return result;
      };
    },
  });
}
