/**
 * The commitment range beside the sprints that it is made from: for each an open hull as high as its commitment,
 * pulled-in work stacked on it, and a thick line across where the finished points came to; below it the same in
 * numbers. Pure.
 */
import type { BarSeriesOption, ScatterSeriesOption } from 'echarts';
import type { RangeAdvice } from '../app/advice/advice.ts';
import type { PastSprint } from '../app/history/past-sprint.ts';
import { type AdvisedRange, advisedRange } from '../forecast/advised-range.ts';
import { dayTicks, pointsNumber } from './chart-formats.ts';
import { rangeWords as words } from './chart-labels.ts';
import { pointsAxis, spread } from './chart-scales.ts';
import {
  axisName,
  type ChartPicture,
  cardWidthPx,
  chartCard,
  headingPx,
  symbols,
  text,
} from './chart-theme.ts';
import { palette } from './palette.ts';
import { pastVerdict, shownSprints } from './shown-data.ts';

const plot = { left: 96, right: 128, top: headingPx + 34, height: 216 };
const table = { ...plot, top: plot.top + plot.height + 56, height: 88 };
/** The coming sprint has as much room as so many past ones; few of these do not spread over the whole plot. */
const comingPlaces = 3;
const leastPlaces = 6;
const endGapPx = 19;

/** Where things are across: the coming sprint at the right, the latest past one beside it. */
interface Places {
  readonly count: number;
  readonly widthPx: number;
  /** Of the first past sprint. */
  readonly first: number;
  readonly coming: number;
  /** Ends of what is drawn of the coming range. */
  readonly left: number;
  readonly right: number;
}

function placesOf(past: number): Places {
  const count = Math.max(leastPlaces, past) + comingPlaces;
  const widthPx = (cardWidthPx - plot.left - plot.right) / count;
  const coming = count - 2;
  return { count, widthPx, first: coming - 1 - past, coming, left: coming - 0.7, right: coming + 0.7 };
}

export function rangeChart(advice: RangeAdvice): ChartPicture {
  const past = shownSprints(advice);
  const advised = advisedRange(advice.range);
  const places = placesOf(past.length);
  const ends = words.ends(advised).map(({ points }) => points);
  const heights = past.flatMap(({ commitmentPoints, pulledInPoints = 0, velocityPoints = 0 }) => [
    commitmentPoints + pulledInPoints,
    velocityPoints,
  ]);
  const axis = pointsAxis(Math.max(0, ...heights, ...ends));
  const x = { type: 'category' as const, data: Array.from({ length: places.count }, (_, place) => place) };
  const rows = [words.commitment, words.pulledIn, words.velocity, words.verdict];
  const hidden = { axisLine: { show: false }, axisLabel: text.ink };
  return chartCard(words.heading(advice), table.top + table.height + 46, {
    grid: [plot, table],
    xAxis: [
      { ...x, axisLabel: placeLabels(advice, places) },
      { ...x, gridIndex: 1, show: false },
      // For what lies between places.
      { type: 'value', show: false, min: -0.5, max: places.count - 0.5 },
    ],
    yAxis: [
      {
        ...axis,
        ...axisName(words.points, 'end', 'right', 14),
        type: 'value',
        axisLabel: { formatter: pointsNumber },
      },
      { ...hidden, type: 'category', gridIndex: 1, inverse: true, data: rows },
    ],
    series: [
      ...hulls(past, places),
      advisedMarks(advised, places),
      endWords(advised, plot.height / axis.max, places),
      tableCells(advice, advised, places),
      ...verdicts(advice, places),
    ],
    legend: {
      left: plot.left,
      bottom: 14,
      data: [
        { name: words.commitment },
        { name: words.pulledIn },
        { name: words.velocity, icon: symbols.thickLine },
        ...Object.values(words.verdicts).map((name) => ({ name })),
      ],
    },
  });
}

