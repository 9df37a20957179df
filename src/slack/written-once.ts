/**
 * What a request writes is written once, however often and wherever it arrives: its key is recorded in the very
 * transaction that writes first. So a request whose process died before it had written anything is carried out when it
 * comes again, and one that had written is not. Also knows whether a request has written, so that people can be told
 * the truth when something fails afterwards.
 */
import { AsyncLocalStorage } from 'node:async_hooks';
import type { Clock, Store, Transaction } from '../app/ports.ts';

/** `uncertain`: the connection was lost while the database was told to keep it. */
export type Written = 'nothing' | 'uncertain' | 'kept';

interface Request {
  /** Undefined: nothing tells it from its repetition. */
  readonly key: string | undefined;
  written: Written;
}

const underWay = new AsyncLocalStorage<Request>();

/** The request has come before and what it wrote was kept. */
export class AlreadyWritten extends Error {
  override readonly name = 'AlreadyWritten';
  readonly code = 'already-written';
}

/** @param key what tells this request from every other; all stores made by `writtenOnce` heed it */
export function asOneRequest<T>(key: string | undefined, work: () => Promise<T>): Promise<T> {
  return underWay.run({ key, written: 'nothing' }, work);
}

/** What the request under way has written so far. */
export function writtenSoFar(): Written {
  return underWay.getStore()?.written ?? 'nothing';
}

/**
 * What changes nothing, or may be done twice without harm: a draft that is saved again is the same draft. Everything
 * that is not named here counts as writing.
 */
const NOT_GUARDED: ReadonlySet<string> = new Set<keyof Transaction>([
  'teamById',
  'teamByChannel',
  'teamInChannel',
  'teamsOf',
  'teamsOwnedBy',
  'lockTeam',
  'membersOf',
  'activeMemberIds',
  'sprintById',
  'sprintWithTeam',
  'lockSprintWithTeam',
  'sprintsOf',
  'openSprintsOf',
  'latestFinishedSprint',
  'latestResult',
  'closedSprintsOf',
  'baselineVelocityPoints',
  'pastSprintsOf',
  'sprintsWithoutPast',
  'pastTracesOf',
  'recordsOf',
  'recordsOfMany',
  'promptOf',
  'promptsOf',
  'promptByPost',
  'nextDueAt',
  'countUnsentPosts',
  'postById',
  'postAbout',
  'personalData',
  'teamsOfPerson',
  'lockTeamsOfPerson',
  'saveDraft',
  'draftOf',
  'rememberEvent',
]);

/** @param clock when a request's key was recorded, so that it can be forgotten */
export function writtenOnce(store: Store, clock: Clock): Store {
  return {
    single: store.single,

    async transaction(work) {
      const request = underWay.getStore();
      if (!request) return store.transaction(work);
      // On an object, for the work sets it and TypeScript would not see that.
      const progress: { stage: 'reading' | 'writing' | 'all written' } = { stage: 'reading' };
      const beforeWriting = async (tx: Transaction): Promise<void> => {
        if (progress.stage !== 'reading') return;
        progress.stage = 'writing';
        if (request.key === undefined || request.written === 'kept') return;
        if (!(await tx.rememberEvent(request.key, clock.now()))) throw new AlreadyWritten();
      };
      const run = async (tx: Transaction) => {
        const done = await work(guarded(tx, beforeWriting));
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
        if (progress.stage === 'all written' && request.written === 'nothing') request.written = 'uncertain';
        throw error;
      }
    },
  };
}

type Method = (...given: unknown[]) => Promise<unknown>;

/**
 * The same transaction, except that `first` goes before whatever writes. Nobody waits in between: when `first` fails, what
 * was written is rolled back with it.
 */
function guarded(tx: Transaction, first: (tx: Transaction) => Promise<void>): Transaction {
  const methods = Object.entries(tx as unknown as Record<string, Method>).map(([name, method]) => [
    name,
    NOT_GUARDED.has(name)
      ? method
      : async (...given: unknown[]) => {
          const before = first(tx);
          const writing = method(...given);
          await Promise.allSettled([before, writing]);
          // That it is a repetition says more than what its writing failed of.
          await before;
          return writing;
        },
  ]);
  return Object.fromEntries(methods) as Transaction;
}
