/** What `calendars.ts` starts: reads one calendar file in a thread of its own. */
import { parentPort, workerData } from 'node:worker_threads';
import type { CalendarWindow } from '../app/ports/calendars.ts';
import { readCalendarFile } from './read-calendar-file.ts';

const { text, window } = workerData as { readonly text: string; readonly window: CalendarWindow };
parentPort?.postMessage(readCalendarFile(text, window));
