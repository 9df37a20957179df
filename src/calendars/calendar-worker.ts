/** What `calendars.ts` starts: reads one calendar in a thread of its own. */
import { parentPort, workerData } from 'node:worker_threads';
import type { CalendarTask } from './calendars.ts';

const task = workerData as CalendarTask;
if ('text' in task) {
  const { readCalendarFile } = await import('./read-calendar-file.ts');
  parentPort?.postMessage(readCalendarFile(task.text, task.window));
} else {
  const { publicHolidays } = await import('./public-holidays.ts');
  parentPort?.postMessage(publicHolidays(task.typed, task.window));
}
