/** A clock that runs only when it is moved; it never goes back. */
import type { Clock } from '../app/ports/app-dependencies.ts';

export class SimulatedClock implements Clock {
  #now: Date;

  constructor(now: Date) {
    this.#now = now;
  }

  now(): Date {
    return new Date(this.#now);
  }

  /** Moves on to the instant; an earlier one leaves the clock where it is. */
  moveTo(instant: Date): void {
    if (instant > this.#now) this.#now = new Date(instant);
  }
}
