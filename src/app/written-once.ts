/**
 * What a request writes is written once, however often and wherever it arrives: its key is recorded in the very
 * transaction that writes first. So a request whose process died before it had written anything is carried out when it
 * comes again, and one that had written is not. Also knows whether a request has written, so that people can hear
 * the truth when something fails afterwards.
 */
import { AsyncLocalStorage } from 'node:async_hooks';
import { setTimeout as pause } from 'node:timers/promises';
import type { Clock } from './ports/app-dependencies.ts';
import type { Store, Transaction, Writing } from './ports/store.ts';
import { writingBy } from './writing-by.ts';

/**
 * `unsettled`: the request wrote nothing, and it could not be found out whether its repetition does. `uncertain`: the
 * connection was lost during the commit.
 */
export type Written = 'nothing' | 'unsettled' | 'uncertain' | 'kept';

/** Somebody who has just seen an error waits no longer than this to hear what it means. */
const SETTLE_LIMIT_MS = 1_000;

interface Request {
  /** Undefined: it looks the same as its repetition. */
  readonly key: string | undefined;
  written: Written;
}

const underWay = new AsyncLocalStorage<Request>();

/** The request has come before and what it wrote was kept. */
export class AlreadyWritten extends Error {
  override readonly name = 'AlreadyWritten';
  readonly code = 'already-written';
}

/** The request has come before, and its person has read that nothing was recorded; that must stay true. */
export class GivenUp extends Error {
  override readonly name = 'GivenUp';
  readonly code = 'given-up';
}

/** @param key different for every other request; all stores made by `writtenOnce` use it */
export function asOneRequest<T>(key: string | undefined, work: () => Promise<T>): Promise<T> {
  return underWay.run({ key, written: 'nothing' }, work);
}

/** What the request under way has written so far. */
export function writtenSoFar(): Written {
  return underWay.getStore()?.written ?? 'nothing';
}

/** Whether something that it wrote is stored, or may be. */
export function mayHaveWritten(): boolean {
  const written = writtenSoFar();
  return written === 'kept' || written === 'uncertain';
}

/**
 * For a request that failed, before its person hears that nothing was recorded: this is only true when its repetition,
 * which another process may be carrying out, writes nothing either. When that can't be had in time, `writtenSoFar` is
 * `unsettled` afterwards.
 *
 * @param claim takes the request's key, so that nobody else can; false when somebody has it
 */
export async function settleWritten(claim: () => Promise<boolean>): Promise<void> {
  const request = underWay.getStore();
  if (request?.written !== 'nothing') return;
  const isOurs = await Promise.race([
    claim().catch(() => false),
    pause(SETTLE_LIMIT_MS, false, { ref: false }),
  ]);
  if (!isOurs) request.written = 'unsettled';
}

/** Records that the request of this key is not to be carried out. @returns false when it was, or when it is said already */
export async function giveUp(store: Store, key: string, at: Date): Promise<boolean> {
  return store.transaction(async (tx) => {
    const isOurs = await tx.events.remember(key, at);
    return isOurs && tx.events.remember(givenUp(key), at);
  });
}

async function wasGivenUp(store: Store, key: string | undefined): Promise<boolean> {
  return key !== undefined && store.read((read) => read.knowsEvent(givenUp(key)));
}

const givenUp = (key: string): string => `${key} given up`;

/** @param clock when a request's key was recorded, so that it can be forgotten */
export function writtenOnce(store: Store, clock: Clock): Store {
  return {
    ...store,

    async transaction(work) {
      const request = underWay.getStore();
      if (!request) return store.transaction(work);
      // On an object, for the work sets it and TypeScript would not see that.
      const progress: { stage: 'reading' | 'writing' | 'all written' } = { stage: 'reading' };
      const beforeWriting = async (tx: Transaction): Promise<void> => {
        if (progress.stage !== 'reading') return;
        progress.stage = 'writing';
        if (request.key === undefined || request.written === 'kept') return;
        if (!(await tx.events.remember(request.key, clock.now()))) throw new AlreadyWritten();
      };
      const run = async (tx: Transaction) => {
        const done = await work(writingBy(tx, (write) => eachWrite(write, () => beforeWriting(tx))));
        if (progress.stage === 'writing') progress.stage = 'all written';
        return done;
      };
      try {
        const result = await store.transaction((tx) => {
          // The work may run again after a conflict.
          progress.stage = 'reading';
          return run(tx);
        });
        if (progress.stage === 'all written') request.written = 'kept';
        return result;
      } catch (error) {
        if (error instanceof AlreadyWritten && (await wasGivenUp(store, request.key))) throw new GivenUp();
        if (progress.stage === 'all written' && request.written === 'nothing') request.written = 'uncertain';
        throw error;
      }
    },
  };
}

type Method = (...given: unknown[]) => Promise<unknown>;

/**
 * The same writing, except that `first` goes before each. Nobody waits in between: when `first` fails, what was written is
 * rolled back with it.
 */
function eachWrite(writing: Writing, first: () => Promise<void>): Writing {
  const withFirst =
    (method: Method): Method =>
    async (...given) => {
      const before = first();
      const written = method(...given);
      await Promise.allSettled([before, written]);
      // That it is a repetition says more than what its writing failed of.
      await before;
      return written;
    };
  return changed(writing, (port) => changed(port, withFirst));
}

/** The same, each value changed when it is asked for. */
function changed<Of extends object>(of: Of, change: (value: never) => unknown): Of {
  return new Proxy(of, { get: (target, name) => change(Reflect.get(target, name) as never) });
}
