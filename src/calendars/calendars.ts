/**
 * Reads calendars. A file is read in a thread of its own, which is stopped when it takes too long or too much memory: the
 * bot goes on answering meanwhile, and no file can hold it up.
 */
import { Worker } from 'node:worker_threads';
import type {
  CalendarReading,
  Calendars,
  CalendarWindow,
  UnreadableCalendar,
} from '../app/ports/calendars.ts';

/** The largest files of calendar programs take a second or two. */
const READING_TIMEOUT_MS = 10_000;
const READING_MEMORY_MB = 192;

/** One after another, so that several large files don't need their memory at once. */
let before: Promise<unknown> = Promise.resolve();

export const calendars: Calendars = {
  read: (text, window) => {
    const reading = before.then(() => readInThread(text, window, READING_TIMEOUT_MS));
    before = reading.catch(() => undefined);
    return reading;
  },
};

export function readInThread(
  text: string,
  window: CalendarWindow,
  timeoutMs: number,
): Promise<CalendarReading | UnreadableCalendar> {
  const { promise, resolve, reject } = Promise.withResolvers<CalendarReading | UnreadableCalendar>();
  const worker = new Worker(new URL('./calendar-worker.ts', import.meta.url), {
    workerData: { text, window },
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
