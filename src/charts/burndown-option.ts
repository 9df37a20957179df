/** Lays a burndown out as an ECharts option: title, axes, lines and bars. Pure; draws nothing. */
import type { BarSeriesOption, EChartsOption, LineSeriesOption } from 'echarts';
import type { Burndown } from '../sprint/burndown.ts';
import { burndownLabels } from './burndown-labels.ts';
import { type BurndownLayout, burndownLayout, burndownSize } from './burndown-layout.ts';
import { burndownSubtitle, burndownTitle } from './burndown-title.ts';
import { cardEdge, titles } from './chart-frame.ts';
import { dayTickLabels } from './day-tick-labels.ts';
import { palette } from './palette.ts';
import { pointsNumber } from './points-text.ts';
import { spacedPositions } from './spaced-positions.ts';

/** About as wide as a digit, rounded up. */
const digitPx = 8;

export function burndownOption(burndown: Burndown): EChartsOption {
  const layout = burndownLayout(burndown);
  return {
    title: titles(burndownTitle(burndown), burndownSubtitle(burndown), burndownSize),
    grid: [layout.leftPlot, layout.pulledInTrack, layout.surpriseTrack].map(gridOf),
    xAxis: dayAxes(burndown, layout),
    yAxis: pointsAxes(layout),
    series: [...lines(burndown, layout), ...bars(burndown, layout)],
    graphic: { elements: [cardEdge(burndownSize), ...burndownLabels(burndown, layout)] },
  };
}

function gridOf({ left, right, top, bottom }: BurndownLayout['leftPlot']) {
  return {
    left,
    right: burndownSize.widthPx - right,
    top,
    bottom: burndownSize.heightPx - bottom,
    outerBoundsMode: 'none' as const,
  };
}

/** Only the lowest plot writes the days; the others share them. */
function dayAxes({ days }: Burndown, { bandPx }: BurndownLayout) {
  const dates = days.map((day) => day.day);
  const labels = dayTickLabels(dates, bandPx);
  return [0, 1, 2].map((gridIndex) => ({
    type: 'category' as const,
    gridIndex,
    data: ['start', ...dates],
    axisTick: { show: false },
    axisLine: { lineStyle: { color: palette.axis } },
    axisLabel: {
      show: gridIndex === 2,
      interval: 0,
      // Leaves a row for the amounts under bars that hang below the line.
      margin: 17,
      color: palette.quietInk,
      fontSize: 13,
      lineHeight: 16,
      formatter: (_date: string, position: number) => labels[position] ?? '',
    },
  }));
}

function pointsAxes({ axis, trackPoints, surpriseFloorPoints }: BurndownLayout) {
  const track = { type: 'value' as const, show: false };
  return [
    {
      type: 'value' as const,
      gridIndex: 0,
      min: 0,
      max: axis.topPoints,
      interval: axis.stepPoints,
      axisLabel: { color: palette.quietInk, fontSize: 13, formatter: pointsNumber },
      splitLine: { lineStyle: { color: palette.gridLine } },
    },
    { ...track, gridIndex: 1, min: 0, max: trackPoints },
    { ...track, gridIndex: 2, min: surpriseFloorPoints, max: surpriseFloorPoints + trackPoints },
  ];
}

/** Both lines set out from the commitment. */
function lines({ commitmentPoints, days }: Burndown, { bandPx }: BurndownLayout): LineSeriesOption[] {
  const ideal: LineSeriesOption = {
    type: 'line',
    data: [commitmentPoints, ...days.map((day) => day.idealPoints)],
    symbol: 'none',
    lineStyle: { color: palette.ideal, width: 1.5, type: [6, 5] },
    z: 3,
  };
  const left: LineSeriesOption = {
    type: 'line',
    data: [commitmentPoints, ...days.map((day) => day.leftPoints ?? null)],
    symbol: 'circle',
    symbolSize: bandPx > 24 ? 9 : 6,
    showAllSymbol: true,
    itemStyle: { color: palette.left },
    lineStyle: { color: palette.left, width: 2.5 },
    clip: false,
    z: 4,
  };
  // Without a commitment there is no pace to hold.
  return commitmentPoints > 0 ? [ideal, left] : [left];
}

function bars({ days }: Burndown, { bandPx }: BurndownLayout): BarSeriesOption[] {
  const pulledIn = days.map((day) => day.pulledInPoints);
  const surprise = days.map((day) => day.surprisePoints);
  return [
    { ...bar(pulledIn, bandPx), xAxisIndex: 1, yAxisIndex: 1, itemStyle: { color: palette.pulledIn } },
    {
      ...bar(surprise, bandPx),
      xAxisIndex: 2,
      yAxisIndex: 2,
      itemStyle: { color: palette.surprise, decal: hatching, borderColor: palette.surprise, borderWidth: 1 },
    },
  ];
}

/** Slanted stripes in the card's colour, drawn as one tile: the canvas does not turn patterns. */
const hatching = {
  symbol: 'path://M0 4L4 0H6L0 6ZM6 4V6H4Z',
  symbolSize: 1,
  color: palette.card,
  dashArrayX: [6, 0],
  dashArrayY: [6, 0],
};

/** Bars with their amounts at their ends; where bars are too close for that, the largest amounts come first. */
function bar(amounts: readonly number[], bandPx: number): BarSeriesOption {
  const largestFirst = amounts
    .map((_, index) => index)
    .filter((index) => amounts[index] !== 0)
    .sort((a, b) => Math.abs(amounts[b] ?? 0) - Math.abs(amounts[a] ?? 0) || a - b);
  const labels = amounts.map((amount) => (amount > 0 ? `+${pointsNumber(amount)}` : pointsNumber(amount)));
  const labelPx = (Math.max(0, ...labels.map((label) => label.length)) + 1) * digitPx;
  const labelled = spacedPositions(largestFirst, labelPx / bandPx);
  return {
    type: 'bar',
    barWidth: Math.min(28, Math.max(3, bandPx * 0.5)),
    clip: false,
    data: [
      null,
      ...amounts.map((amount, index) => ({
        // A bar of nothing would still show its outline.
        value: amount === 0 ? null : amount,
        label: {
          show: labelled.has(index),
          position: amount < 0 ? ('bottom' as const) : ('top' as const),
          distance: 3,
          color: palette.ink,
          fontSize: 13,
          textBorderColor: palette.card,
          textBorderWidth: 4,
          formatter: labels[index] ?? '',
        },
      })),
    ],
  };
}
