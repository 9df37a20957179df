/**
 * Walks through past sprints in file order, as if the bot had been there: no prediction sees anything but sprints that
 * had ended. What it asks is the function behind the bot's status.
 */
import { RECENT_SPRINTS } from '../../src/forecast/commitment-model.ts';
import type { LaterPart } from '../../src/forecast/paced-velocity.ts';
import {
  type EndedSprint,
  MOST_SPRINTS_BACK,
  NO_HISTORY,
  type ProjectionHistory,
  projectVelocity,
  type VelocityProjection,
  withEndedSprints,
} from '../../src/forecast/project-velocity.ts';
import { median } from '../../src/forecast/quantile.ts';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { FinishShareRule } from './finish-share-rule.ts';
import { committedPoints, endedSprintOf, laterPartOf, sharedSprints, soFarOf } from './moments.ts';

/** A sprint at a moment, and what was said of its end before it was known. */
export interface Foretold {
  readonly row: SprintMoment;
  readonly projection: VelocityProjection;
  /** What the board's own sprints before did from that moment on. */
  readonly later: readonly LaterPart[];
  /** Committed + the running median of delivered − committed. */
  readonly runningMedianPoints: number;
  readonly finishSharePoints: number;
}

/**
 * What was foretold of each sprint after the first ones, which only teach.
 *
 * @param rows of one moment, in file order
 */
export function walkForward(rows: readonly SprintMoment[], onlyTeach: number): Foretold[] {
  const foretold: Foretold[] = [];
  const differences: number[] = [];
  const rule = new FinishShareRule();
  const ended: EndedSprint[][] = [];
  const later = new Map<number, LaterPart[]>();
  for (const together of sharedSprints(rows)) {
    const historyOf = historiesOf(ended);
    const finishShares = together.map((row) => rule.guessPoints(row));
    for (const [i, row] of together.entries()) {
      if (differences.length >= onlyTeach) {
        foretold.push({
          row,
          projection: projectVelocity(historyOf(String(row.board)), String(row.board), soFarOf(row)),
          later: (later.get(row.board) ?? []).slice(-RECENT_SPRINTS),
          runningMedianPoints:
            committedPoints(row) + (differences.length === 0 ? 0 : (median(differences) as number)),
          finishSharePoints: finishShares[i] as number,
        });
      }
      differences.push(row.deliveredPoints - committedPoints(row));
    }
    for (const row of together) {
      rule.learn(row);
      later.set(row.board, [...(later.get(row.board) ?? []), laterPartOf(row)]);
    }
    ended.push(together.map(endedSprintOf));
  }
  return foretold;
}

/** What the bot would have learnt for each team, from as many of the latest sprints as it looks back at. */
function historiesOf(ended: readonly EndedSprint[][]): (team: string) => ProjectionHistory {
  const made = new Map<string, ProjectionHistory>();
  return (team) => {
    const history = made.get(team) ?? latestSprints(ended, team).reduce(withEndedSprints, NO_HISTORY);
    made.set(team, history);
    return history;
  };
}

/** As the store would give them: so many of the team's own, so many of the others, in order. */
export function latestSprints(ended: readonly EndedSprint[][], team: string): EndedSprint[][] {
  const room = { ...MOST_SPRINTS_BACK };
  const latest: EndedSprint[][] = [];
  for (let i = ended.length - 1; i >= 0 && room.own + room.others > 0; i -= 1) {
    const fits = (ended[i] as EndedSprint[]).filter((sprint) => {
      const whose = sprint.team === team ? 'own' : 'others';
      room[whose] -= 1;
      return room[whose] >= 0;
    });
    room.own = Math.max(0, room.own);
    room.others = Math.max(0, room.others);
    if (fits.length > 0) latest.unshift(fits);
  }
  return latest;
}

/** Mean of a number over some cases. NaN over none. */
export function meanOf<T>(cases: readonly T[], value: (each: T) => number): number {
  return cases.reduce((sum, each) => sum + value(each), 0) / cases.length;
}

/** Mean distance from the points delivered. */
export function meanError(cases: readonly Foretold[], guessPoints: (each: Foretold) => number): number {
  return meanOf(cases, (each) => Math.abs(guessPoints(each) - each.row.deliveredPoints));
}

/** How often an interval held the points delivered. */
export function coverageOf(cases: readonly Foretold[], interval: 'narrow' | 'wide'): number {
  return meanOf(cases, ({ projection, row: { deliveredPoints } }) => {
    const { low, high } = projection[interval];
    return low <= deliveredPoints && deliveredPoints <= high ? 1 : 0;
  });
}
