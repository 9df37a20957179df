/** How all charts look, for ECharts to fill in where a chart says nothing else, and the card that they are drawn on. */
import type { EChartsOption } from 'echarts';
import type { ChartHeading } from '../words/charts/chart-text.ts';
import { say } from '../words/say.ts';
import { chartFont, drawableText } from './chart-font.ts';
import { inLines, textWidthPx } from './text-width.ts';

/**
 * The colours of every chart. Nothing here may be the only carrier of a meaning: each mark also has its own
 * shape, line style or hatching, and a direct label.
 *
 * Charts bring their own opaque card, because the chat shows them on light and on dark.
 * The hues are from the palette of Okabe and Ito, "Color Universal Design" (2008), which people with any
 * common form of colour blindness can tell apart.
 */
export const palette = {
  card: '#ffffff',
  /** Keeps the card apart from a white chat; it carries nothing. */
  cardEdge: '#c9d1d6',
  gridLine: '#e6eaec',
  ink: '#1d2a33',
  quietInk: '#56646e',
  axis: '#7b8790',
  /** Okabe-Ito blue. */
  left: '#0072b2',
  ideal: '#6b7780',
  /** Okabe-Ito bluish green. */
  pulledIn: '#009e73',
  /** Okabe-Ito vermillion. */
  surprise: '#d55e00',
  today: '#1d2a33',
  /** Okabe-Ito blue: what was finished, as in the line of points left. */
  velocity: '#0072b2',
  commitment: '#6b7780',
  /** Okabe-Ito reddish purple: what is advised. */
  advice: '#cc79a7',
  adviceFill: '#f8e9f1',
  /** Okabe-Ito vermillion. */
  signal: '#d55e00',
  /** Where ordinary variation lies, behind the line; its edges and words carry it. */
  ordinaryFill: '#f0f3f5',
} as const;

const quiet = { color: palette.quietInk, fontSize: 13, lineHeight: 16, fontWeight: 'normal' } as const;
const ink = { ...quiet, color: palette.ink } as const;
export const text = {
  quiet,
  ink,
  bold: { ...ink, fontSize: 14, fontWeight: 'bold' },
  /** Keeps letters readable where a line passes behind them. */
  halo: { textBorderColor: palette.card, textBorderWidth: 4 },
} as const;

/** So narrow that its letters, 13 px and more, are at least 11 px high where a phone shows the card 340 px wide. */
export const cardWidthPx = 400;
export const marginPx = 16;
/** Nothing comes nearer to the edge. */
export const edgePx = 5;
const lineWidth = { width: cardWidthPx - 2 * marginPx, ellipsis: '…' } as const;
const names = { nameRotate: 0, nameMoveOverlap: false, nameTextStyle: quiet };
const still = { silent: true, clip: false };

export const chartTheme = {
  textStyle: { fontFamily: chartFont, color: palette.ink },
  title: { left: marginPx, padding: 0, itemGap: 4 },
  legend: { padding: 0, itemGap: 14, itemWidth: 14, itemHeight: 12, textStyle: quiet },
  grid: { outerBoundsMode: 'none' },
  categoryAxis: {
    ...names,
    axisLine: { lineStyle: { color: palette.axis } },
    axisTick: { show: false },
    axisLabel: { ...quiet, interval: 0 },
  },
  valueAxis: {
    ...names,
    axisLine: { show: false },
    axisTick: { show: false },
    splitLine: { lineStyle: { color: palette.gridLine } },
    axisLabel: quiet,
  },
  line: { ...still, symbol: 'circle', showAllSymbol: true },
  bar: still,
  scatter: { ...still, itemStyle: { opacity: 1 } },
  markLine: { silent: true, symbol: 'none', label: { show: false } },
  markPoint: { silent: true, label: { show: false } },
  markArea: { silent: true },
};

export interface ChartPicture {
  readonly option: EChartsOption;
  readonly size: { readonly widthPx: number; readonly heightPx: number };
}

/** Below a heading whose second line wraps twice. */
export const headingPx = 108;
const subtitleText = { ...quiet, fontSize: 14, lineHeight: 18 } as const;

/**
 * A card as high as it needs to be; with a heading alone where that says why there is no picture.
 *
 * @param parts as they lie below a heading of so many lines; below a longer one they lie lower
 */
