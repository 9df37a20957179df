/** How the dates of the kept bodies of work moved: a panel for each, the days of telling across, the dates told upward. Pure. */
import type { EChartsOption, LineSeriesOption, ScatterSeriesOption } from 'echarts';
import type { KeptAdvice } from '../app/advice/advice.ts';
import type { ToldDates } from '../app/bodies/body-of-work.ts';
import { type DrawnBody, drawnBodies } from '../app/bodies/moved-dates.ts';
import { type Day, dayPlus, daysBetween } from '../sprint/calendar.ts';
import { shortDate } from '../words/amounts.ts';
import { dayTicks } from '../words/charts/day-ticks.ts';
import { keptHeading } from '../words/charts/kept.ts';
import { say } from '../words/say.ts';
import { spread } from './chart-scales.ts';
import {
  type ChartPicture,
  cardWidthPx,
  chartCard,
  headingPx,
  keyBelow,
  marginPx,
  palette,
  panelWidthPx,
  symbols,
  text,
} from './chart-theme.ts';

const panelPx = { width: 152, height: 96 };
const rowPx = 184;
const left = 92;
const firstTop = headingPx + 18;
/** Between words beside a panel. */
const wordGapPx = 17;
/** Days under a panel, which need so much room each. */
const dayLabelPx = 34;
/** A narrower span would make much of a day. */
const LEAST_SPAN_DAYS = 14;
const EPOCH = '2000-01-01';

/** ECharts takes places as numbers. */
function placeOf(day: Day): number {
  return daysBetween(EPOCH, day);
}

function dayAtPlace(place: number): Day {
  return dayPlus(EPOCH, place);
}

export function keptChart(advice: KeptAdvice): ChartPicture {
  const { drawn } = drawnBodies(advice);
  const bottom = firstTop + (drawn.length - 1) * rowPx + panelPx.height + 70;
  const series = keySeries(drawn);
  const key = keyBelow(
    series.map(({ name }) => `${name}`),
    bottom,
  );
  const beside = drawn.flatMap(({ tellings }) => datesSaid(tellings));
  const width = panelWidthPx(panelPx.width, left + wordGapPx, beside);
  const tops = drawn.map((_, index) => firstTop + index * rowPx);
  return chartCard(keptHeading(advice), bottom + key.heightPx + 8, {
    title: drawn.map(({ name }, index) => ({
      text: name,
      ...{ left: marginPx, top: (tops[index] ?? 0) - 28 },
      textStyle: {
        ...text.bold,
        width: cardWidthPx - 2 * marginPx,
        overflow: 'truncate' as const,
        ellipsis: '…',
      },
    })),
    grid: tops.map((top) => ({ ...panelPx, width, left, top })),
    xAxis: drawn.map((body, index) => toldAxis(body, width, index)),
    yAxis: drawn.flatMap(dateAxes),
    series: [
      ...series,
      ...drawn.flatMap((body, index) =>
        panelSeries(body).map((one) => ({ ...one, xAxisIndex: index, yAxisIndex: 2 * index })),
      ),
    ],
    legend: key.legend,
  });
}

function toldAxis({ tellings }: DrawnBody, widthPx: number, gridIndex: number) {
  const days = tellings.map(({ toldOn }) => toldOn);
  const places = days.map(placeOf);
  const [min = 0, max = 1] = [places[0], places.at(-1)];
  // From the last on, those that have room beside each other.
  const shown = new Set<number>();
  let next = Number.POSITIVE_INFINITY;
  for (const place of places.toReversed()) {
    const px = ((place - min) / (max - min)) * widthPx;
    if (px > next - dayLabelPx) continue;
    shown.add(place);
    next = px;
  }
  const labels = dayTicks(days, (index) => shown.has(places[index] as number), { years: true });
  const labelOf = new Map(places.map((place, index) => [place, labels[index]]));
  return {
    type: 'value' as const,
    gridIndex,
    ...{ min, max },
    splitLine: { show: false },
    axisLine: { show: true, onZero: false, lineStyle: { color: palette.axis } },
    axisTick: { show: true, customValues: [...shown], lineStyle: { color: palette.axis } },
    axisLabel: { customValues: [...shown], formatter: (place: number) => labelOf.get(place) ?? '' },
  };
}

