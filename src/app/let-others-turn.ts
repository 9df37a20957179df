/** For what holds the loop for tens of milliseconds, so that everybody else is answered before it goes on. */
import { setImmediate as endOfTurn } from 'node:timers/promises';

/**
 * Goes on after what has come in meanwhile was read; wanted at least once in about twenty milliseconds. One end of a turn is
 * not enough: from the reading of what came in, the loop goes straight to what waits for its end (Node.js guide, "The Node.js
 * Event Loop": poll, then check).
 */
export async function letOthersTurn(): Promise<void> {
  await endOfTurn();
  await endOfTurn();
}
