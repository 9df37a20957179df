/**
 * The clock: once a minute, and once at start, does what is due. It keeps no schedule of its own; what is
 * due stands in the database.
 */
import { withNewReference } from '../reference.ts';

export interface JobLog {
  info(details: Record<string, unknown>, message: string): void;
  error(details: Record<string, unknown>, message: string): void;
}

const MINUTE_MS = 60_000;

/** Who counts ticks. */
export interface TickMeter {
  ticked(isGood: boolean, atSeconds: number): void;
}

export interface RunningClock {
  /** Ticks no more, and waits for the tick under way. */
  stop(): Promise<void>;
}

/**
 * @param tick does all that is due and gives back how many sprints were served. A tick that fails is
 *   logged and made good by the next one; ticks never overlap.
 */
export function startClock(tick: () => Promise<number>, log: JobLog, meter?: TickMeter): RunningClock {
  let underWay: Promise<void> | undefined;
  const run = (): Promise<void> => {
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
    return underWay;
  };
  // Anew after every tick, and never for longer than a minute: an appointment on a clock that is set back would be
  // as far off as the clock was.
  let next: NodeJS.Timeout;
  const waitForNextMinute = (): void => {
    const intoMinuteMs = Date.now() % MINUTE_MS;
    next = setTimeout(() => {
      waitForNextMinute();
      void run();
    }, MINUTE_MS - intoMinuteMs);
  };
  waitForNextMinute();
  void run();
  return {
    async stop() {
      clearTimeout(next);
      await underWay;
    },
  };
}
