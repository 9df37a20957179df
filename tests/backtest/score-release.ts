/**
 * How often the release dates would have held, board by board. A case asks, after a closed sprint, for a backlog of so
 * many sprints' worth of work; it is counted if the pessimistic date lies within the sprints that the file has left,
 * which is known when the question is asked, and so favours no outcome.
 */
import { LATEST_SPRINTS, releaseForecast } from '../../src/forecast/release-forecast.ts';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { rowsAt } from './moments.ts';

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

/** The rows of boards that have a case at least, in order of board and size. */
export function scoreRelease(rows: readonly SprintMoment[]): ReleaseScore[] {
  const velocities = new Map<number, number[]>();
  for (const { board, deliveredPoints } of rowsAt(rows, 0)) {
    velocities.set(board, [...(velocities.get(board) ?? []), deliveredPoints]);
  }
  return [...velocities]
    .sort(([a], [b]) => a - b)
    .flatMap(([board, delivered]) =>
      BACKLOGS_SPRINTS.map((backlogSprints) => ({
        board,
        backlogSprints,
        ...heldShares(delivered, backlogSprints),
      })),
    )
    .filter(({ cases }) => cases > 0);
}

function heldShares(
  delivered: readonly number[],
  backlogSprints: number,
): Omit<ReleaseScore, 'board' | 'backlogSprints'> {
  const cases = delivered
    .map((_, closed) => heldAfter(delivered.slice(0, closed), delivered.slice(closed), backlogSprints))
    .filter((held) => held !== undefined);
  const share = (date: number): number => cases.filter((held) => held[date]).length / cases.length;
  return { cases: cases.length, held15: share(0), held50: share(1), held85: share(2) };
}

/** Whether each date held; undefined where there is no forecast or the file ends before its pessimistic date. */
function heldAfter(
  past: readonly number[],
  coming: readonly number[],
  backlogSprints: number,
): boolean[] | undefined {
  const latest = past.slice(-LATEST_SPRINTS);
  const mean = latest.reduce((sum, points) => sum + points, 0) / latest.length;
  const forecast = releaseForecast({
    backlogPoints: past.length === 0 ? 0 : Math.ceil(backlogSprints * mean),
    scopeGrowthPoints: 0,
    velocities: past,
    // Only the sprints count here, so any calendar does.
    startsOn: '2026-11-02',
    sprintLengthDays: 14,
  });
  if ('undefined' in forecast) return undefined;
  const held = forecast.dates.map((date) =>
    'undefined' in date || date.sprints > coming.length
      ? undefined
      : finishedAfter(coming, date.sprints) >= Math.ceil(backlogSprints * mean),
  );
  return held.includes(undefined) ? undefined : (held as boolean[]);
}

/** Points finished after so many sprints, where a sprint that is not over has finished as much of its own as of its days. */
function finishedAfter(coming: readonly number[], sprints: number): number {
  const whole = Math.floor(sprints);
  const over = coming.slice(0, whole).reduce((sum, points) => sum + points, 0);
  return over + (sprints - whole) * (coming[whole] ?? 0);
}
