/** The sprints that a team could have asked about before they began, with what was known of those before. */
import type { SprintEvidence } from '../../src/forecast/commitment-evidence.ts';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { committedPoints, rowsAt, sharedSprints } from './moments.ts';

/** The data says nothing of who was there: every sprint of a board counts as the same working time. */
export const NO_TIME = { workingDays: undefined, memberDays: undefined, memberDaysWhenAllThere: undefined };
const LEAST_BEFORE = 3;

export interface PlannedSprint {
  /** As it was at the start. */
  readonly row: SprintMoment;
  /** What was added by 80% of its time. */
  readonly pulledInPoints: number;
  /** Sprints of the same board with a commitment, at least three. */
  readonly before: readonly SprintEvidence[];
}

/**
 * The sprints with a commitment, in file order; of boards that share one, none knows how it ended.
 *
 * @param finishedOf how much of the commitment was finished, which the data doesn't say
 */
export function plannedSprints(
  rows: readonly SprintMoment[],
  finishedOf: (row: SprintMoment) => number | undefined,
): PlannedSprint[] {
  const addedAtLast = new Map(rowsAt(rows, 80).map((row) => [keyOf(row), row.addedPoints]));
  const past = new Map<number, SprintEvidence[]>();
  return sharedSprints(rowsAt(rows, 0)).flatMap((together) => {
    const asked = together.map((row) => ({
      row,
      pulledInPoints: Math.max(0, (addedAtLast.get(keyOf(row)) ?? row.addedPoints) - row.addedPoints),
      before: (past.get(row.board) ?? []).filter(({ commitmentPoints }) => commitmentPoints > 0),
    }));
    for (const { row, pulledInPoints } of asked) {
      const ended = { ...evidenceOf(row), pulledInPoints, committedFinishedPoints: finishedOf(row) };
      past.set(row.board, [...(past.get(row.board) ?? []), ended]);
    }
    return asked.filter(({ row, before }) => committedPoints(row) > 0 && before.length >= LEAST_BEFORE);
  });
}

function evidenceOf(row: SprintMoment) {
  return {
    commitmentPoints: committedPoints(row),
    surprisePoints: undefined,
    velocityPoints: row.deliveredPoints,
    workingDays: undefined,
    memberDays: undefined,
  };
}

/** Which sprint of which board it is. */
export function keyOf({ board, sprint }: SprintMoment): string {
  return `${board} ${sprint}`;
}
