/**
 * The true time of a run, which the calendar of the teams goes by, and the clock of each bot, which may be ahead of it or
 * behind. Time goes on at its usual pace; between the interesting moments of a day it leaps.
 */
import { renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

export class ChaosClock {
  readonly #files: readonly string[];
  readonly #skewsMs: number[];
  #aheadMs: number;

  /** @param folder for the files that the bots' clocks go by */
  constructor(folder: string, bots: number, startAt: Date) {
    this.#aheadMs = startAt.getTime() - Date.now();
    this.#files = Array.from({ length: bots }, (_, bot) => join(folder, `clock-${bot}`));
    this.#skewsMs = this.#files.map(() => 0);
    this.#write();
  }

  now(): Date {
    return new Date(Date.now() + this.#aheadMs);
  }

  /** Leaps ahead; never back. */
  leapTo(instant: Date): void {
    this.#aheadMs = Math.max(this.#aheadMs, instant.getTime() - Date.now());
    this.#write();
  }

  fileOf(bot: number): string {
    return this.#files[bot] as string;
  }

  /** @param bot undefined: all of them; @param skewMs how far its clock is ahead of the true time */
  skew(bot: number | undefined, skewMs: number): void {
    for (const at of this.#skewsMs.keys()) if (bot === undefined || bot === at) this.#skewsMs[at] = skewMs;
    this.#write();
  }

  #write(): void {
    for (const [bot, file] of this.#files.entries()) {
      // Replaces the other at once: a process that read half a number would think that it is another year.
      writeFileSync(`${file}.next`, String(Math.round(this.#aheadMs + (this.#skewsMs[bot] as number))));
      renameSync(`${file}.next`, file);
    }
  }
}
