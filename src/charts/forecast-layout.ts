/** Where things stand in the forecast picture, in layout pixels. Pure; draws nothing. */
import type { ForecastAdvice } from '../app/advice/advice.ts';
import { dayPlus } from '../sprint/calendar.ts';
import type { Box, ChartSize } from './chart-frame.ts';

export const forecastSize: ChartSize = { widthPx: 800, heightPx: 450 };

const plot: Box = { left: 72, right: 566, top: 98, bottom: 350 };

export interface ForecastLayout {
  readonly plot: Box;
  /** Width of a sprint. */
  readonly bandPx: number;
  /** Ends of the sprints, from the first on. */
  readonly ends: readonly string[];
  xOf(sprints: number): number;
  yOf(chance: number): number;
}

/** @param sprints how many the picture spans; one at least */
export function forecastLayout(
  { startsOn, sprintLengthDays }: Pick<ForecastAdvice, 'startsOn' | 'sprintLengthDays'>,
  sprints: number,
): ForecastLayout {
  const bandPx = (plot.right - plot.left) / sprints;
  return {
    plot,
    bandPx,
    ends: Array.from({ length: sprints }, (_, i) => sprintEnd(startsOn, sprintLengthDays, i + 1)),
    xOf: (at) => plot.left + at * bandPx,
    yOf: (chance) => plot.bottom - chance * (plot.bottom - plot.top),
  };
}

/** The last day before the next sprint starts. @param sprint from 1 */
export function sprintEnd(startsOn: string, sprintLengthDays: number, sprint: number): string {
  return dayPlus(startsOn, sprint * sprintLengthDays - 1);
}
