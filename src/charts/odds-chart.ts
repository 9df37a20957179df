/** The surprise odds: a dot and its whiskers for each size, and the same in numbers beside it. Pure. */

import type { ScatterSeriesOption } from 'echarts';
import type { OddsAdvice } from '../app/advice/advice.ts';
import { MOST_SIZES_SHOWN, sizesOfMostCards } from '../app/advice/shown-in-chart.ts';
import { LITTLE_HISTORY_CARDS, type SurpriseOdds } from '../forecast/surprise-odds.ts';
import { points, wholePercent } from '../words/amounts.ts';
import { heldWords, medianWords, oddsHeading } from '../words/charts/odds.ts';
import { say } from '../words/say.ts';
import {
  axisName,
  type ChartPicture,
  cardWidthPx,
  chartCard,
  edgePx,
  headingPx,
  keyBelow,
  palette,
  symbols,
  text,
} from './chart-theme.ts';
import { inLines, textWidthPx } from './text-width.ts';

/** At least: for the estimates at the left, and for each column of numbers with the gap behind it. */
const leastPx = { left: 92, chance: 68, cards: 74, median: 59 };
const columns = ['chance', 'cards', 'median'] as const;
/** From the plot to the first column. */
const firstColumnPx = 12;
const columnGapPx = 8;
/** Of a plot in which the half can be named as well. */
const halvesPx = 80;
const rowTextPx = 16;
const keyRowPx = 24;

/** Without odds, the heading says why. */
export function oddsChart(advice: OddsAdvice): ChartPicture {
  const { odds } = advice;
  if ('undefined' in odds) return chartCard(oddsHeading(advice));
  const shown = sizesOfMostCards(odds.sizes, MOST_SIZES_SHOWN);
  const rowPx = Math.max(24, Math.min(40, 400 / shown.length));
  const estimates = shown.map(({ estimatePoints }) => points(estimatePoints));
  const estimate = say('odds-chart-estimate');
  const cells = {
    chance: shown.map(({ likelyShare }) => wholePercent(likelyShare)),
    cards: shown.map(heldWords),
    median: shown.map(medianWords),
  };
  const left = Math.max(leastPx.left, widestPx([...estimates, estimate]) + columnGapPx + edgePx);
  const widths = columns.map((column) => Math.max(leastPx[column], widestPx(cells[column]) + columnGapPx));
  const offsets = widths.map((_, i) => widths.slice(0, i).reduce((sum, width) => sum + width, firstColumnPx));
  // Heads that are wider than their columns take more lines.
  const heads = columns.map((column, i) =>
    inLines(say(`odds-chart-${column}`), 13, (widths[i] ?? 0) - columnGapPx),
  );
  const top = headingPx + 46 + Math.max(0, ...heads.map((lines) => lines.length - 2)) * rowTextPx;
  const right = widths.reduce((sum, width) => sum + width, firstColumnPx) + edgePx;
  const hasRoom = cardWidthPx - left - right >= halvesPx;
  const plot = { top, left, height: Math.round(rowPx * shown.length) };
  const series = [...dots(shown, false), ...dots(shown, true), whiskers(shown)];
  const key = keyBelow(
    series.map(({ name }) => `${name}`),
    plot.top + plot.height + 32,
    keyRowPx,
  );
  const rows = { type: 'category' as const, inverse: true };
  const splitLine = { show: true, lineStyle: { color: palette.gridLine } };
  const columnAxis = (data: readonly string[], i: number) => ({
    ...rows,
    ...columnLook(heads[i]?.join('\n') ?? '', offsets[i] ?? 0),
    data: [...data],
  });
  return chartCard(oddsHeading(advice), plot.top + plot.height + 42 + key.heightPx, {
    grid: { ...plot, right },
    xAxis: {
      type: 'value',
      max: 1,
      interval: hasRoom ? 0.5 : 1,
      splitLine,
      axisLabel: { formatter: wholePercent },
    },
    yAxis: [
      {
        ...rows,
        ...axisName(estimate, 'start', 'right', 18),
        nameTextStyle: { ...text.quiet, align: 'right', padding: [0, 8, 0, 0] },
        data: estimates,
        axisLabel: text.ink,
        splitLine,
      },
      columnAxis(
        cells.chance.map((chance) => `{chance|${chance}}`),
        0,
      ),
      columnAxis(cells.cards, 1),
      columnAxis(cells.median, 2),
    ],
    series: [...series, allSizes(odds.withSurprise / odds.cards)],
    legend: key.legend,
  });
}

function widestPx(texts: readonly string[]): number {
  return Math.max(0, ...texts.map((one) => textWidthPx(one, 13)));
}

/** A column of texts, one a row, with its head. */
function columnLook(name: string, offset: number) {
  const rich = { chance: text.bold };
  return {
    ...axisName(name, 'start', 'left', 18),
    position: 'right' as const,
    offset,
    axisLine: { show: false },
    axisLabel: { ...text.ink, margin: 0, rich },
  };
}

/** Open and cornered where the share is drawn towards the other sizes, else filled and round. */
function dots(shown: readonly SurpriseOdds[], borrowing: boolean): ScatterSeriesOption[] {
  const data = shown.flatMap(({ borrows, likelyShare }, row) =>
    borrows === borrowing ? [[likelyShare, row]] : [],
  );
  const outline = { borderColor: palette.surprise, borderWidth: 2 };
  const look = borrowing
    ? {
        name: say('odds-chart-borrows', { cards: LITTLE_HISTORY_CARDS }),
        symbol: 'diamond',
        symbolSize: 14,
        itemStyle: { ...outline, color: palette.card },
      }
    : { name: say('odds-chart-own'), symbolSize: 12, itemStyle: { ...outline, color: palette.surprise } };
  return data.length === 0 ? [] : [{ ...look, type: 'scatter', data, z: 4 }];
}

/** A line from end to end of each interval. */
function whiskers(shown: readonly SurpriseOdds[]): ScatterSeriesOption {
  const ends = shown.map(({ likelyInterval: { low, high } }, row): [Coord, Coord] => [
    { coord: [low, row] },
    { coord: [high, row] },
  ]);
  const lineStyle = { color: palette.surprise, width: 2, type: 'solid' as const };
  return {
    type: 'scatter',
    name: say('odds-chart-interval'),
    symbol: symbols.whiskers,
    itemStyle: { color: palette.surprise },
    markLine: { symbol: 'rect', symbolSize: [2, 11], symbolRotate: 0, lineStyle, data: ends, z: 3 },
  };
}
interface Coord {
  coord: [number, number];
}

/** A dashed upright line. */
function allSizes(share: number): ScatterSeriesOption {
  const align: 'left' | 'right' | 'center' = share < 0.25 ? 'left' : share > 0.75 ? 'right' : 'center';
  const formatter = say('odds-chart-all-sizes', { share });
  const label = { ...text.quiet, show: true, formatter, position: 'start' as const, distance: 6, align };
  const lineStyle = { color: palette.ideal, width: 1.5, type: [6, 5] };
  return { type: 'scatter', markLine: { z: 1, lineStyle, label, data: [{ xAxis: share }] } };
}
