/**
 * Where things stand in the burndown picture, in layout pixels from the top left corner. Pure; draws nothing.
 *
 * Three plots share one axis of days: points left on top, below it one track for pulled-in work and one for
 * surprise work. Position 0 is the start of the sprint, position n the evening of its n-th day.
 */
import type { Burndown } from '../sprint/burndown.ts';
import type { Box, ChartSize } from './chart-frame.ts';
import { type PointsAxis, pointsAxis } from './points-axis.ts';

export const burndownSize: ChartSize = { widthPx: 800, heightPx: 450 };

/** Room above the highest point, for its label. */
const headroomPx = 20;

const acrossDays = { left: 84, right: 690 };
const leftPlot: Box = { ...acrossDays, top: 96, bottom: 274 };
/** The tracks are equally high, so that one point is equally high in both. */
const pulledInTrack: Box = { ...acrossDays, top: 300, bottom: 336 };
const surpriseTrack: Box = { ...acrossDays, top: 356, bottom: 392 };

/** Where the line of points left ends: at the last evening that has a value, or else at the start. */
export interface LeftEnd {
  readonly position: number;
  readonly leftPoints: number;
  readonly idealPoints: number;
  /** Whether the line came up to its end from below. */
  readonly rising: boolean;
}

export interface BurndownLayout {
  readonly leftPlot: Box;
  readonly pulledInTrack: Box;
  readonly surpriseTrack: Box;
  /** Width of one position. */
  readonly bandPx: number;
  readonly axis: PointsAxis;
  /** Points between the bottom and the top of either track. */
  readonly trackPoints: number;
  /** Lowest value of the surprise track: 0, or below it when surprise turned out not to be needed. */
  readonly surpriseFloorPoints: number;
  readonly leftEnd: LeftEnd;
  /** Undefined when today lies outside the sprint or was not given; between two positions on a day off. */
  readonly todayPosition: number | undefined;
  xOf(position: number): number;
  /** Height in the plot of points left. */
  yOf(points: number): number;
}

export function burndownLayout(burndown: Burndown): BurndownLayout {
  const { days, commitmentPoints } = burndown;
  const bandPx = (acrossDays.right - acrossDays.left) / (days.length + 1);
  const plotPx = leftPlot.bottom - leftPlot.top;
  const highestPoints = Math.max(
    commitmentPoints,
    ...days.map((day) => Math.max(day.leftPoints ?? 0, day.idealPoints)),
  );
  const axis = pointsAxis((highestPoints * plotPx) / (plotPx - headroomPx));
  const surpriseFloorPoints = Math.min(0, ...days.map((day) => day.surprisePoints));
  const trackPoints = Math.max(
    1,
    ...days.map((day) => day.pulledInPoints),
    Math.max(0, ...days.map((day) => day.surprisePoints)) - surpriseFloorPoints,
  );
  return {
    leftPlot,
    pulledInTrack,
    surpriseTrack,
    bandPx,
    axis,
    trackPoints,
    surpriseFloorPoints,
    leftEnd: leftEnd(burndown),
    todayPosition: todayPosition(burndown),
    xOf: (position) => acrossDays.left + (position + 0.5) * bandPx,
    yOf: (points) => leftPlot.bottom - (points / axis.topPoints) * plotPx,
  };
}

function leftEnd({ commitmentPoints, days }: Burndown): LeftEnd {
  const index = days.findLastIndex((day) => day.leftPoints !== undefined);
  const leftPoints = days[index]?.leftPoints ?? commitmentPoints;
  const previousPoints = days[index - 1]?.leftPoints ?? commitmentPoints;
  return {
    position: index + 1,
    leftPoints,
    idealPoints: days[index]?.idealPoints ?? commitmentPoints,
    rising: leftPoints > previousPoints,
  };
}

function todayPosition({ days, today }: Burndown): number | undefined {
  if (today === undefined) return undefined;
  // ISO dates sort as text.
  const nextIndex = days.findIndex((day) => day.day >= today);
  const next = days[nextIndex];
  if (next?.day === today) return nextIndex + 1;
  return nextIndex > 0 ? nextIndex + 0.5 : undefined;
}
