/**
 * The history: a small panel for each ratio, with what is ordinary for it, its thresholds and its latest value; and one
 * for the recorded value beside velocity. Pure.
 */
import type { EChartsOption, LineSeriesOption, ScatterSeriesOption, SeriesOption } from 'echarts';
import type { HistoryAdvice } from '../app/advice/advice.ts';
import {
  type HistoryWindow,
  historyWindow,
  type ShownRatio,
  type ShownSprint,
} from '../app/advice/shown-in-chart.ts';
import { ordinaryLimits } from '../forecast/control-chart.ts';
import type { Growth } from '../forecast/value-growth.ts';
import type { Day } from '../sprint/calendar.ts';
import { isDefined, type Ratio } from '../sprint/undefined-value.ts';
import type { ChartHeading } from '../words/charts/chart-text.ts';
import { dayTicks } from '../words/charts/day-ticks.ts';
import {
  type HeightText,
  historyHeading,
  latestShare,
  limitTexts,
  perMemberDayText,
  shortShare,
  thresholdTexts,
} from '../words/charts/history.ts';
import { say } from '../words/say.ts';
import { reasonSentence } from '../words/undefined.ts';
import { type NiceAxis, sharesAxis, spread } from './chart-scales.ts';
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
import { textWidthPx } from './text-width.ts';

const rowPx = 110;
const panelPx = { width: 200, height: 72 };
/** Of the numbers left of a panel. */
const numbersPx = 50;
const firstTop = headingPx + 26;
const left = marginPx + numbersPx;
/** Between words beside a panel. */
const wordGapPx = 14;
/** A line so many times higher than every value would press them flat; it is named instead of drawn. */
const farTimes = 2.5;

/** What is drawn in a panel, and the words at its right. */
interface Panel {
  readonly title: string;
  /** The last day of the sprint that counts as 100%; undefined where none does. */
  readonly measuredBy?: Day | undefined;
  /** Instead of a picture, where there is no value. */
  readonly reason?: string;
  readonly axis: NiceAxis;
  readonly beside: readonly HeightText[];
  readonly series: readonly (LineSeriesOption | ScatterSeriesOption)[];
}

/** What of the advice is drawn: of a long past a small part, which goes to another thread. */
export interface HistoryToDraw {
  readonly heading: ChartHeading;
  readonly shown: HistoryWindow;
}

export function historyToDraw(advice: HistoryAdvice): HistoryToDraw {
  return { heading: historyHeading(advice), shown: historyWindow(advice) };
}

/** One panel below the other; the last writes the days, and below it is what the shapes mean. */
export function historyChart({ heading, shown }: HistoryToDraw): ChartPicture {
  const { velocity, growth } = shown.baselineEnds;
  const panels: Panel[] = [
    ...shown.ratios.map((ratio) => ({
      ...ratioPanel(ratio, shown.past),
      measuredBy: ratio.ratio === 'velocityGrowth' ? velocity : undefined,
    })),
    ...(shown.growth === undefined ? [] : [{ ...growthPanel(shown.growth), measuredBy: growth }]),
  ];
  const bottom = firstTop + (panels.length - 1) * rowPx + panelPx.height + 62;
  const places = panels.map((_, index) => ({ left, top: firstTop + index * rowPx }));
  const series = keySeries(shown);
  const key = keyBelow(
    series.map(({ name }) => `${name}`),
    bottom,
  );
  const beside = panels.flatMap((panel) => panel.beside);
  const width = panelWidthPx(panelPx.width, left + wordGapPx, beside);
  const drawn = panels.flatMap(({ series }, index) =>
    series.map((one) => ({ ...one, xAxisIndex: index, yAxisIndex: 2 * index })),
  );
  return chartCard(heading, bottom + key.heightPx + 8, {
    title: panels.flatMap((panel, index) => panelTitles(panel, places[index])),
    grid: places.map((place) => ({ ...panelPx, width, ...place })),
    xAxis: panels.map((panel, index) => sprintAxis(shown, panel, width, index, index === panels.length - 1)),
    yAxis: panels.flatMap(heightAxes),
    series: [...series, ...drawn] as SeriesOption[],
    legend: key.legend,
  });
}

function panelTitles({ title, measuredBy, reason }: Panel, { left, top } = { left: 0, top: 0 }) {
  const measured = measuredBy && say('history-chart-measured-by', { endsOn: measuredBy });
  const hasRoom =
    textWidthPx(title, 14, 'bold') + 12 + textWidthPx(measured ?? '', 13) <= cardWidthPx - 2 * marginPx;
  // Where there is none, the description says it.
  const note = measured !== undefined && hasRoom ? `{note|${measured}}` : '';
  const place = { left: left - numbersPx };
  const textStyle = {
    ...text.bold,
    lineHeight: 18,
    rich: { note: { ...text.quiet, padding: [0, 0, 0, 12] } },
  };
  const heading = { ...place, text: `${title}${note}`, top: top - 28, textStyle };
  const why = { ...text.quiet, width: cardWidthPx - 2 * marginPx, overflow: 'break' as const };
  return reason === undefined ? [heading] : [heading, { ...place, text: reason, top, textStyle: why }];
}

