/**
 * Where things stand in the picture of surprise odds, in layout pixels. Pure; draws nothing.
 * One row a size; across each row first the chance on an axis from 0 to 100%, then its numbers.
 */
import type { SurpriseOdds } from '../forecast/surprise-odds.ts';
import type { Box, ChartSize } from './chart-frame.ts';

/** More rows would be too small to read. */
export const mostRows = 30;

const widthPx = 800;
const firstRowTop = 128;
const belowRowsPx = 96;

/** Where each column of text starts; that of the sizes ends there. */
export const oddsColumns = { sizeEnd: 92, share: 436, interval: 488, cards: 572, surprise: 714 } as const;

export interface OddsLayout {
  readonly size: ChartSize;
  readonly plot: Box;
  readonly rowPx: number;
  xOf(share: number): number;
  /** The middle of a row. */
  yOf(row: number): number;
}

export function oddsLayout(rows: number): OddsLayout {
  const rowPx = Math.max(25, Math.min(42, 420 / Math.max(1, rows)));
  const plot = { left: 110, right: 410, top: firstRowTop, bottom: firstRowTop + Math.round(rows * rowPx) };
  return {
    size: { widthPx, heightPx: plot.bottom + belowRowsPx },
    plot,
    rowPx,
    xOf: (share) => plot.left + share * (plot.right - plot.left),
    yOf: (row) => plot.top + (row + 0.5) * rowPx,
  };
}

/** The sizes of most cards, at most thirty, by size. */
export function shownOdds(sizes: readonly SurpriseOdds[]): readonly SurpriseOdds[] {
  if (sizes.length <= mostRows) return sizes;
  const mostCards = sizes.toSorted((a, b) => b.cards - a.cards || a.estimatePoints - b.estimatePoints);
  return mostCards.slice(0, mostRows).toSorted((a, b) => a.estimatePoints - b.estimatePoints);
}
