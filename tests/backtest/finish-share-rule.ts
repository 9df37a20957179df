/**
 * The rule of thumb that a projection has to beat: the team finishes the share of its open work that it usually does.
 */
import { median } from '../../src/forecast/quantile.ts';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { committedPoints } from './moments.ts';

/** So many of a team's latest sprints say what is usual. */
const LATEST_SPRINTS = 12;
/** With fewer of its own a team borrows the usual share of all boards. */
const LEAST_SPRINTS = 3;

/** What the rule has learnt: the finish shares of the sprints so far, oldest first, of all boards and of each. */
export class FinishShareRule {
  readonly #all: number[] = [];
  readonly #ofBoard = new Map<number, number[]>();

  /**
   * Points finished by the end, as the rule has it.
   *
   * Formula: finished + open × median finish share, of the board's latest 12 sprints at the same moment; with fewer
   * than three, of all boards' sprints so far; with none at all, 1.
   */
  guessPoints(row: SprintMoment): number {
    const own = (this.#ofBoard.get(row.board) ?? []).slice(-LATEST_SPRINTS);
    const known = own.length >= LEAST_SPRINTS ? own : this.#all;
    const share = known.length === 0 ? 1 : (median(known) as number);
    return row.donePoints + openPoints(row) * share;
  }

  /** A finish share is (delivered − finished) ÷ open. A sprint with nothing open has none. */
  learn(row: SprintMoment): void {
    if (openPoints(row) === 0) return;
    const share = (row.deliveredPoints - row.donePoints) / openPoints(row);
    this.#all.push(share);
    this.#ofBoard.set(row.board, [...(this.#ofBoard.get(row.board) ?? []), share]);
  }
}

function openPoints(row: SprintMoment): number {
  return Math.max(0, committedPoints(row) - row.donePoints);
}
