/**
 * How well the projection does where a team's past was imported, so that only its sprints' starts and ends are known: each
 * board walks alone.
 */
import { RECENT_SPRINTS } from '../../src/forecast/commitment-model.ts';
import { chanceOfAtLeast } from '../../src/forecast/load-signal.ts';
import { type LaterPart, laterPace, pacedVelocity, paceShare } from '../../src/forecast/paced-velocity.ts';
import {
  type EndedSprint,
  NO_HISTORY,
  projectVelocity,
  withEndedSprints,
} from '../../src/forecast/project-velocity.ts';
import type { SprintStart } from '../../src/forecast/sprint-likeness.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { committedPoints, MOMENTS_PERCENT, pacedSprintOf, rowsAt, soFarOf, withCards } from './moments.ts';
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

type ImportedSprint = EndedSprint & { readonly soFar: SprintStart };

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
    const asImported = (row: SprintMoment): ImportedSprint => ({
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

function casesOf(own: readonly SprintMoment[], asImported: (row: SprintMoment) => ImportedSprint): Case[] {
  return own.slice(IMPORTED.from, IMPORTED.to + 1).map((row, i) => {
    const past = own.slice(0, IMPORTED.from + i).map(asImported);
    const { distribution, medianPoints } = projectVelocity(
      withEndedSprints(NO_HISTORY, past),
      String(row.board),
      soFarOf(row),
    );
    const floor = floorPoints(row);
    const later = past.slice(-RECENT_SPRINTS).map(laterOfImported);
    const told = chanceOfAtLeast(
      pacedVelocity(distribution, pacedSprintOf(row), laterPace(later), paceShare(0)),
      floor,
    );
    return { row, guessPoints: medianPoints, told, isKept: row.deliveredPoints >= floor };
  });
}

/** As the bot takes it: it went evenly, and all of it may have been open. */
function laterOfImported({ soFar, velocityPoints }: ImportedSprint): LaterPart {
  const evenPoints = velocityPoints * (1 - soFar.elapsedShare);
  return {
    workedPoints: evenPoints,
    evenPoints,
    openPoints: soFar.cardPoints,
    hadTimeToSpare: velocityPoints >= soFar.cardPoints,
    isWatched: false,
  };
}

function floorPoints(row: SprintMoment): number {
  return DEFAULT_THRESHOLDS.keptShareAtLeast * committedPoints(row);
}

function sprintOf({ board, sprint }: SprintMoment): string {
  return `${board}/${sprint}`;
}
