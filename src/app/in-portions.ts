/**
 * Does what is due in portions, so that one row which makes the work fail holds up nobody else: whoever is claimed together
 * with it is claimed again without it. Must not take a database that fails for such a row.
 */
import { errorChain } from '../error-chain.ts';
import type { Portion } from './ports/locks.ts';
import type { Store } from './ports/store.ts';
import { StoreTrouble } from './ports/store-trouble.ts';

/**
 * Hears of what was passed over, by the id of a sprint, a team, an import or a workspace, never of a person. It comes up again
 * the next time.
 */
export type NotePassedOver = (id: string, error: unknown) => void;

/** For work that nobody watches: it fails like any other. */
export const failAtOnce: NotePassedOver = (_, error) => {
  throw error;
};

/** A portion, and whom the work must tell at once what it has claimed. */
export interface Claiming {
  readonly portion: Portion;
  readonly claimed: (ids: readonly string[]) => void;
}

/**
 * @param work does one portion in a transaction of its own and returns how much that was; 0: nothing is left
 * @returns what does the next portion, and returns how much was done
 * @throws what fails before anything is claimed, and whatever the database can't do for anybody
 */
export function portions(
  store: Pick<Store, 'read'>,
  mostAtOnce: number,
  work: (claiming: Claiming) => Promise<number>,
  note: NotePassedOver,
): () => Promise<number> {
  const except: string[] = [];
  let limit = mostAtOnce;
  return async () => {
    for (;;) {
      let ids: readonly string[] = [];
      const claimed = (found: readonly string[]) => {
        ids = found;
      };
      try {
        const done = await work({ portion: { limit, except }, claimed });
        limit = Math.min(mostAtOnce, limit * 2);
        return done;
      } catch (error) {
        const [first, ...others] = ids;
        if (first === undefined || (await ailsEverybody(store, error))) throw error;
        limit = Math.max(1, Math.floor(ids.length / 2));
        if (others.length > 0) continue;
        note(first, error);
        except.push(first);
      }
    }
  };
}

/** What is done one by one, each in transactions of its own. @returns how many succeeded */
export async function oneByOne<Item>(
  store: Pick<Store, 'read'>,
  items: readonly Item[],
  {
    work,
    idOf,
    note,
  }: {
    readonly work: (item: Item) => Promise<unknown>;
    readonly idOf: (item: Item) => string;
    readonly note: NotePassedOver;
  },
): Promise<number> {
  let sum = 0;
  for (const item of items) {
    try {
      await work(item);
      sum += 1;
    } catch (error) {
      if (await ailsEverybody(store, error)) throw error;
      note(idOf(item), error);
    }
  }
  return sum;
}

/** Whether the database takes nothing in, or doesn't even answer. */
async function ailsEverybody(store: Pick<Store, 'read'>, error: unknown): Promise<boolean> {
  if (errorChain(error).some((at) => at instanceof StoreTrouble)) return true;
  return store
    .read((read) => read.knowsEvent(''))
    .then(
      () => false,
      () => true,
    );
}
