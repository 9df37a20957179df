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
  headingPx,
  marginPx,
  palette,
  symbols,
  text,
} from './chart-theme.ts';

const leftPx = 92;
const plotWidthPx = 90;
/** Where the columns of numbers begin, from the right end of the plot. */
const columnsPx = { chance: 12, cards: 80, median: 154 };

/** Without odds, the heading says why. */
export function oddsChart(advice: OddsAdvice): ChartPicture {
  const { odds } = advice;
  if ('undefined' in odds) return chartCard(oddsHeading(advice));
  const shown = sizesOfMostCards(odds.sizes, MOST_SIZES_SHOWN);
  const rowPx = Math.max(24, Math.min(40, 400 / shown.length));
  const plot = { top: headingPx + 46, height: Math.round(rowPx * shown.length) };
  const legendTop = plot.top + plot.height + 32;
  const dotSeries = [...dots(shown, false), ...dots(shown, true)];
  const rows = { type: 'category' as const, inverse: true };
  const splitLine = { show: true, lineStyle: { color: palette.gridLine } };
  return chartCard(oddsHeading(advice), legendTop + 24 * dotSeries.length + 34, {
    grid: { ...plot, left: leftPx, right: cardWidthPx - leftPx - plotWidthPx },
    xAxis: { type: 'value', max: 1, interval: 0.5, splitLine, axisLabel: { formatter: wholePercent } },
    yAxis: [
      {
        ...rows,
        ...axisName(say('odds-chart-estimate'), 'start', 'right', 18),
        nameTextStyle: { ...text.quiet, align: 'right', padding: [0, 8, 0, 0] },
        data: shown.map(({ estimatePoints }) => points(estimatePoints)),
        axisLabel: text.ink,
        splitLine,
      },
      {
        ...rows,
        ...column(say('odds-chart-chance'), columnsPx.chance),
        data: shown.map(({ likelyShare }) => `{chance|${wholePercent(likelyShare)}}`),
      },
      { ...rows, ...column(say('odds-chart-cards'), columnsPx.cards), data: shown.map(heldWords) },
      { ...rows, ...column(say('odds-chart-median'), columnsPx.median), data: shown.map(medianWords) },
    ],
    series: [...dotSeries, whiskers(shown), allSizes(odds.withSurprise / odds.cards)],
    legend: { left: marginPx, top: legendTop, orient: 'vertical', itemGap: 8 },
  });
}

/** A column of texts, one a row, with its head. */
function column(name: string, offset: number) {
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