/** Under each past sprint its last day, under the coming one what it is and its days. */
function placeLabels(advice: RangeAdvice, { first, coming }: Places) {
  const dates = dayTicks(
    shownSprints(advice).map(({ endsOn }) => endsOn),
    () => true,
    { years: true },
  );
  const formatter = (_: string, place: number) =>
    place === coming ? `{coming|${words.coming}}\n${words.comingDays(advice)}` : (dates[place - first] ?? '');
  return { formatter, rich: { coming: text.ink } };
}

function hulls(
  past: readonly PastSprint[],
  { first, widthPx }: Places,
): (BarSeriesOption | ScatterSeriesOption)[] {
  const barWidth = Math.min(28, widthPx * 0.62);
  const bar = { type: 'bar' as const, stack: 'hull', barWidth };
  const open = { color: 'transparent', borderColor: palette.commitment, borderWidth: 2 };
  const at = (pointsOf: (sprint: PastSprint) => number | undefined) =>
    past.map((sprint, index) => [first + index, pointsOf(sprint) ?? null] as [number, number | null]);
  return [
    {
      ...bar,
      name: words.commitment,
      data: at(({ commitmentPoints }) => commitmentPoints || undefined),
      itemStyle: { ...open, borderRadius: [0, 0, barWidth / 2, barWidth / 2] },
    },
    {
      ...bar,
      name: words.pulledIn,
      data: at(({ pulledInPoints }) => pulledInPoints || undefined),
      itemStyle: { color: palette.pulledIn, decal: stripes, borderColor: palette.pulledIn, borderWidth: 1 },
    },
    {
      type: 'scatter',
      name: words.velocity,
      data: at(({ velocityPoints }) => velocityPoints),
      symbol: 'rect',
      symbolSize: [barWidth + 10, 5],
      itemStyle: { color: palette.velocity },
      z: 5,
    },
  ];
}

/** Level ones, so that pulled-in work differs by more than its colour. */
const stripes = {
  symbol: 'rect',
  symbolSize: 1,
  color: palette.card,
  dashArrayX: [1, 0],
  dashArrayY: [2, 2],
};

const advisedLine = { color: palette.advice, width: 4, type: 'solid' } as const;
const guideLine = { color: palette.advice, width: 1.5, type: [7, 4] };
/** Of an end that there is but that is not advised. */
const doubtfulLine = { color: palette.ideal, width: 2, type: [3, 3] };

/** What to commit to, with thin lines to the left, so that past commitments can be compared with it. */
function advisedMarks(advised: AdvisedRange, { left, coming, right }: Places): ScatterSeriesOption {
  const line = (from: number, to: number, points: number, lineStyle: object) => [
    { coord: [from, points], lineStyle },
    { coord: [to, points] },
  ];
  const end = (points: number) => [
    line(-0.5, left, points, guideLine),
    line(left, right, points, advisedLine),
  ];
  /** The side on which the range is open or goes on. */
  const arrow = (points: number, symbolRotate: 0 | 180) => ({
    coord: [coming, points],
    symbol: symbols.arrow,
    symbolSize: [12, 28],
    symbolRotate,
    symbolOffset: [0, symbolRotate === 0 ? 16 : -16],
  });
  const marks = (lines: unknown[], points: unknown[] = [], areas: unknown[] = []): ScatterSeriesOption => ({
    type: 'scatter',
    xAxisIndex: 2,
    markLine: { data: lines as [] },
    markPoint: { itemStyle: { color: palette.advice }, data: points as [] },
    markArea: { itemStyle: { color: palette.adviceFill }, data: areas as [] },
  });
  if (advised.kind === 'none') return marks([]);
  if (advised.kind === 'at least') return marks(end(advised.lowPoints), [arrow(advised.lowPoints, 180)]);
  const { highPoints } = advised;
  if (advised.kind === 'at most') return marks(end(highPoints), [arrow(highPoints, 0)]);
  const { lowPoints } = advised;
  const doubtfulLow = line(left, right, lowPoints, doubtfulLine);
  if (advised.kind === 'crossed') return marks([...end(highPoints), doubtfulLow], [arrow(highPoints, 0)]);
  if (advised.kind === 'middle way') {
    const { points } = advised;
    const guide = line(-0.5, left, points, guideLine);
    const diamond = { coord: [coming, points], symbol: 'diamond', symbolSize: 20 };
    return marks([line(left, right, highPoints, doubtfulLine), doubtfulLow, guide], [diamond]);
  }
  const area = [{ coord: [left, lowPoints] }, { coord: [right, highPoints] }];
  return marks([...end(highPoints), ...end(lowPoints)], [], [area]);
}