/** Left three dates, right those that are told now. */
function dateAxes({ tellings }: DrawnBody, gridIndex: number) {
  const places = tellings.flatMap(datesTold).map(placeOf);
  const span = Math.max(LEAST_SPAN_DAYS, Math.max(...places) - Math.min(...places));
  const min = Math.floor((Math.min(...places) + Math.max(...places) - span) / 2) - 1;
  const max = min + span + 2;
  const said = datesSaid(tellings);
  const heights = spread(
    said.map(({ place }) => place),
    (wordGapPx * (max - min)) / panelPx.height,
    { low: min, high: max },
  );
  const formatter = (height: number) => {
    const word = said[heights.indexOf(height)];
    return word?.bold ? `{bold|${word.text}}` : (word?.text ?? '');
  };
  const value = { type: 'value' as const, gridIndex, ...{ min, max } };
  const ticks = [min, Math.round((min + max) / 2), max];
  return [
    {
      ...value,
      splitLine: { show: false },
      axisLabel: {
        margin: 8,
        customValues: ticks,
        formatter: (place: number) => shortDate(dayAtPlace(place)),
      },
    },
    {
      ...value,
      position: 'right' as const,
      splitLine: { show: false },
      axisLabel: {
        margin: 10,
        customValues: heights,
        formatter,
        rich: { bold: { ...text.bold, fontSize: 13 } },
      },
    },
  ] satisfies EChartsOption['yAxis'];
}

function datesSaid(tellings: readonly ToldDates[]) {
  const now = tellings.at(-1);
  const { optimisticOn: optimistic, likelyOn: likely, pessimisticOn: pessimistic } = now ?? {};
  return [
    ...(pessimistic ? [besideText(pessimistic, say('kept-chart-pessimistic', { pessimistic }))] : []),
    ...(likely ? [besideText(likely, say('kept-chart-likely', { likely }), true)] : []),
    ...(optimistic ? [besideText(optimistic, say('kept-chart-optimistic', { optimistic }))] : []),
  ];
}

function besideText(on: Day, text: string, bold = false) {
  return { place: placeOf(on), text, bold };
}

function datesTold({ optimisticOn, likelyOn, pessimisticOn }: ToldDates): Day[] {
  return [optimisticOn, likelyOn, pessimisticOn].filter((day) => day !== undefined);
}

const dot = { type: 'scatter', symbol: 'circle', symbolSize: 7, z: 4 } as const;
const outline = { borderColor: palette.left, borderWidth: 1.5 };
const looks = {
  likely: { ...dot, itemStyle: { ...outline, color: palette.left } },
  stale: { ...dot, itemStyle: { ...outline, color: palette.card } },
  ends: { ...dot, symbol: symbols.dashes, itemStyle: { color: palette.ideal } },
} satisfies Record<string, ScatterSeriesOption>;

function panelSeries({ tellings }: DrawnBody): LineSeriesOption[] {
  const line = (dateOf: (told: ToldDates) => Day | undefined) =>
    tellings.map((told) => {
      const on = dateOf(told);
      return [placeOf(told.toldOn), on === undefined ? Number.NaN : placeOf(on)];
    });
  const end = {
    type: 'line' as const,
    symbolSize: 0,
    lineStyle: { color: palette.ideal, width: 1.5, type: [5, 3] },
  };
  return [
    { ...end, data: line(({ optimisticOn }) => optimisticOn) },
    { ...end, data: line(({ pessimisticOn }) => pessimisticOn) },
    {
      type: 'line',
      symbolSize: 7,
      lineStyle: { color: palette.left, width: 2 },
      itemStyle: outline,
      data: line(({ likelyOn }) => likelyOn).map((value, index) => ({
        value,
        itemStyle: { color: isStale(tellings[index]) ? palette.card : palette.left },
      })),
    },
  ];
}

function isStale(told: ToldDates | undefined): boolean {
  return (told?.sprintsSinceSaid ?? 0) > 0;
}

/** What the shapes mean, of those that are there. */
function keySeries(drawn: readonly DrawnBody[]): ScatterSeriesOption[] {
  const isAnyStale = drawn.some(({ tellings }) => tellings.some(isStale));
  const entries = ['likely', 'ends', ...(isAnyStale ? (['stale'] as const) : [])] as const;
  return entries.map(
    (entry): ScatterSeriesOption => ({ ...looks[entry], name: say(`kept-chart-key-${entry}`), data: [] }),
  );
}
