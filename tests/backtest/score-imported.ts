/**
 * How well the projection does where a team's past was imported, so that only its sprints' starts and ends are known: each
 * board walks alone.
 */
import { chanceOfAtLeast } from '../../src/forecast/load-signal.ts';
import {
  type EndedSprint,
  NO_HISTORY,
  projectVelocity,
  withEndedSprints,
} from '../../src/forecast/project-velocity.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { committedPoints, MOMENTS_PERCENT, rowsAt, soFarOf, withCards } from './moments.ts';
import { meanOf } from './walk-forward.ts';

/** How many sprints the team has imported, first and last. */
const IMPORTED = { from: 6, to: 24 };

/** All boards of a file at one moment, sprints with cards that had not reached the floor of the kept share. */
export interface ImportedScore {
  readonly elapsedPercent: number;
  readonly scored: number;
  readonly meanAbsoluteError: number;
  /** Of the chance to keep; 0 is perfect. */
  readonly brier: number;
}

interface Case {
  readonly row: SprintMoment;
  readonly guessPoints: number;
  readonly told: number;
  readonly isKept: boolean;
}

export function scoreImported(rows: readonly SprintMoment[]): ImportedScore[] {
  const starts = new Map(rowsAt(rows, 0).map((row) => [sprintOf(row), row]));
  return MOMENTS_PERCENT.flatMap((elapsedPercent) => {
    const there = rowsAt(rows, elapsedPercent).filter(withCards);
    const boards = [...Map.groupBy(there, ({ board }) => board).values()];
    const asImported = (row: SprintMoment): EndedSprint => ({
      team: String(row.board),
      soFar: {
        cardPoints: committedPoints(starts.get(sprintOf(row)) ?? row),
        elapsedShare: elapsedPercent / 100,
      },
      velocityPoints: row.deliveredPoints,
    });
    const cases = boards
      .flatMap((own) => casesOf(own, asImported))
      .filter(({ row }) => row.donePoints < floorPoints(row));
    if (cases.length === 0) return [];
    const meanAbsoluteError = meanOf(cases, ({ row, guessPoints }) =>
      Math.abs(guessPoints - row.deliveredPoints),
    );
    const brier = meanOf(cases, ({ told, isKept }) => (told - (isKept ? 1 : 0)) ** 2);
    return [{ elapsedPercent, scored: cases.length, meanAbsoluteError, brier }];
  });
}

function casesOf(own: readonly SprintMoment[], asImported: (row: SprintMoment) => EndedSprint): Case[] {
  return own.slice(IMPORTED.from, IMPORTED.to + 1).map((row, i) => {
    const past = own.slice(0, IMPORTED.from + i).map(asImported);
    const { distribution, medianPoints } = projectVelocity(
      withEndedSprints(NO_HISTORY, past),
      String(row.board),
      soFarOf(row),
    );
    const floor = floorPoints(row);
    const told = chanceOfAtLeast(distribution, floor);
    return { row, guessPoints: medianPoints, told, isKept: row.deliveredPoints >= floor };
  });
}

function floorPoints(row: SprintMoment): number {
  return DEFAULT_THRESHOLDS.keptShareAtLeast * committedPoints(row);
}

function sprintOf({ board, sprint }: SprintMoment): string {
  return `${board}/${sprint}`;
}
