/**
 * Time for the queue's timers: goes on evenly whatever happens to the machine's clock. With that clock, one that is set
 * back by an hour would make the workers sleep for an hour. When a job is due the database decides by its own clock.
 */
import type { Clock } from 'pg-boss';

export const steadyClock: Clock = {
  now: () => performance.timeOrigin + performance.now(),
  setTimeout: (work, delayMs) => setTimeout(work, delayMs),
  clearTimeout: (timer) => clearTimeout(timer as NodeJS.Timeout),
  setInterval: (work, delayMs) => setInterval(work, delayMs),
  clearInterval: (timer) => clearInterval(timer as NodeJS.Timeout),
};
