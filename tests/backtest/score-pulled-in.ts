/**
 * Whether everything gets finished as often as the status told once more work had come in: each board walks alone. The file doesn't
 * say when work was added, so it is taken to have come in at the moment before.
 */
import { RECENT_SPRINTS } from '../../src/forecast/commitment-model.ts';
import { chanceOfAtLeast } from '../../src/forecast/load-signal.ts';
import { laterPace, pacedVelocity, paceShare } from '../../src/forecast/paced-velocity.ts';
import { NO_HISTORY, projectVelocity, withEndedSprints } from '../../src/forecast/project-velocity.ts';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import {
  committedPoints,
  endedSprintOf,
  laterPartOf,
  MOMENTS_PERCENT,
  pacedSprintOf,
  rowsAt,
  soFarOf,
  withCards,
} from './moments.ts';
import { keyOf } from './planned-sprints.ts';
import { meanOf } from './walk-forward.ts';

/** Sprints that a board must have behind it. */
const LEAST_BEFORE = 6;

/** Sprints of a file into which work came, by whether more was open with it than ever before at that moment; shares of 1. */
export interface PulledInScore {
  readonly isMostEver: boolean;
  readonly cases: number;
  /** The chance that everything gets finished: as the status tells it, and by the projection alone. */
  readonly told: number;
  readonly projectionTold: number;
  readonly came: number;
  readonly brier: number;
  readonly projectionBrier: number;
}

interface Case {
  readonly isMostEver: boolean;
  readonly told: number;
  readonly projected: number;
  readonly came: number;
}

export function scorePulledIn(rows: readonly SprintMoment[]): PulledInScore[] {
  const cases = MOMENTS_PERCENT.slice(0, -1).flatMap((elapsedPercent, i) => {
    const next = rowsAt(rows, MOMENTS_PERCENT[i + 1] as number);
    const later = new Map(next.map((row) => [keyOf(row), committedPoints(row)]));
    const there = rowsAt(rows, elapsedPercent).filter(withCards);
    return [...Map.groupBy(there, ({ board }) => board).values()].flatMap((own) => casesOf(own, later));
  });
  return [false, true].flatMap((isMostEver) => {
    const its = cases.filter((one) => one.isMostEver === isMostEver);
    return its.length === 0 ? [] : [{ isMostEver, cases: its.length, ...summaryOf(its) }];
  });
}

/** @param later what each sprint held at the next moment */
function casesOf(own: readonly SprintMoment[], later: ReadonlyMap<string, number>): Case[] {
  let history = NO_HISTORY;
  return own.flatMap((row, i) => {
    const before = history;
    history = withEndedSprints(history, [endedSprintOf(row)]);
    const cardPoints = later.get(keyOf(row)) ?? 0;
    if (i < LEAST_BEFORE || cardPoints <= committedPoints(row)) return [];
    const { distribution } = projectVelocity(before, String(row.board), { ...soFarOf(row), cardPoints });
    const parts = own.slice(0, i).map(laterPartOf);
    const pace = laterPace(parts.slice(-RECENT_SPRINTS));
    const status = pacedVelocity(distribution, { ...pacedSprintOf(row), cardPoints }, pace, paceShare(0));
    return [
      {
        isMostEver: cardPoints - row.donePoints > Math.max(...parts.map(({ openPoints }) => openPoints)),
        told: chanceOfAtLeast(status, cardPoints),
        projected: chanceOfAtLeast(distribution, cardPoints),
        came: row.deliveredPoints >= cardPoints ? 1 : 0,
      },
    ];
  });
}

function summaryOf(cases: readonly Case[]): Omit<PulledInScore, 'isMostEver' | 'cases'> {
  return {
    told: meanOf(cases, ({ told }) => told),
    projectionTold: meanOf(cases, ({ projected }) => projected),
    came: meanOf(cases, ({ came }) => came),
    brier: meanOf(cases, ({ told, came }) => (told - came) ** 2),
    projectionBrier: meanOf(cases, ({ projected, came }) => (projected - came) ** 2),
  };
}
