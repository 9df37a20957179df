/**
 * Whether the three chances that are told at planning come true of what the team did commit to: to keep it, to finish all
 * of it, and to run out of work. What was delivered counts whole, before and after: the data doesn't say which of it had
 * been committed to.
 */
import { commitmentModel } from '../../src/forecast/commitment-model.ts';
import { commitmentChances } from '../../src/forecast/commitment-range.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import type { SprintMoment } from '../open-data/read-open-data.ts';
import { committedPoints } from './moments.ts';
import { NO_TIME, type PlannedSprint, plannedSprints } from './planned-sprints.ts';
import { binsOf, type ChanceBin } from './score-chances.ts';

export const PLANNING_CHANCES = ['kept', 'finishedWhole', 'ranOut'] as const;

export interface PlanningBin extends ChanceBin {
  readonly chance: (typeof PLANNING_CHANCES)[number];
}

/** A chance that was told, and whether it came true. */
export interface ToldAtPlanning {
  readonly chance: PlanningBin['chance'];
  readonly told: number;
  readonly came: boolean;
}

export function scorePlanning(cases: readonly ToldAtPlanning[]): PlanningBin[] {
  return PLANNING_CHANCES.flatMap((chance) =>
    binsOf(cases.filter((one) => one.chance === chance)).map((bin) => ({ chance, ...bin })),
  );
}

/** Sprints for which a chance isn't told are left out. */
export function toldAtPlanning(rows: readonly SprintMoment[]): ToldAtPlanning[] {
  const finishedOf = (row: SprintMoment) => Math.min(row.deliveredPoints, committedPoints(row));
  return plannedSprints(rows, finishedOf).flatMap(toldOf);
}

function toldOf({ row, pulledInPoints, before }: PlannedSprint): ToldAtPlanning[] {
  const model = commitmentModel(before, NO_TIME);
  if ('undefined' in model) return [];
  const points = committedPoints(row);
  const told = commitmentChances(model, points, DEFAULT_THRESHOLDS);
  const came = {
    kept: row.deliveredPoints >= DEFAULT_THRESHOLDS.keptShareAtLeast * points,
    finishedWhole: row.deliveredPoints >= points,
    ranOut: pulledInPoints > DEFAULT_THRESHOLDS.pullInRatioAtMost * points,
  };
  return PLANNING_CHANCES.flatMap((chance) => {
    const its = told[chance];
    return typeof its === 'number' ? [{ chance, told: its, came: came[chance] }] : [];
  });
}
