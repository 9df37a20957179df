/** The last days of sprints, written under an axis. */
import type { Day } from '../sprint/calendar.ts';
import { dateTickLabels } from './date-tick-labels.ts';
import type { Mark } from './marks.ts';
import { textMark } from './marks.ts';
import { palette } from './palette.ts';

const rowPx = 16;

export interface DateAxis {
  /** Width of one sprint. */
  readonly bandPx: number;
  /** Where the axis lies. */
  readonly bottomPx: number;
  readonly fontSizePx?: number;
  xOf(index: number): number;
}

export function dateMarks(days: readonly Day[], { bandPx, bottomPx, fontSizePx, xOf }: DateAxis): Mark[] {
  return dateTickLabels(days, bandPx).flatMap((label, index) =>
    label
      .split('\n')
      .filter((text) => text !== '')
      .map((text, row) =>
        textMark({
          text,
          x: xOf(index),
          y: bottomPx + (row + 1) * rowPx,
          align: 'center',
          fill: palette.quietInk,
          ...(fontSizePx === undefined ? {} : { fontSizePx }),
        }),
      ),
  );
}