/** Beside the ends, moved apart where they would touch. */
function endWords(advised: AdvisedRange, pxPerPoint: number, { right }: Places): ScatterSeriesOption {
  const ends = words.ends(advised);
  const stepPx = { below: -1.6 * endGapPx, above: 1.6 * endGapPx, at: 0 };
  const heights = spread(
    ends.map(({ points, place }) => points * pxPerPoint + stepPx[place ?? 'at']),
    endGapPx,
    { low: 6, high: plot.height },
  );
  return {
    type: 'scatter',
    xAxisIndex: 2,
    symbolSize: 0,
    label: { position: 'right', distance: 8 },
    data: ends.map((end, index) => ({
      value: [right, (heights[index] ?? 0) / pxPerPoint],
      label: { ...(end.bold ? text.bold : text.quiet), ...text.halo, show: true, formatter: end.text },
    })),
  };
}

/** The numbers below each sprint; where they are too wide for their places, some are left out. */
function tableCells(
  advice: RangeAdvice,
  advised: AdvisedRange,
  { first, coming }: Places,
): ScatterSeriesOption {
  const cell = (place: number, row: number, formatter: string, look: object = text.ink) => ({
    value: [place, row],
    label: { ...look, show: true, formatter, minMargin: 4 },
  });
  const past = shownSprints(advice).flatMap((sprint, index) => {
    const amounts = [sprint.commitmentPoints, sprint.pulledInPoints, sprint.velocityPoints];
    const verdict = pastVerdict(sprint, advice.thresholds) === 'not known' ? [undefined] : [];
    return [...amounts, ...verdict].map((points, row) => cell(first + index, row, words.cell(points)));
  });
  const chance = advised.kind === 'middle way' ? [cell(coming, 3, words.keptChance(advised.chance))] : [];
  return {
    type: 'scatter',
    xAxisIndex: 1,
    yAxisIndex: 1,
    symbolSize: 0,
    data: [...past, cell(coming, 0, words.advised(advised), text.bold), ...chance],
    label: { position: 'inside' },
    labelLayout: { hideOverlap: true },
  };
}

const circle = { color: palette.card, borderColor: palette.ink, borderWidth: 1.5 };
const verdictLooks = {
  kept: { symbol: symbols.tick, symbolSize: 12, itemStyle: { color: palette.ink } },
  missed: { symbol: symbols.cross, symbolSize: 12, itemStyle: { color: palette.ink } },
  'no plan': { symbol: 'circle', symbolSize: 9, itemStyle: circle },
};

/** Each verdict that there is has a symbol of its own, and its word in the key. */
function verdicts(advice: RangeAdvice, { first }: Places): ScatterSeriesOption[] {
  const past = shownSprints(advice).map((sprint) => pastVerdict(sprint, advice.thresholds));
  return (['kept', 'missed', 'no plan'] as const).flatMap((verdict) => {
    const data = past.flatMap((one, index) => (one === verdict ? [[first + index, 3]] : []));
    const look = { ...verdictLooks[verdict], name: words.verdicts[verdict], xAxisIndex: 1, yAxisIndex: 1 };
    return data.length === 0 ? [] : [{ ...look, type: 'scatter' as const, data }];
  });
}
