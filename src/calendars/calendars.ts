/**
 * Reads calendars. A file is read in a thread of its own, which is stopped when it takes too long or too much memory: the
 * bot goes on answering meanwhile, and no file can hold it up.
 */
import { Worker } from 'node:worker_threads';
import type {
  CalendarReading,
  Calendars,
  CalendarWindow,
  PublicHolidays,
  UnknownPlace,
  UnreadableCalendar,
} from '../app/ports/calendars.ts';

/** The largest files of calendar programs take a second or two. */
const READING_TIMEOUT_MS = 10_000;
const HOLIDAYS_TIMEOUT_MS = 30_000;
const READING_MEMORY_MB = 192;

export type CalendarTask = { readonly window: CalendarWindow } & (
  | { readonly text: string }
  | { readonly typed: string }
);

/** One after another, so that several large files don't need their memory at once. */
let before: Promise<unknown> = Promise.resolve();

export const calendars: Calendars = {
  read: (text, window) => inTurn(() => readInThread(text, window, READING_TIMEOUT_MS)),
  holidays: async (typed, window) => {
    const found = await inTurn(() =>
      inThread<PublicHolidays | UnknownPlace>({ typed, window }, HOLIDAYS_TIMEOUT_MS),
    );
    if (found === 'too much') throw new Error('public holidays took too long');
    return found;
  },
};

function inTurn<T>(work: () => Promise<T>): Promise<T> {
  const reading = before.then(work);
  before = reading.catch(() => undefined);
  return reading;
}

export function readInThread(
  text: string,
  window: CalendarWindow,
  timeoutMs: number,
): Promise<CalendarReading | UnreadableCalendar> {
  return inThread<CalendarReading | UnreadableCalendar>({ text, window }, timeoutMs);
}

function inThread<T>(task: CalendarTask, timeoutMs: number): Promise<T | 'too much'> {
  const { promise, resolve, reject } = Promise.withResolvers<T | 'too much'>();
  const worker = new Worker(new URL('./calendar-worker.ts', import.meta.url), {
    workerData: task,
    execArgv: [],
    resourceLimits: { maxOldGenerationSizeMb: READING_MEMORY_MB },
  });
  const timer = setTimeout(() => resolve('too much'), timeoutMs);
  worker.once('message', resolve);
  worker.once('error', (error: NodeJS.ErrnoException) =>
    error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? resolve('too much') : reject(error),
  );
  return promise.finally(async () => {
    clearTimeout(timer);
    await worker.terminate();
  });
}
