/** Reads calendars, in a thread of its own each: no file can hold the bot up. */
import type { GivenFile } from '../app/csv/given-file.ts';
import type {
  CalendarReading,
  Calendars,
  CalendarWindow,
  PublicHolidays,
  UnknownPlace,
  UnreadableCalendar,
} from '../app/ports/calendars.ts';
import { type ThreadLimits, TooMuch, withThread } from '../threads/thread.ts';

const SCRIPT = new URL('./calendar-worker.ts', import.meta.url);
/** The largest files of calendar programs take a second or two. */
const READING: ThreadLimits = { timeoutMs: 10_000, memoryMb: 192 };
const HOLIDAYS: ThreadLimits = { timeoutMs: 30_000, memoryMb: 192 };

export type CalendarTask = { readonly window: CalendarWindow } & (
  | { readonly file: GivenFile }
  | { readonly typed: string }
);

/** One after another, so that several large files don't need their memory at once. */
let before: Promise<unknown> = Promise.resolve();

export const calendars: Calendars = {
  read: (file, window) => inTurn(() => readInThread(file, window, READING.timeoutMs)),
  holidays: (typed, window) =>
    inTurn(() => inThread<PublicHolidays | UnknownPlace>({ typed, window }, HOLIDAYS)),
};

function inTurn<T>(work: () => Promise<T>): Promise<T> {
  const reading = before.then(work);
  before = reading.catch(() => undefined);
  return reading;
}

export function readInThread(
  file: GivenFile,
  window: CalendarWindow,
  timeoutMs: number,
): Promise<CalendarReading | UnreadableCalendar> {
  return inThread<CalendarReading | UnreadableCalendar>({ file, window }, { ...READING, timeoutMs }).catch(
    (error: unknown) => {
      if (error instanceof TooMuch) return 'too much' as const;
      throw error;
    },
  );
}

function inThread<T>(task: CalendarTask, limits: ThreadLimits): Promise<T> {
  return withThread(SCRIPT, limits, (thread) => thread.ask<T>(task));
}
