/**
 * Where things stand in the history picture, in layout pixels. Pure; draws nothing.
 * Small panels in two columns, all on the same axis of sprints; the last row of each column writes the dates.
 */
import type { Box, ChartSize } from './chart-frame.ts';

const widthPx = 800;
const columns = [
  { left: 68, right: 284 },
  { left: 462, right: 678 },
] as const;
const firstPlotTop = 108;
const plotPx = 106;
const rowPx = 152;
const datesPx = 44;
const keyRowPx = 22;
const keyColumnPx = 252;

export interface KeyPlace {
  readonly left: number;
  /** The middle of its first row. */
  readonly top: number;
  readonly perRow: number;
  readonly columnPx: number;
  readonly rowPx: number;
}

export interface HistoryLayout {
  readonly size: ChartSize;
  /** One for each panel, row by row. */
  readonly plots: readonly Box[];
  /** Width of a sprint. */
  readonly bandPx: number;
  /** Where what the shapes mean is written: its entries, row by row. */
  readonly key: KeyPlace;
  /** Whether nothing stands below the panel, so that it writes the dates. */
  writesDates(panel: number): boolean;
  xOf(plot: Box, index: number): number;
}

export function historyLayout(panels: number, sprints: number): HistoryLayout {
  const rows = Math.ceil(panels / 2);
  const plots = Array.from({ length: panels }, (_, panel): Box => {
    const column = columns[panel % 2 === 0 ? 0 : 1];
    const top = firstPlotTop + Math.floor(panel / 2) * rowPx;
    return { ...column, top, bottom: top + plotPx };
  });
  const bandPx = (columns[0].right - columns[0].left) / Math.max(1, sprints);
  const panelsBottom = firstPlotTop + (rows - 1) * rowPx + plotPx + datesPx;
  const columnSize = { columnPx: keyColumnPx, rowPx: keyRowPx };
  // An odd panel leaves a place free at its right, else the key stands below all.
  const key: KeyPlace =
    panels % 2 === 1
      ? { left: 420, top: panelsBottom - datesPx - plotPx + 14, perRow: 1, ...columnSize }
      : { left: 22, top: panelsBottom + 12, perRow: 3, ...columnSize };
  return {
    size: { widthPx, heightPx: panelsBottom + (panels % 2 === 1 ? 8 : 2 * keyRowPx + 14) },
    plots,
    bandPx,
    key,
    writesDates: (panel) => panel >= panels - 2,
    xOf: (plot, index) => plot.left + (index + 0.5) * bandPx,
  };
}