export function chartCard(
  { title, name, subtitle }: ChartHeading,
  partsHeightPx = headingPx + 14,
  partsAsTheyLie: EChartsOption = {},
  roomForLines = 3,
): ChartPicture {
  const { length: lines } = inLines(subtitle, subtitleText.fontSize, lineWidth.width);
  const lowerPx = Math.max(0, lines - roomForLines) * subtitleText.lineHeight;
  const heightPx = partsHeightPx + lowerPx;
  const parts = lowered(partsAsTheyLie, lowerPx);
  const drawableName = drawableText(name);
  const heading = {
    text: drawableName === undefined ? title : say('chart-title', { title, name: drawableName }),
    subtext: subtitle,
    top: 14,
    textStyle: { ...text.bold, ...lineWidth, fontSize: 18, lineHeight: 26, overflow: 'truncate' as const },
    subtextStyle: { ...subtitleText, ...lineWidth, overflow: 'break' as const },
  };
  const edge = {
    type: 'rect' as const,
    shape: { x: 0.5, y: 0.5, width: cardWidthPx - 1, height: heightPx - 1 },
    style: { fill: 'none', stroke: palette.cardEdge, lineWidth: 1 },
  };
  const titles = Array.isArray(parts.title) ? parts.title : [];
  const option = { animation: false, backgroundColor: palette.card, ...parts, graphic: { elements: [edge] } };
  return { option: { ...option, title: [heading, ...titles] }, size: { widthPx: cardWidthPx, heightPx } };
}

/** All that has a height of its own. */
function lowered({ grid, title, legend, ...others }: EChartsOption, px: number): EChartsOption {
  const lower = <Part>(part: Part): Part => {
    if (Array.isArray(part)) return part.map(lower) as Part;
    const top = (part as { readonly top?: unknown } | undefined)?.top;
    return typeof top === 'number' ? { ...part, top: top + px } : part;
  };
  return { ...others, grid: lower(grid), title: lower(title), legend: lower(legend) } as EChartsOption;
}

/** How wide a panel can be beside texts at its right. @param takenPx at its left, and between it and them */
export function panelWidthPx(
  mostPx: number,
  takenPx: number,
  beside: readonly { readonly text: string; readonly bold?: boolean }[],
): number {
  const widths = beside.map(({ text, bold }) => textWidthPx(text, quiet.fontSize, bold ? 'bold' : 'normal'));
  return Math.min(mostPx, cardWidthPx - takenPx - Math.max(0, ...widths));
}

const keyEntryPx = { mark: 14, gap: 5 };

/** What the shapes mean, an entry below the other, with room for those that wrap. */
export function keyBelow(names: readonly string[], top: number, rowPx = 22) {
  const width = cardWidthPx - 2 * marginPx - keyEntryPx.mark - keyEntryPx.gap;
  const lines = names.reduce((sum, name) => sum + inLines(name, quiet.fontSize, width).length, 0);
  const itemGap = rowPx - quiet.lineHeight;
  return {
    heightPx: lines * quiet.lineHeight + names.length * itemGap,
    legend: {
      ...{ data: [...names], left: marginPx, top, orient: 'vertical' as const, itemGap },
      textStyle: { ...quiet, width, overflow: 'break' as const },
    },
  };
}

/** A text at an end of an axis, level. */
export function axisName(
  name: string,
  nameLocation: 'start' | 'middle' | 'end',
  align: Align,
  nameGap: number,
) {
  return { name, nameLocation, nameGap, nameTextStyle: { ...quiet, align } };
}
type Align = 'left' | 'right';

/** Symbols that ECharts has not. */
export const symbols = {
  tick: 'path://M0 7L2 5L5 8.5L11 0L13 1.5L5.5 12Z',
  cross: 'path://M0 1.5L1.5 0L6 4.5L10.5 0L12 1.5L7.5 6L12 10.5L10.5 12L6 7.5L1.5 12L0 10.5L4.5 6Z',
  arrow: 'path://M5 0H7V22L11 18L12 19.5L6 26L0 19.5L1 18L5 22Z',
  whiskers: 'path://M0 0H2V5H18V0H20V12H18V7H2V12H0Z',
  thickLine: 'path://M0 0H16V5H0Z',
  dashes: 'path://M0 0H6V2H0ZM10 0H16V2H10Z',
  band: 'path://M0 6H16V8H0ZM0 0h3v1h-3ZM3 13h3v1h-3ZM5 0h3v1h-3ZM8 13h3v1h-3ZM10 0h3v1h-3ZM13 13h3v1h-3Z',
} as const;
