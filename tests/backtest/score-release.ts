/**
 * How often the release dates would have held, board by board. A case asks, after a closed sprint, for a backlog of so
 * many sprints' worth of work; it is counted if the pessimistic date lies within the sprints that the file has left,
 * which is known when the question is asked, and so favours no outcome.
 */
import {
  gradedReleases,
  MOST_SPRINTS_GRADED,
  sprintWorthPoints,
} from '../../src/forecast/graded-releases.ts';
import { releaseForecast } from '../../src/forecast/release-forecast.ts';
import type { PacedSprint } from '../../src/forecast/team-pace.ts';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { rowsAt, sharedSprints } from './moments.ts';

/** Sizes of the backlog, in sprints of the latest mean velocity. */
export const BACKLOGS_SPRINTS = [3, 6, 10] as const;

/** One board and size of backlog; the last three as shares of the cases. */
export interface ReleaseScore {
  readonly board: number;
  readonly backlogSprints: number;
  readonly cases: number;
  readonly held15: number;
  readonly held50: number;
  readonly held85: number;
}

/** A steady team's dates lie on the very end of a sprint. */
export const ROUNDING = 1e-9;

/** A closed sprint in the file's order; boards that share one close it together. */
export interface ClosedSprint extends PacedSprint {
  readonly board: number;
}

interface Case {
  readonly board: number;
  readonly backlogSprints: number;
  readonly held: readonly boolean[];
}

/**
 * The rows of boards that have a case at least, in order of board and size. Walks through the file as if its boards were
 * the teams of one installation: each forecast learns from those that could have been made before.
 */
export function scoreRelease(rows: readonly SprintMoment[]): ReleaseScore[] {
  const cases = casesOf(rows);
  const boards = [...new Set(cases.map(({ board }) => board))].sort((a, b) => a - b);
  return boards.flatMap((board) =>
    BACKLOGS_SPRINTS.flatMap((backlogSprints) => {
      const own = cases.filter((one) => one.board === board && one.backlogSprints === backlogSprints);
      const share = (date: number): number => own.filter(({ held }) => held[date]).length / own.length;
      const shares = { held15: share(0), held50: share(1), held85: share(2) };
      return own.length === 0 ? [] : [{ board, backlogSprints, cases: own.length, ...shares }];
    }),
  );
}

function casesOf(rows: readonly SprintMoment[]): Case[] {
  const velocities = Map.groupBy(rowsAt(rows, 0), ({ board }) => board);
  const closed: ClosedSprint[] = [];
  return sharedSprints(rowsAt(rows, 0)).flatMap((together) => {
    closed.push(...together.map(({ board, deliveredPoints }) => paced(board, deliveredPoints)));
    return together.flatMap(({ board }) => {
      const past = closed.filter((sprint) => sprint.board === board);
      const all = (velocities.get(board) as SprintMoment[]).map(({ deliveredPoints }) => deliveredPoints);
      const releases = learntFrom(closed, board);
      return BACKLOGS_SPRINTS.flatMap((backlogSprints) => {
        const held = heldAfter(past, all.slice(past.length), backlogSprints, {
          team: String(board),
          releases,
        });
        return held ? [{ board, backlogSprints, held }] : [];
      });
    });
  });
}

/** Every sprint of a board counts as the same working time: the data says nothing of days off. */
export function paced(board: number, velocityPoints: number): ClosedSprint {
  return { board, velocityPoints, time: 1 };
}

/** As much as the bot looks back at. */
export function learntFrom(closed: readonly ClosedSprint[], board: number) {
  const own = closed.filter((sprint) => sprint.board === board).slice(-MOST_SPRINTS_GRADED.own);
  const others = closed.filter((sprint) => sprint.board !== board).slice(-MOST_SPRINTS_GRADED.others);
  const byBoard = Map.groupBy([...own, ...others], (sprint) => sprint.board);
  return [...byBoard].flatMap(([id, sprints]) => gradedReleases(String(id), sprints));
}

/** Only the sprints count here, so any calendar does. */
export const CALENDAR = { startsOn: '2026-11-02', sprintLengthDays: 14 } as const;

/** Whether each date held; undefined where there is no forecast or the file ends before its pessimistic date. */
function heldAfter(
  past: readonly PacedSprint[],
  coming: readonly number[],
  backlogSprints: number,
  graded: { readonly team: string; readonly releases: ReturnType<typeof gradedReleases> },
): boolean[] | undefined {
  const backlogPoints = Math.ceil(backlogSprints * sprintWorthPoints(past));
  const forecast = releaseForecast({
    ...CALENDAR,
    backlogPoints,
    scopeGrowthPoints: 0,
    sprints: past,
    comingTimes: [1],
    graded,
  });
  if ('undefined' in forecast) return undefined;
  const held = forecast.dates.map((date) =>
    'undefined' in date || date.sprints > coming.length
      ? undefined
      : finishedAfter(coming, date.sprints) >= backlogPoints - ROUNDING,
  );
  return held.includes(undefined) ? undefined : (held as boolean[]);
}

/** Points finished after so many sprints, where a sprint that is not over has finished as much of its own as of its days. */
export function finishedAfter(coming: readonly number[], sprints: number): number {
  const whole = Math.floor(sprints);
  const over = coming.slice(0, whole).reduce((sum, points) => sum + points, 0);
  return over + (sprints - whole) * (coming[whole] ?? 0);
}
