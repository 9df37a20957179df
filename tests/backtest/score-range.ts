/**
 * How the commitment range does on past sprints, board by board, as if each board were a team. What a sprint would have
 * brought home under another commitment, the data can't say; it is judged only where the team had committed to at least
 * as much as was advised, which is known before the sprint begins, and so favours no outcome.
 */
import { commitmentRange } from '../../src/forecast/commitment-range.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { committedPoints } from './moments.ts';
import { NO_TIME, type PlannedSprint, plannedSprints } from './planned-sprints.ts';

/** Shares are of the judged sprints; undefined without any. */
export interface RangeScore {
  /** Sprints with a commitment, of boards with at least three before. */
  readonly asked: number;
  /** Of these, those in which no commitment served both. */
  readonly crossed: number;
  /** Those in which a number was told. */
  readonly told: number;
  /** Of these, those in which the team committed to at least so much. */
  readonly judged: number;
  /** In which as much was delivered as the floor asks for of the advised number, and the chance that was told of it. */
  readonly kept: number | undefined;
  readonly keptChance: number | undefined;
  /** In which the advised number was delivered whole, and the chance that was told of it. */
  readonly whole: number | undefined;
  readonly wholeChance: number | undefined;
  /** The same as `kept` at the high end, of those who had committed to at least as much as that. */
  readonly judgedAtHighEnd: number;
  readonly keptAtHighEnd: number | undefined;
}

interface Told {
  readonly committed: number;
  readonly delivered: number;
  readonly advised: number;
  readonly keptChance: number;
  readonly wholeChance: number;
  readonly highEnd: number;
  readonly isCrossed: boolean;
}

export function scoreRange(rows: readonly SprintMoment[]): RangeScore {
  const floor = DEFAULT_THRESHOLDS.keptShareAtLeast;
  const asked = plannedSprints(rows, () => undefined);
  const told = asked.flatMap(toldFor);
  const judged = told.filter(({ committed, advised }) => committed >= advised);
  const atHighEnd = told.filter(({ committed, highEnd }) => highEnd > 0 && committed >= highEnd);
  return {
    asked: asked.length,
    crossed: told.filter(({ isCrossed }) => isCrossed).length,
    told: told.length,
    judged: judged.length,
    kept: mean(judged, ({ delivered, advised }) => delivered >= floor * advised),
    keptChance: mean(judged, ({ keptChance }) => keptChance),
    whole: mean(judged, ({ delivered, advised }) => delivered >= advised),
    wholeChance: mean(judged, ({ wholeChance }) => wholeChance),
    judgedAtHighEnd: atHighEnd.length,
    keptAtHighEnd: mean(atHighEnd, ({ delivered, highEnd }) => delivered >= floor * highEnd),
  };
}

function toldFor({ row, before }: PlannedSprint): Told[] {
  const range = commitmentRange(before, NO_TIME, DEFAULT_THRESHOLDS);
  if ('undefined' in range || 'undefined' in range.advised) return [];
  const { points, chances, unserved } = range.advised;
  return [
    {
      committed: committedPoints(row),
      delivered: row.deliveredPoints,
      advised: points,
      keptChance: chances.kept as number,
      wholeChance: chances.finishedWhole as number,
      highEnd: range.highPoints as number,
      isCrossed: unserved !== undefined,
    },
  ];
}

function mean(of: readonly Told[], value: (one: Told) => number | boolean): number | undefined {
  return of.length === 0 ? undefined : of.reduce((sum, one) => sum + Number(value(one)), 0) / of.length;
}
