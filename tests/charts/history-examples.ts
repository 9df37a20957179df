/** Invented histories of a team's ratios. */
import type { HistoryAdvice, RatioHistory } from '../../src/app/advice/advice.ts';
import type { PastSprint } from '../../src/app/history/past-sprint.ts';
import { controlChart } from '../../src/forecast/control-chart.ts';
import type { Growth } from '../../src/forecast/value-growth.ts';
import { valueGrowth } from '../../src/forecast/value-growth.ts';
import { baselineFrom } from '../../src/sprint/baseline.ts';
import { RATIO_IDS, RATIOS, type RatioId, type RatioLine } from '../../src/sprint/sprint-ratios.ts';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import { isDefined, type Ratio, undefinedBecause } from '../../src/sprint/undefined-value.ts';
import { exampleTeam, ordinaryPast, pastSprint } from './past-examples.ts';

const WITH_MARKS = { ...DEFAULT_THRESHOLDS, velocityGrowthFirstMark: 2.4, velocityGrowthLongRangeMark: 5 };

export function ratioHistory(ratio: RatioId, values: readonly Ratio[]): RatioHistory {
  const { lines, possible } = RATIOS[ratio];
  const at = (side: RatioLine['side']): number[] =>
    lines.flatMap((line) => (line.side === side ? (WITH_MARKS[line.threshold] ?? []) : []));
  const [floor] = at('floor');
  const [ceiling] = at('ceiling');
  return {
    ratio,
    values,
    floor,
    ceiling,
    marks: at('mark'),
    chart: controlChart(values, possible),
    crossedAt: values.flatMap((value, index) =>
      isDefined(value) &&
      ((floor !== undefined && value < floor) || (ceiling !== undefined && value > ceiling))
        ? [index]
        : [],
    ),
  };
}

export function historyAdvice(past: readonly PastSprint[], growth?: readonly Growth[]): HistoryAdvice {
  const baseline = past.find(({ velocityPoints }) => (velocityPoints ?? 0) > 0);
  const growths = past.map(({ velocityPoints }): Ratio => {
    if (velocityPoints === undefined || baseline?.velocityPoints === undefined) {
      return undefinedBecause('no-baseline');
    }
    return velocityPoints / baseline.velocityPoints;
  });
  const unknown = undefinedBecause('few-sprints', { needed: 5, known: 2, having: 'number' });
  return {
    team: exampleTeam,
    on: '2026-11-13',
    sprints: past.length,
    importedSprints: past.filter(({ importedAt }) => importedAt !== undefined).length,
    question: { about: 'history' },
    past,
    ratios: [
      ...RATIO_IDS.filter((ratio) => ratio !== 'velocityGrowth').map((ratio) =>
        ratioHistory(
          ratio,
          past.map(({ ratios }) => ratios[ratio as keyof typeof ratios]),
        ),
      ),
      ratioHistory('velocityGrowth', growths),
    ],
    velocityBaseline: baseline && {
      baseline: baselineFrom(baseline),
      from: past.indexOf(baseline),
      sprintId: baseline.sprintId,
    },
    goals: undefined,
    growth,
    margin: { ofCommitments: unknown, ofEstimates: unknown },
  };
}

/** A wave that repeats itself, so that each value is like its neighbours but not the same. */
const wave = (index: number, middle: number, height: number) =>
  middle + height * Math.sin(index * 1.7) * Math.cos(index * 0.6);

function longPast(sprints: number, imported = 6): PastSprint[] {
  return Array.from({ length: sprints }, (_, index) => {
    const commitment = 24 + (index % 5);
    const jump = index >= sprints - 9 ? 0.09 : 0;
    return pastSprint(
      index,
      {
        commitment,
        pulledIn: index === sprints - 4 ? 14 : index % 4,
        surprise: (index * 3) % 7,
        velocity: commitment + ((index * 5) % 7) - 3 + Math.floor(index / 3),
        committedFinished: commitment - ((index * 7) % 6),
        imported: index < imported,
        ratios:
          index < imported
            ? {}
            : {
                estimateAccuracy: wave(index, 0.84 + jump, 0.05),
                onScaleShare: wave(index, 0.6, 0.15),
                finishShare: wave(index, 0.9, 0.12),
              },
      },
      sprints > 40 ? '2016-01-04' : '2025-12-01',
    );
  });
}

const valued = longPast(18);
export const ordinaryHistory = historyAdvice(valued);
export const withValue = historyAdvice(
  valued,
  valueGrowth(
    valued.map(({ velocityPoints = 0 }, index) => ({
      velocityPoints,
      recordedValue: index < 4 || index === 9 ? undefined : 1_000 + index * 150 + (index % 3) * 200,
    })),
  ).sprints,
);
/** A team of four that became eight: its velocity doubled, and for each member-day it is about the same. */
export const grownHistory = historyAdvice(
  longPast(16).map((sprint, index) => ({
    ...sprint,
    memberDays: index < 7 ? 40 : 80,
    velocityPoints: (sprint.velocityPoints ?? 0) * (index < 7 ? 1 : 2),
  })),
);
export const shortHistory = historyAdvice(ordinaryPast.slice(0, 3));
export const oneSprintHistory = historyAdvice(ordinaryPast.slice(0, 1));
export const noHistory = historyAdvice([]);
export const nothingRecorded = historyAdvice(
  Array.from({ length: 4 }, (_, index) => pastSprint(index, { commitment: 0, imported: true })),
);
export const tenYears = historyAdvice(longPast(260, 250));
export const wildHistory = historyAdvice(
  Array.from({ length: 10 }, (_, index) =>
    pastSprint(index, {
      commitment: index % 2 === 0 ? 0.5 : 999.5,
      pulledIn: 900,
      surprise: 0,
      velocity: index === 0 ? 0.5 : 1_200,
      committedFinished: 0,
      ratios: { estimateAccuracy: -3.5 - index, onScaleShare: 0, finishShare: 40 + index },
    }),
  ),
);
