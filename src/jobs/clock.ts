/**
 * The clock: once a minute, and once at start, does what is due. It keeps no schedule of its own: what is due is read from
 * the database.
 */
import cron from 'node-cron';
import { withNewReference } from '../reference.ts';

export interface JobLog {
  info(details: Record<string, unknown>, message: string): void;
  error(details: Record<string, unknown>, message: string): void;
}

/** Counts ticks. */
interface TickMeter {
  ticked(isGood: boolean, atSeconds: number): void;
}

export interface RunningClock {
  /** Ticks no more, and waits for the tick under way. */
  stop(): Promise<void>;
}

const EVERY_MINUTE = '* * * * *';
const MINUTE_MS = 60_000;
/** How often the guard looks whether the wall clock was set, and from how big a step on it says so. */
const GUARD_MS = 1_000;

/**
 * @param tick does all that is due and returns how many sprints were served. A tick that fails is logged, and the next one
 *   makes up for it; ticks never overlap.
 */
export function startClock(tick: () => Promise<number>, log: JobLog, meter?: TickMeter): RunningClock {
  let underWay: Promise<void> | undefined;
  const run = (): void => {
    underWay ??= withNewReference(() =>
      tick()
        .then((served) => {
          if (served > 0) log.info({ served }, 'sprints served');
          meter?.ticked(true, Date.now() / 1_000);
        })
        .catch((err: unknown) => {
          log.error({ err }, 'tick failed; the next one tries again');
          meter?.ticked(false, Date.now() / 1_000);
        })
        .finally(() => {
          underWay = undefined;
        }),
    );
  };
  const task = cron.schedule(EVERY_MINUTE, run, {
    // No minute is skipped or repeated there.
    timezone: 'UTC',
    // A tick that the machine had no time for comes late rather than never.
    missedExecutionTolerance: MINUTE_MS,
    suppressMissedWarning: true,
  });
  const guard = onWallClockSet((byMs) => {
    log.info({ byMs: Math.round(byMs) }, 'the wall clock was set; ticks start again from now');
    task.stop();
    task.start();
  });
  run();
  return {
    async stop() {
      clearInterval(guard);
      await task.destroy();
      await underWay;
    },
  };
}

/**
 * Compares the wall clock with the one that never jumps. Without this, node-cron would wait for the instant it has computed:
 * after the clock was set back by an hour, no tick for an hour.
 */
function onWallClockSet(restart: (byMs: number) => void): NodeJS.Timeout {
  const aheadMs = (): number => Date.now() - performance.now();
  let beforeMs = aheadMs();
  return setInterval(() => {
    const byMs = aheadMs() - beforeMs;
    beforeMs += byMs;
    if (Math.abs(byMs) >= GUARD_MS) restart(byMs);
  }, GUARD_MS);
}

/** A tick that does more would delay the prompts of its minute. */
const BATCHES_A_TICK = 10;

/**
 * Spreads daily work over the ticks. The day is UTC's, and only this process remembers it: after a start, and in other
 * processes, the work is done again, so it must allow for that.
 *
 * @param batch does a part and returns how much; 0: nothing is left today
 * @returns what a tick does; it returns how much was done
 */
export function onceADay(now: () => Date, batch: () => Promise<number>): () => Promise<number> {
  let doneOn: string | undefined;
  return async () => {
    const today = now().toISOString().slice(0, 10);
    let sum = 0;
    for (let i = 0; i < BATCHES_A_TICK && doneOn !== today; i += 1) {
      const done = await batch();
      if (done === 0) doneOn = today;
      sum += done;
    }
    return sum;
  };
}
