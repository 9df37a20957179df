/** What frames every chart: the two lines above it and the edge of its card. Pure; draws nothing. */
import { palette } from './palette.ts';

/** In layout pixels. */
export interface ChartSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A part of the picture, in layout pixels from its top left corner. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Space left and right of the title. */
const marginPx = 20;

/** Title and subtitle of an ECharts option, cut off with an ellipsis where they are too long for one line. */
export function titles(title: string, subtitle: string, { widthPx }: ChartSize) {
  const truncated = { width: widthPx - 2 * marginPx, overflow: 'truncate', ellipsis: '…' } as const;
  return {
    text: title,
    subtext: subtitle,
    left: marginPx,
    top: 16,
    padding: 0,
    itemGap: 6,
    textStyle: {
      fontSize: 20,
      lineHeight: 26,
      fontWeight: 'bold' as const,
      color: palette.ink,
      ...truncated,
    },
    subtextStyle: { fontSize: 14, lineHeight: 18, color: palette.quietInk, ...truncated },
  };
}

/** A thin line around the card, which keeps it apart from a white chat. */
export function cardEdge({ widthPx, heightPx }: ChartSize) {
  return {
    type: 'rect' as const,
    silent: true,
    shape: { x: 0.5, y: 0.5, width: widthPx - 1, height: heightPx - 1 },
    style: { fill: 'none', stroke: palette.cardEdge, lineWidth: 1 },
  };
}
