/** Invented answers to "when will it be finished?", made by the forecast itself. */
import type { ForecastAdvice } from '../../src/app/advice/advice.ts';
import { releaseByDay } from '../../src/forecast/release-by-day.ts';
import { releaseForecast } from '../../src/forecast/release-forecast.ts';
import { undefinedBecause } from '../../src/sprint/undefined-value.ts';
import { exampleTeam } from './past-examples.ts';

export function forecastAdvice(
  backlogPoints: number,
  velocities: readonly number[],
  {
    growthPoints = 0,
    startsOn = '2026-11-16',
    sprintLengthDays = 14,
    byDay,
  }: { growthPoints?: number; startsOn?: string; sprintLengthDays?: number; byDay?: string } = {},
): ForecastAdvice {
  const question = {
    backlogPoints,
    scopeGrowthPoints: growthPoints,
    sprints: velocities.map((velocityPoints) => ({ velocityPoints, time: 1 })),
    startsOn,
    sprintLengthDays,
    comingTimes: [1],
  };
  const onDay = byDay === undefined ? undefined : releaseByDay(question, byDay);
  const until = onDay === undefined || 'undefined' in onDay ? 0 : onDay.sprints;
  const unknown = undefinedBecause('few-sprints', { needed: 5, known: 2, having: 'number' });
  return {
    team: exampleTeam,
    on: '2026-11-13',
    sprints: velocities.length,
    importedSprints: 0,
    question: { about: 'forecast', backlogPoints, growthPoints },
    startsOn,
    sprintLengthDays,
    growth: { points: growthPoints, span: undefined, measuredSprints: undefined },
    forecast: releaseForecast({ ...question, throughSprint: Math.ceil(until) }),
    byDay: onDay,
    margin: { ofCommitments: unknown, ofEstimates: unknown },
  };
}

const velocities = [24, 23, 26, 27, 21, 28, 24];
export const ordinaryForecast = forecastAdvice(120, velocities);
export const oneSprintForecast = forecastAdvice(3, velocities);
export const tinyWork = forecastAdvice(0.5, velocities);
export const growingScope = forecastAdvice(200, velocities, { growthPoints: 8 });
export const longForecast = forecastAdvice(1_000, velocities, { sprintLengthDays: 7 });
export const beyondAll = forecastAdvice(2_900, velocities, { growthPoints: 3 });
export const neverFinished = forecastAdvice(9_000, [3, 0, 0.5], { growthPoints: 20 });
export const tooFew = forecastAdvice(80, [20, 22]);
