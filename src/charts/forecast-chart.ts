/** The release forecast: how the chance to be finished rises, and three dates on it. Pure. */

import type { LineSeriesOption, ScatterSeriesOption } from 'echarts';
import type { ForecastAdvice } from '../app/advice/advice.ts';
import { type NamedDate, namedDates, type ReleaseForecast, sprintEnd } from '../forecast/release-forecast.ts';
import { wholePercent } from '../words/amounts.ts';
import { dayTicks } from '../words/charts/day-ticks.ts';
import { dateLines, forecastHeading } from '../words/charts/forecast.ts';
import { say } from '../words/say.ts';
import {
  axisName,
  type ChartPicture,
  cardWidthPx,
  chartCard,
  edgePx,
  headingPx,
  palette,
  text,
} from './chart-theme.ts';
import { inLines, textWidthPx } from './text-width.ts';

const place = { left: 56, right: 152, top: headingPx + 34, height: 240 };
/** The narrowest plot that still shows how the chance rises. */
const leastPlotPx = 130;
const datesGapPx = 14;
const dateSymbols = { optimistic: 'triangle', likely: 'circle', pessimistic: 'rect' } as const;

/** Without a forecast, the heading says why. */
export function forecastChart(advice: ForecastAdvice): ChartPicture {
  const { forecast } = advice;
  if ('undefined' in forecast) return chartCard(forecastHeading(advice));
  const sprints = Math.max(1, forecast.chanceBySprint.length - 1);
  const dates = namedDates(forecast);
  const name = say('forecast-chart-sprint-ends');
  const left = Math.max(place.left, textWidthPx(name, 13) + 14 + edgePx);
  const wordsPx = Math.min(
    datesWidthPx(dates, advice),
    cardWidthPx - left - leastPlotPx - datesGapPx - edgePx,
  );
  const right = Math.max(place.right, datesGapPx + wordsPx + edgePx);
  const bandPx = (cardWidthPx - left - right) / sprints;
  return chartCard(forecastHeading(advice), place.top + place.height + 84, {
    grid: { ...place, left, right },
    xAxis: sprintAxis(advice, sprints, bandPx),
    yAxis: [
      {
        ...axisName(say('forecast-chart-chance'), 'end', 'left', 16),
        nameTextStyle: { ...text.quiet, align: 'left', padding: [0, 0, 0, 16 - left] },
        type: 'value',
        max: 1,
        interval: 0.2,
        axisLabel: { formatter: (chance: number) => wholePercent(chance) },
      },
      datesAxis(dates, advice, right - datesGapPx - edgePx),
    ],
    series: [
      chanceLine(forecast, bandPx),
      ...dates.flatMap((named) => dateMark(named, sprints)),
      ...dayMark(advice, sprints),
    ],
  });
}

/** Below a tick at the end of each sprint: its number and its date. */
function sprintAxis(advice: ForecastAdvice, sprints: number, bandPx: number) {
  const ends = Array.from({ length: sprints }, (_, index) => sprintEnd(advice, index + 1));
  // The last comes first, then every n-th before it.
  const each = Math.ceil(32 / bandPx);
  const isShown = (index: number) => (sprints - 1 - index) % each === 0;
  const labels = dayTicks(ends, isShown, { years: true });
  const customValues = ends.flatMap((_, index) => (isShown(index) ? [index + 1] : []));
  return {
    ...axisName(say('forecast-chart-sprint-ends'), 'start', 'right', 14),
    nameTextStyle: { align: 'right' as const, verticalAlign: 'top' as const, padding: [8, 0, 0, 0] },
    type: 'value' as const,
    max: sprints,
    splitLine: { show: false },
    axisLine: { show: true, lineStyle: { color: palette.axis } },
    axisTick: { show: true, customValues, lineStyle: { color: palette.axis } },
    axisLabel: {
      customValues,
      formatter: (sprint: number) => `{sprint|${sprint}}\n${labels[sprint - 1]}`,
      rich: { sprint: text.ink },
    },
  };
}

function datesWidthPx(dates: readonly NamedDate[], advice: ForecastAdvice): number {
  const widths = dates.flatMap((named) => {
    const [heading = '', date = '', sprint = ''] = dateLines(named, advice);
    return [textWidthPx(heading, 13), textWidthPx(date, 14, 'bold'), textWidthPx(sprint, 13)];
  });
  return Math.max(...widths);
}

/** The words of the three dates, at the heights of their chances; where they are too long, in more lines. */
function datesAxis(dates: readonly NamedDate[], advice: ForecastAdvice, widthPx: number) {
  const texts = new Map(dates.map((named) => [named.chance, dateLines(named, advice)]));
  const formatter = (chance: number) => {
    const [heading = '', date = '', sprint = ''] = texts.get(chance) ?? [];
    const broken = (words: string) => inLines(words, 13, widthPx).join('\n');
    return `${broken(heading)}\n{date|${date}}\n${broken(sprint)}`;
  };
  const rich = { date: { ...text.bold, lineHeight: 20 } };
  return {
    type: 'value' as const,
    position: 'right' as const,
    min: 0,
    max: 1,
    splitLine: { show: false },
    axisLabel: {
      margin: datesGapPx,
      customValues: [...texts.keys()],
      formatter,
      rich,
    },
  };
}

/** From nothing at the start to the last sprint, with a dot at the end of each where there is room. */
function chanceLine({ chanceBySprint }: ReleaseForecast, bandPx: number): LineSeriesOption {
  return {
    type: 'line',
    data: chanceBySprint.map((chance, sprint) => [sprint, chance]),
    symbolSize: bandPx >= 12 ? 6 : 0,
    itemStyle: { color: palette.left },
    lineStyle: { color: palette.left, width: 2.5 },
  };
}

/** From the date on the axis up to the line, and from there to its words. */
function dateMark({ name, chance, date }: NamedDate, sprints: number): ScatterSeriesOption[] {
  if ('undefined' in date) return [];
  const at = [date.sprints, chance];
  return [
    {
      type: 'scatter',
      symbol: dateSymbols[name],
      symbolSize: 13,
      itemStyle: { color: palette.card, borderColor: palette.today, borderWidth: 2 },
      data: [at],
      z: 5,
      markLine: {
        lineStyle: { color: palette.ideal, width: 1.5, type: [4, 4] },
        data: [
          [{ coord: [date.sprints, 0] }, { coord: at }],
          [{ coord: at }, { coord: [sprints, chance] }],
        ],
        z: 3,
      },
    },
  ];
}

/** The day that was asked about, where it lies within the picture. */
function dayMark({ byDay }: ForecastAdvice, sprints: number): ScatterSeriesOption[] {
  if (byDay === undefined || 'undefined' in byDay || byDay.sprints > sprints) return [];
  return [
    {
      type: 'scatter',
      symbol: 'diamond',
      symbolSize: 15,
      itemStyle: { color: palette.today, borderColor: palette.card, borderWidth: 2 },
      data: [[byDay.sprints, byDay.chance]],
      z: 6,
    },
  ];
}