function sprintAxis(
  { past }: HistoryWindow,
  { reason }: Panel,
  widthPx: number,
  gridIndex: number,
  writesDays: boolean,
) {
  const days = past.map(({ endsOn }) => endsOn);
  const each = Math.ceil((30 * days.length) / widthPx);
  const isShown = (index: number) => writesDays && (days.length - 1 - index) % each === 0;
  const ticks = dayTicks(days, isShown, { years: true });
  const interval = (index: number) => Boolean(ticks[index]);
  const formatter = (_: string, index: number) => ticks[index] ?? '';
  return {
    type: 'category' as const,
    gridIndex,
    data: days,
    axisLine: { show: reason === undefined, onZero: false },
    axisLabel: { show: writesDays, interval, formatter },
  };
}

/** Left the heights, right the words beside them, moved apart where they would touch. */
function heightAxes({ axis, beside, reason }: Panel, gridIndex: number): YAxisOption[] {
  const value = { ...axis, gridIndex, show: reason === undefined };
  const heights = spread(
    beside.map((word) => word.value),
    (wordGapPx * (axis.max - axis.min)) / panelPx.height,
    { low: axis.min, high: axis.max },
  );
  const formatter = (height: number) => {
    const word = beside[heights.indexOf(height)];
    return word?.bold ? `{bold|${word.text}}` : (word?.text ?? '');
  };
  const rich = { bold: { ...text.bold, fontSize: 13 } };
  return [
    { ...value, axisLabel: { margin: 6, formatter: shortShare } },
    {
      ...value,
      position: 'right',
      splitLine: { show: false },
      axisLabel: { customValues: heights, formatter, rich },
    },
  ];
}
type YAxisOption = Extract<EChartsOption['yAxis'], { type?: 'value' }>;

function ratioPanel(shown: ShownRatio, past: readonly ShownSprint[]): Panel {
  const title = say('ratio-title', { ratio: shown.ratio });
  const values = shown.values.filter(isDefined);
  const last = shown.values.at(-1);
  if (last === undefined) return emptyPanel(title, say('history-chart-no-sprint'));
  if (values.length === 0) return emptyPanel(title, isDefined(last) ? '' : reasonSentence(last.undefined));
  const thresholds = thresholdTexts(shown);
  const perMemberDay = shown.perMemberDay ?? [];
  const perDay = perMemberDay.filter((one) => one !== undefined);
  const lastPerDay = perDay.at(-1);
  const highest = Math.max(1, ...values, ...perDay) * farTimes;
  const near = thresholds.filter(({ value }) => value <= highest);
  const far = thresholds.filter(({ value }) => value > highest);
  const band = 'undefined' in shown.chart ? undefined : shown.chart.limits;
  const ordinary = ordinaryLimits(shown.chart);
  const texts = ordinary === undefined ? [] : limitTexts(ordinary);
  const lines = [
    ...texts.map(({ value }) => ({
      yAxis: value,
      lineStyle: value === ordinary?.mean ? meanLine : limitLine,
    })),
    ...near.map(({ value }) => ({ yAxis: value, lineStyle: thresholdLine })),
  ];
  const axis = sharesAxis(
    [...values, ...perDay, ...near.map(({ value }) => value), band?.low, band?.high].filter(
      (one) => one !== undefined,
    ),
  );
  return {
    title,
    axis,
    beside: [
      ...far.map((line) => ({ text: say('history-chart-above', { line: line.text }), value: axis.max })),
      // There is no room for the limits as well.
      ...texts.filter(({ value }) => lastPerDay === undefined || value === ordinary?.mean),
      ...near,
      ...(isDefined(last) ? [{ text: latestShare(last, shown), value: last, bold: true }] : []),
      ...(lastPerDay === undefined ? [] : [perMemberDayText(lastPerDay)]),
    ],
    series: [
      {
        ...looks.values,
        data: shown.values.map((value, index) => valuePoint(value, past[index]?.importedAt !== undefined)),
        markArea: {
          itemStyle: { color: palette.ordinaryFill },
          data: band === undefined ? [] : [[{ yAxis: band.low }, { yAxis: band.high }]],
        },
        markLine: { z: 1, data: lines },
      },
      ...(perDay.length === 0 ? [] : [{ ...looks.beside, data: perMemberDay.map(openPoint) }]),
      ...marked(shown),
    ],
  };
}

