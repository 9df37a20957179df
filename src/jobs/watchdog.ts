/**
 * Ends this process when its main thread hangs, so that whoever started it starts it again: the embedded database runs on
 * that thread, and some of its failures are loops without an end, in which no signal and no health check is heard. A
 * thread of its own watches. The service manager's own watchdog would need messages over a kind of socket that Node.js
 * lacks, and containers have none.
 */
import { Worker } from 'node:worker_threads';

/** Nothing that the bot does holds the thread for nearly as long. */
const LIMIT_LOOKS = 60;
const LOOK_EVERY_MS = 1_000;

interface WatchdogLimits {
  /**
   * So many looks without a sign of life. Looks are counted, not time: after a process was frozen or a machine slept,
   * both threads go on together.
   */
  readonly limitLooks: number;
  readonly lookEveryMs: number;
}

/** @returns what ends the watch */
export function startWatchdog(
  limits: WatchdogLimits = { limitLooks: LIMIT_LOOKS, lookEveryMs: LOOK_EVERY_MS },
): () => Promise<void> {
  const beats = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  const beating = setInterval(() => Atomics.add(beats, 0, 1), limits.lookEveryMs / 2);
  beating.unref();
  const worker = new Worker(new URL('./watchdog-worker.js', import.meta.url), {
    workerData: { beats, ...limits },
    execArgv: [],
    resourceLimits: { maxOldGenerationSizeMb: 16, maxYoungGenerationSizeMb: 1 },
  });
  worker.unref();
  // Without a watchdog the bot works as well.
  worker.on('error', (error) => process.emitWarning(error));
  return async () => {
    clearInterval(beating);
    await worker.terminate();
  };
}
