/** When a body of work is finished, and how far off the team's numbers were so far. */
import { marginOfError } from '../../forecast/margin-of-error.ts';
import { releaseForecast } from '../../forecast/release-forecast.ts';
import type { Day } from '../../sprint/calendar.ts';
import type { PastSprint } from '../history/past-sprint.ts';
import { knownVelocities, marginSprints } from '../history/team-history.ts';
import type { ForecastAdvice } from './advice.ts';

/**
 * @param past oldest first
 * @param rhythm the first day of the first sprint that can work on it, and the days from sprint to sprint
 */
export function forecastOf(
  { backlogPoints, growthPoints }: ForecastAdvice['question'],
  past: readonly PastSprint[],
  rhythm: { readonly startsOn: Day; readonly sprintLengthDays: number },
): Pick<ForecastAdvice, 'startsOn' | 'sprintLengthDays' | 'forecast' | 'margin'> {
  return {
    ...rhythm,
    forecast: releaseForecast({
      backlogPoints,
      scopeGrowthPoints: growthPoints,
      velocities: knownVelocities(past),
      ...rhythm,
    }),
    margin: marginOfError(marginSprints(past)),
  };
}
