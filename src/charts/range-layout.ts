/**
 * Where things stand in the range picture, in layout pixels. Pure; draws nothing.
 * Past sprints stand side by side and the coming one at their right; below each are its numbers.
 */
import type { RangeAdvice } from '../app/advice/advice.ts';
import type { PastSprint } from '../app/history/past-sprint.ts';
import { advisedRange } from '../forecast/advised-range.ts';
import type { Box, ChartSize } from './chart-frame.ts';
import { type PointsAxis, pointsAxis } from './points-axis.ts';

export const rangeSize: ChartSize = { widthPx: 800, heightPx: 500 };

/** As many as the range is made from. */
export const mostPastSprints = 12;
const widestBandPx = 76;

const plot: Box = { left: 124, right: 564, top: 98, bottom: 318 };
/** Of the coming sprint; its words stand right of it. */
const coming: Box = { ...plot, left: 590, right: 660 };

export interface RangeLayout {
  readonly plot: Box;
  readonly coming: Box;
  /** Width of a past sprint. */
  readonly bandPx: number;
  readonly barPx: number;
  readonly axis: PointsAxis;
  /** The middle of a past sprint. */
  xOf(index: number): number;
  yOf(points: number): number;
  /** The middles of the rows of numbers below. */
  readonly rows: { readonly [name in 'commitment' | 'pulledIn' | 'velocity' | 'verdict' | 'key']: number };
}

export function shownSprints({ past }: Pick<RangeAdvice, 'past'>): readonly PastSprint[] {
  return past.slice(-mostPastSprints);
}

export function rangeLayout(advice: RangeAdvice): RangeLayout {
  const past = shownSprints(advice);
  const bandPx = Math.min(widestBandPx, (plot.right - plot.left) / Math.max(1, past.length));
  const axis = pointsAxis(Math.max(...past.flatMap(heightsOf), ...advisedHeights(advice), 0));
  return {
    plot,
    coming,
    bandPx,
    barPx: Math.min(22, bandPx * 0.36),
    axis,
    // The latest stands beside the coming one.
    xOf: (index) => plot.right - (past.length - index - 0.5) * bandPx,
    yOf: (points) => plot.bottom - (points / axis.topPoints) * (plot.bottom - plot.top),
    rows: { commitment: 384, pulledIn: 407, velocity: 430, verdict: 454, key: 480 },
  };
}

function heightsOf({ commitmentPoints, pulledInPoints = 0, velocityPoints = 0 }: PastSprint): number[] {
  return [commitmentPoints + pulledInPoints, velocityPoints];
}

function advisedHeights({ range }: RangeAdvice): number[] {
  const advised = advisedRange(range);
  return [
    ...('lowPoints' in advised ? [advised.lowPoints] : []),
    ...('highPoints' in advised ? [advised.highPoints] : []),
  ];
}
