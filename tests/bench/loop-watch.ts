/**
 * Loaded into a bot's process before it starts (`--import`): tells the bench that started it how long its loop was held.
 * By the clock, which tells a busy machine as well, and by the processor time that the loop's own thread took between two turns.
 */
import { monitorEventLoopDelay } from 'node:perf_hooks';

export interface LoopHeld {
  /** The longest that a turn of the loop came late. */
  readonly delayMs: number;
  /** The most processor time of the thread between two turns. */
  readonly processorMs: number;
}

const RESOLUTION_MS = 1;
const NS_PER_MS = 1e6;
const US_PER_MS = 1e3;

const delays = monitorEventLoopDelay({ resolution: RESOLUTION_MS });
let [spentMs, mostMs] = [threadMs(), 0];

function threadMs(): number {
  const { user, system } = process.threadCpuUsage();
  return (user + system) / US_PER_MS;
}

function look(): void {
  const nowMs = threadMs();
  mostMs = Math.max(mostMs, nowMs - spentMs);
  spentMs = nowMs;
}

// What starts a bot holds the loop for as long as it likes.
delays.enable();
setInterval(look, RESOLUTION_MS).unref();
process.on('message', (asked) => {
  if (asked !== 'loop') return;
  look();
  const held: LoopHeld = { delayMs: delays.max / NS_PER_MS - RESOLUTION_MS, processorMs: mostMs };
  delays.reset();
  mostMs = 0;
  process.send?.(held);
});
process.channel?.unref();
