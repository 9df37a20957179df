/** The rows of the open data as the projection wants them. */
import type { LaterPart, PacedSprint } from '../../src/forecast/paced-velocity.ts';
import type { EndedSprint } from '../../src/forecast/project-velocity.ts';
import type { SprintSoFar } from '../../src/forecast/sprint-so-far.ts';
import type { SprintMoment } from '../open-data/read-open-data.ts';

/** Shares of the planned time at which sprints are projected, in percent. */
export const MOMENTS_PERCENT = [0, 30, 50, 80] as const;

/** Points committed at the moment: start + added − removed. */
export function committedPoints(row: SprintMoment): number {
  return row.startPoints + row.addedPoints - row.removedPoints;
}

/** Whether it holds any work at the moment. */
export function withCards(row: SprintMoment): boolean {
  return committedPoints(row) > 0;
}

/** What the file knows of a sprint at a moment. For what was worked off, the cards in work must stay. */
export function soFarOf(row: SprintMoment): SprintSoFar {
  return {
    cardPoints: committedPoints(row),
    finishedPoints: row.donePoints,
    underwayPoints: row.inProgressPoints,
  };
}

export function endedSprintOf(row: SprintMoment): EndedSprint {
  return { team: String(row.board), soFar: soFarOf(row), velocityPoints: row.deliveredPoints };
}

/** For the pace only what is finished is done: how far cards in work had come, the file doesn't say. */
export function pacedSprintOf(row: SprintMoment): PacedSprint {
  return {
    ...soFarOf(row),
    underwayPoints: 0,
    plannedOpenPoints: Math.max(0, row.startPoints - row.removedPoints - row.donePoints),
  };
}

/** What the file knows of the rest of a sprint. */
export function laterPartOf(row: SprintMoment): LaterPart {
  const cardPoints = committedPoints(row);
  return {
    workedPoints: Math.max(0, row.deliveredPoints - row.donePoints),
    evenPoints: row.deliveredPoints * (1 - row.elapsedPercent / 100),
    openPoints: Math.max(0, cardPoints - row.donePoints),
    hadTimeToSpare: row.deliveredPoints === cardPoints,
    isWatched: true,
  };
}

/** The rows of one moment, in file order. */
export function rowsAt(rows: readonly SprintMoment[], elapsedPercent: number): SprintMoment[] {
  return rows.filter((row) => row.elapsedPercent === elapsedPercent);
}

/**
 * Neighbouring rows of the same sprint: several boards of a project may share one. They run and end at the same time,
 * so none of them may be predicted from another's result.
 */
export function sharedSprints(rows: readonly SprintMoment[]): SprintMoment[][] {
  const groups: SprintMoment[][] = [];
  for (const row of rows) {
    const latest = groups.at(-1);
    if (latest?.[0]?.sprint === row.sprint) latest.push(row);
    else groups.push([row]);
  }
  return groups;
}

/**
 * Without the boards that show another's sprints: one is left out when more than half of its sprints are on larger boards that
 * stay. What remains are about as many boards as there are teams; which sprints a board and a larger one share, stays.
 */
export function distinctBoards(rows: readonly SprintMoment[]): SprintMoment[] {
  const sprintsOf = Map.groupBy(rowsAt(rows, 0), ({ board }) => board);
  const seen = new Set<number>();
  const staying = new Set<number>();
  for (const [board, starts] of [...sprintsOf].toSorted(([, a], [, b]) => b.length - a.length)) {
    const known = starts.filter(({ sprint }) => seen.has(sprint)).length;
    if (2 * known > starts.length) continue;
    staying.add(board);
    for (const { sprint } of starts) seen.add(sprint);
  }
  return rows.filter(({ board }) => staying.has(board));
}