function growthPanel(growth: readonly Growth[]): Panel {
  const velocity = growth.map(({ velocityGrowth }) => velocityGrowth);
  const value = growth.map(({ valueGrowth }) => valueGrowth);
  const known = [...velocity, ...value].filter(isDefined);
  const title = say('history-chart-value-and-velocity');
  if (known.length === 0) {
    const last = value.at(-1);
    return emptyPanel(
      title,
      last === undefined || isDefined(last) ? say('history-chart-no-value') : reasonSentence(last.undefined),
    );
  }
  /** Where the line ends, which may be before the last sprint. */
  const latest = (what: 'velocity' | 'value', shares: readonly Ratio[]) => {
    const share = shares.findLast(isDefined);
    return share === undefined
      ? []
      : [{ text: say(`history-chart-${what}`, { share: shortShare(share) }), value: share, bold: true }];
  };
  return {
    title,
    axis: sharesAxis([...known, 1]),
    beside: [...latest('velocity', velocity), ...latest('value', value)],
    series: [
      { ...looks.values, data: velocity.map((share) => valuePoint(share, false)) },
      { ...looks.beside, data: value.map((share) => valuePoint(share, true)) },
    ],
  };
}

function emptyPanel(title: string, reason: string): Panel {
  return { title, reason, axis: sharesAxis([0, 1]), beside: [], series: [] };
}

/** Filled, or open; what is undefined leaves a gap. */
function valuePoint(value: Ratio, isOpen: boolean) {
  return isDefined(value) ? { value, itemStyle: { color: isOpen ? palette.card : palette.left } } : null;
}

function openPoint(value: number | undefined) {
  return value === undefined ? null : valuePoint(value, true);
}

const dot = { type: 'scatter', symbol: 'circle', symbolSize: 7, z: 4 } as const;
const outline = { borderColor: palette.left, borderWidth: 1.5 };
const besideOutline = { ...outline, borderColor: palette.ink };
const besideLine = { color: palette.ink, width: 1.8, type: [5, 3] };
const ring = { color: 'transparent', borderColor: palette.signal, borderWidth: 1.8 };
const looks = {
  values: { type: 'line', symbolSize: 6, lineStyle: { color: palette.left, width: 1.8 }, itemStyle: outline },
  /** The second line of a panel. */
  beside: { type: 'line', symbolSize: 6, symbol: 'rect', lineStyle: besideLine, itemStyle: besideOutline },
  'member-days': { ...dot, symbol: 'rect', itemStyle: { ...besideOutline, color: palette.card } },
  sprint: { ...dot, itemStyle: { color: palette.left } },
  imported: { ...dot, itemStyle: { ...outline, color: palette.card } },
  ordinary: { ...dot, symbol: symbols.band, itemStyle: { color: palette.axis } },
  threshold: { ...dot, symbol: symbols.dashes, itemStyle: { color: palette.ink } },
  crossed: { ...dot, symbol: symbols.cross, symbolSize: 8, itemStyle: { color: palette.ink } },
  signal: { ...dot, symbol: 'diamond', symbolSize: 15, itemStyle: ring },
} as const;
const meanLine = { color: palette.axis, width: 1.5, type: 'solid' } as const;
const limitLine = { color: palette.axis, width: 1, type: [2, 3] };
const thresholdLine = { color: palette.ink, width: 1.5, type: [7, 4] };

/** Rings around signals, and a cross on the far side of each threshold that was crossed. */
function marked({ values, signalsAt, crossedAt, floor }: ShownRatio): ScatterSeriesOption[] {
  const at = (places: ReadonlySet<number>) =>
    values.flatMap((value, index) =>
      places.has(index) && isDefined(value) ? [{ value: [index, value] }] : [],
    );
  const crosses = at(crossedAt).map(({ value }) => ({
    value,
    symbolOffset: [0, floor !== undefined && (value[1] ?? 0) < floor ? 11 : -11],
  }));
  return [
    ...(signalsAt.size > 0 ? [{ ...looks.signal, data: at(signalsAt) }] : []),
    ...(crossedAt.size > 0 ? [{ ...looks.crossed, data: crosses }] : []),
  ];
}

/** What the shapes mean, of those that are there: series that draw only their entry in the key. */
function keySeries({ past, ratios }: HistoryWindow): ScatterSeriesOption[] {
  const imported = past.filter(({ importedAt }) => importedAt !== undefined).length;
  const isThere = {
    sprint: imported < past.length,
    imported: imported > 0,
    'member-days': ratios.some(({ perMemberDay }) => perMemberDay !== undefined),
    ordinary: ratios.some(({ chart }) => !('undefined' in chart)),
    threshold: ratios.length > 0,
    crossed: ratios.some(({ crossedAt }) => crossedAt.size > 0),
    signal: ratios.some(({ signalsAt }) => signalsAt.size > 0),
  };
  const entries = (Object.keys(isThere) as (keyof typeof isThere)[]).filter((entry) => isThere[entry]);
  return entries.map((entry) => ({ ...looks[entry], name: say(`history-chart-${entry}`), data: [] }));
}
