/**
 * Whether a joint date of two bodies of work, of two boards, keeps its bounds: by the day from which both are surely done
 * with a chance of 50 or 85% they should be done at least as often, and by the day before which that can't be at most as
 * often. The files hold no days, so the coming sprints of both boards are taken to go in step.
 */
import { sprintWorthPoints } from '../../src/forecast/graded-releases.ts';
import { JOINT_CHANCES, jointDates, type PartForecast } from '../../src/forecast/joint-release.ts';
import { releaseForecast } from '../../src/forecast/release-forecast.ts';
import { type Day, daysBetween } from '../../src/sprint/calendar.ts';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { rowsAt, sharedSprints } from './moments.ts';
import {
  BACKLOGS_SPRINTS,
  CALENDAR,
  type ClosedSprint,
  finishedAfter,
  learntFrom,
  paced,
  ROUNDING,
} from './score-release.ts';

/** One size of work; shares of the cases in which both were done by the day. */
export interface JointScore {
  readonly backlogSprints: number;
  readonly pairs: number;
  readonly cases: number;
  readonly heldSurely50: number;
  readonly heldSoonest50: number;
  readonly heldSurely85: number;
  readonly heldSoonest85: number;
}

/** The work of a board as it was foretold after its latest sprint, and what the board delivered from then on. */
interface Part extends PartForecast {
  readonly backlogPoints: number;
  readonly coming: readonly number[];
}

interface JointCase {
  readonly backlogSprints: number;
  readonly pair: string;
  /** By the days that are told, in the order of `JOINT_CHANCES`, the sure one before the soonest. */
  readonly held: readonly boolean[];
}

/** The farthest sprint that is looked at; a case whose days lie beyond what is left of either board is none. */
const THROUGH_SPRINT = 40;

/**
 * After each sprint of a board it is paired with every other board that has closed one since its sprint before, as it stood
 * then: boards that are at work at the same time. Sizes without a case are left out.
 */
export function scoreJoint(rows: readonly SprintMoment[]): JointScore[] {
  const cases = casesOf(rows);
  return BACKLOGS_SPRINTS.flatMap((backlogSprints) => {
    const its = cases.filter((one) => one.backlogSprints === backlogSprints);
    const share = (day: number): number => its.filter(({ held }) => held[day]).length / its.length;
    const pairs = new Set(its.map(({ pair }) => pair)).size;
    const [heldSurely50, heldSoonest50, heldSurely85, heldSoonest85] = [
      share(0),
      share(1),
      share(2),
      share(3),
    ];
    return its.length === 0
      ? []
      : [
          {
            backlogSprints,
            pairs,
            cases: its.length,
            heldSurely50,
            heldSoonest50,
            heldSurely85,
            heldSoonest85,
          },
        ];
  });
}

function casesOf(rows: readonly SprintMoment[]): JointCase[] {
  const starts = rowsAt(rows, 0);
  const delivered = Map.groupBy(starts, ({ board }) => board);
  const closed: ClosedSprint[] = [];
  const latest = new Map<number, { readonly place: number; readonly parts: Map<number, Part> }>();
  return sharedSprints(starts).flatMap((together, place) => {
    closed.push(...together.map(({ board, deliveredPoints }) => paced(board, deliveredPoints)));
    const before = new Map(together.map(({ board }) => [board, latest.get(board)?.place ?? place]));
    for (const { board } of together) {
      const all = (delivered.get(board) as SprintMoment[]).map(({ deliveredPoints }) => deliveredPoints);
      latest.set(board, { place, parts: partsOf(closed, board, all) });
    }
    return together.flatMap(({ board }) => {
      const own = (latest.get(board) as { parts: Map<number, Part> }).parts;
      return [...latest]
        .filter(([other, { place: since }]) => {
          // Boards that share a sprint are paired once.
          const isPaired = since === place && other <= board;
          return !isPaired && since > (before.get(board) as number);
        })
        .flatMap(([other, { parts }]) => pairedCases(own, parts, [board, other].toSorted().join(' ')));
    });
  });
}

function partsOf(
  closed: readonly ClosedSprint[],
  board: number,
  delivered: readonly number[],
): Map<number, Part> {
  const past = closed.filter((sprint) => sprint.board === board);
  const graded = { team: String(board), releases: learntFrom(closed, board) };
  return new Map(
    BACKLOGS_SPRINTS.flatMap((backlogSprints) => {
      const backlogPoints = Math.ceil(backlogSprints * sprintWorthPoints(past));
      const forecast = releaseForecast({
        ...CALENDAR,
        backlogPoints,
        scopeGrowthPoints: 0,
        sprints: past,
        comingTimes: [1],
        throughSprint: THROUGH_SPRINT,
        graded,
      });
      if ('undefined' in forecast) return [];
      const { chanceBySprint } = forecast;
      return [
        [
          backlogSprints,
          { ...CALENDAR, chanceBySprint, backlogPoints, coming: delivered.slice(past.length) },
        ],
      ];
    }),
  );
}

function pairedCases(one: Map<number, Part>, other: Map<number, Part>, pair: string): JointCase[] {
  return BACKLOGS_SPRINTS.flatMap((backlogSprints) => {
    const parts = [one.get(backlogSprints), other.get(backlogSprints)].filter((part) => part !== undefined);
    const held = parts.length === 2 ? heldBy(parts) : undefined;
    return held ? [{ backlogSprints, pair, held }] : [];
  });
}

/** Undefined where a day isn't told, or lies beyond the sprints that either board has left. */
function heldBy(parts: readonly Part[]): boolean[] | undefined {
  const days = jointDates(parts).flatMap(({ surely, soonest }) => [surely, soonest]);
  const left = Math.min(...parts.map(({ coming }) => coming.length));
  const sprints = days.map((day) => (day === undefined ? Number.POSITIVE_INFINITY : sprintsUntil(day)));
  if (days.length !== 2 * JOINT_CHANCES.length || sprints.some((count) => count > left)) return undefined;
  return sprints.map((count) =>
    parts.every(({ coming, backlogPoints }) => finishedAfter(coming, count) >= backlogPoints - ROUNDING),
  );
}

function sprintsUntil(day: Day): number {
  return (daysBetween(CALENDAR.startsOn, day) + 1) / CALENDAR.sprintLengthDays;
}
