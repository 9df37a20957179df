/** What every panel of the history has: heading, axis, lines of values, and words at its right. Pure. */

import type { Interval } from '../forecast/interval.ts';
import type { Day } from '../sprint/calendar.ts';
import { isDefined, type Ratio } from '../sprint/undefined-value.ts';
import type { Box } from './chart-frame.ts';
import { dateWithYear } from './day-text.ts';
import { lineMark, type Mark, type Point, textMark } from './marks.ts';
import { palette } from './palette.ts';
import type { RatioAxis } from './ratio-axis.ts';
import { shortShare } from './short-share.ts';
import { spreadLabels } from './spread-labels.ts';

export const smallTextPx = 12;
const rightWordGapPx = 14;

/** Heights in a panel. */
export type HeightOf = (value: number) => number;

export function heightOf({ top, bottom }: Box, { low, high }: RatioAxis): HeightOf {
  return (value) => bottom - ((value - low) / (high - low)) * (bottom - top);
}

/** The name of the panel and, where growth is shown, which sprint it is measured by. */
export function headingMarks(text: string, { left, right, top }: Box, measuredBy?: Day): Mark[] {
  const y = top - 20;
  const name = textMark({ text, x: left - 46, y, bold: true });
  if (measuredBy === undefined) return [name];
  const note = `100% = sprint to ${dateWithYear(measuredBy)}`;
  const look = { align: 'right' as const, fill: palette.quietInk, fontSizePx: smallTextPx };
  return [name, textMark({ text: note, x: right + 108, y, ...look })];
}

export function axisMarks(plot: Box, axis: RatioAxis, yOf: HeightOf): Mark[] {
  const steps = Math.round((axis.high - axis.low) / axis.step);
  return Array.from({ length: steps + 1 }, (_, step): Mark[] => {
    const value = axis.low + step * axis.step;
    const y = Math.round(yOf(value)) + 0.5;
    return [
      lineMark(
        [
          [plot.left, y],
          [plot.right, y],
        ],
        { stroke: step === 0 ? palette.axis : palette.gridLine },
      ),
      textMark({
        text: shortShare(value),
        x: plot.left - 7,
        y,
        align: 'right',
        fill: palette.quietInk,
        fontSizePx: smallTextPx,
      }),
    ];
  }).flat();
}

/** A level line across the panel. */
export function levelMark(
  value: number,
  plot: Box,
  yOf: HeightOf,
  look: Parameters<typeof lineMark>[1],
): Mark {
  const y = yOf(value);
  return lineMark(
    [
      [plot.left, y],
      [plot.right, y],
    ],
    look,
  );
}

/** Runs of neighbours that are defined: what is undefined leaves a gap. */
export function runsOf(values: readonly Ratio[], at: (index: number, value: number) => Point): Point[][] {
  const runs: Point[][] = [[]];
  values.forEach((value, index) => {
    if (isDefined(value)) runs.at(-1)?.push(at(index, value));
    else runs.push([]);
  });
  return runs.filter((run) => run.length > 0);
}

export interface RightWord {
  readonly text: string;
  readonly value: number;
  readonly bold?: boolean;
}

/** Words beside the heights that they name, moved apart. */
export function rightWords(words: readonly RightWord[], plot: Box, yOf: HeightOf): Mark[] {
  const heights = spreadLabels(
    words.map(({ value }) => yOf(value)),
    rightWordGapPx,
    { top: plot.top - 2, bottom: plot.bottom + 1 },
  );
  return words.map(({ text, bold = false }, index) =>
    textMark({
      text,
      x: plot.right + 8,
      y: heights[index] ?? 0,
      bold,
      fontSizePx: bold ? 13 : smallTextPx,
      fill: bold ? palette.ink : palette.quietInk,
    }),
  );
}

/** From the lowest to the highest of these. */
export function spanOf(values: readonly number[]): Interval {
  return { low: Math.min(...values), high: Math.max(...values) };
}
