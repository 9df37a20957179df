/** What `calendars.ts` starts: reads one calendar in a thread of its own. */
import { decoded, NoText } from '../app/csv/given-file.ts';
import { answering } from '../threads/answering.ts';
import type { CalendarTask } from './calendars.ts';

answering(async (task: CalendarTask) => {
  if ('typed' in task) {
    const { publicHolidays } = await import('./public-holidays.ts');
    return publicHolidays(task.typed, task.window);
  }
  const { readCalendarFile } = await import('./read-calendar-file.ts');
  try {
    return readCalendarFile(decoded(task.file).text, task.window);
  } catch (error) {
    if (error instanceof NoText) return 'not text';
    throw error;
  }
});
