/** Spreads work that is due daily over the clock's ticks, so that nothing else waits for it long. Knows not what it does. */

/** A tick that does more would hold up the prompts of its minute. */
const BATCHES_A_TICK = 10;

/**
 * The day is UTC's, and is remembered by this process only: after a start, and beside other processes, the work is done
 * again, which it must take.
 *
 * @param batch does a part and gives back how much; 0: nothing is left today
 * @returns what a tick does; it gives back how much was done
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
