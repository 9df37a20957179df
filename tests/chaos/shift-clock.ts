/**
 * Loaded into a bot's process before anything else (`node --import`): its clock goes after a file, and its tick comes
 * every second. So the bot itself needs no switch for it. The file holds how many milliseconds the clock is ahead of
 * the machine's.
 */
import { readFileSync } from 'node:fs';
import cron from 'node-cron';

const FILE = process.env.CHAOS_CLOCK_FILE ?? '';
/** How long what was read from the file is believed, by the clock that never jumps. */
const BELIEVED_MS = 20;
const TICK_MS = 1_000;

const RealDate = Date;
let aheadMs = 0;
let readAtMs = Number.NEGATIVE_INFINITY;

function nowMs(): number {
  if (performance.now() - readAtMs > BELIEVED_MS) {
    readAtMs = performance.now();
    aheadMs = Number(readFileSync(FILE, 'utf8'));
  }
  return RealDate.now() + aheadMs;
}

class ShiftedDate extends RealDate {
  constructor(...given: unknown[]) {
    if (given.length === 0) super(nowMs());
    else super(...(given as [number]));
  }

  static override now(): number {
    return nowMs();
  }
}
globalThis.Date = ShiftedDate as DateConstructor;

/** The bot's tick is due once a minute; here a calendar day takes seconds. */
const { schedule } = cron;
cron.schedule = (...given) => {
  const task = schedule(...given);
  setInterval(() => task.getStatus() !== 'destroyed' && task.execute(), TICK_MS).unref();
  return task;
};
