/**
 * The commitment range beside the sprints that it is made from: for each an open hull as high as its commitment,
 * pulled-in work stacked on it, and a thick line across where the finished points came to; below it the same in
 * numbers. Pure.
 */
import type { BarSeriesOption, ScatterSeriesOption } from 'echarts';
import type { RangeAdvice } from '../app/advice/advice.ts';
import { shownSprints } from '../app/advice/shown-in-chart.ts';
import { type PastSprint, pastVerdict } from '../app/history/past-sprint.ts';
import { advisedRange, type RangeEnd, rangeEnds } from '../forecast/advised-range.ts';
import { number } from '../words/amounts.ts';
import { dayTicks } from '../words/charts/day-ticks.ts';
import { advisedPoints, rangeHeading, tablePoints, verdictWord } from '../words/charts/range.ts';
import { say } from '../words/say.ts';
import { pointsAxis, spread } from './chart-scales.ts';
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

const plot = { left: 88, right: 110, top: headingPx + 30, height: 216 };
const table = { ...plot, top: plot.top + plot.height + 64, height: 88 };
/** The coming sprint has as much room as so many past ones; few of these do not spread over the whole plot. */
const comingPlaces = 4;
/** Its words are moved to the right, away from those of the latest past sprint. */
const comingWordsPx = 34;
/** Room for a day below the axis. */
const dayPx = 32;
const leastPlaces = 6;
const endGapPx = 19;

/** Where things are across: the coming sprint at the right, the latest past one beside it. */
function placesOf(past: number) {
  const count = Math.max(leastPlaces, past) + comingPlaces;
  const coming = count - 2;
  const widthPx = (cardWidthPx - plot.left - plot.right) / count;
  /** Of the first past sprint, and the ends of what is drawn of the coming range. */
  const marks = { first: coming - 2 - past, left: coming - 0.7, right: coming + 0.7 };
  return { count, coming, widthPx, ...marks };
}
type Places = ReturnType<typeof placesOf>;

export function rangeChart(advice: RangeAdvice): ChartPicture {
  const past = shownSprints(advice);
  const ends = rangeEnds(advisedRange(advice.range));
  const places = placesOf(past.length);
  const heights = past.flatMap(({ commitmentPoints, pulledInPoints = 0, velocityPoints = 0 }) => [
    commitmentPoints + pulledInPoints,
    velocityPoints,
  ]);
  const points = pointsAxis(Math.max(0, ...heights, ...ends.map((end) => end.points)));
  const x = { type: 'category' as const, data: Array.from({ length: places.count }, (_, place) => place) };
  const words = rowWords();
  const rows = {
    type: 'category' as const,
    inverse: true,
    data: Object.values(words),
    axisLine: { show: false },
    axisLabel: text.ink,
  };
  return chartCard(rangeHeading(advice), table.top + table.height + 66, {
    grid: [plot, table],
    xAxis: [
      { ...x, axisLabel: placeLabels(advice, places) },
      { ...x, gridIndex: 1, show: false },
      // For what is between places.
      { type: 'value', show: false, min: -0.5, max: places.count - 0.5 },
    ],
    yAxis: [
      {
        ...points,
        ...axisName(say('range-chart-points'), 'end', 'right', 14),
        axisLabel: { formatter: number },
      },
      { ...rows, gridIndex: 1 },
    ],
    series: [
      ...hulls(past, places),
      comingRange(ends, places),
      endWords(ends, plot.height / points.max, places),
      tableCells(advice, places),
      ...verdicts(advice, places),
    ],
    legend: {
      left: marginPx,
      bottom: 14,
      itemGap: 9,
      data: [
        words.commitment,
        words.pulledIn,
        { name: words.velocity, icon: symbols.thickLine },
        ...(['kept', 'missed', 'no plan'] as const).map(verdictWord),
      ],
    },
  });
}

/** What is drawn of each past sprint, and written below it. */
function rowWords() {
  return {
    commitment: say('range-chart-commitment'),
    pulledIn: say('range-chart-pulled-in'),
    velocity: say('range-chart-velocity'),
    verdict: say('range-chart-verdict'),
  };
}

/**
 * Under past sprints their last days, the latest and every n-th before it where there is no room for all; under the coming
 * one what it is and its days.
 */
function placeLabels(advice: RangeAdvice, { first, coming, widthPx }: Places) {
  const past = shownSprints(advice);
  const each = Math.ceil(dayPx / widthPx);
  const dates = dayTicks(
    past.map(({ endsOn }) => endsOn),
    (index) => (past.length - 1 - index) % each === 0,
    { years: true },
  );
  const { startsOn: from, endsOn: to } = advice.coming;
  const comingLabel = `{coming|${say('range-chart-coming')}}\n{days|${say('range-chart-coming-days', { from, to })}}`;
  const formatter = (_: string, place: number) =>
    place === coming ? comingLabel : (dates[place - first] ?? '');
  const padding = [0, 0, 0, 2 * comingWordsPx];
  return { formatter, rich: { coming: { ...text.ink, padding }, days: { padding } } };
}

function hulls(
  past: readonly PastSprint[],
  { first, widthPx }: Places,
): (BarSeriesOption | ScatterSeriesOption)[] {
  const words = rowWords();
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
      symbolSize: [barWidth + Math.min(10, widthPx * 0.25), 5],
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

/** What to commit to, with thin lines to the left, so that past commitments can be compared with it. */
function comingRange(ends: readonly RangeEnd[], { left, coming, right }: Places): ScatterSeriesOption {
  const heights = (...kinds: RangeEnd['kind'][]) =>
    ends.filter(({ kind }) => kinds.includes(kind)).map(({ points }) => points);
  const advised = heights('at-least', 'at-most', 'exactly');
  const middle = heights('about');
  const lines = (from: number, to: number, all: readonly number[], lineStyle: object) =>
    all.map((points) => [{ coord: [from, points], lineStyle }, { coord: [to, points] }]);
  /** The way on which the range is open or goes on. */
  const goesDown = heights('no-low-end', 'low-end').length > 0;
  const arrow = {
    symbol: symbols.arrow,
    symbolSize: [12, 28],
    symbolRotate: goesDown ? 0 : 180,
    symbolOffset: [0, goesDown ? 16 : -16],
  };
  const pointed = ends.length === 2 && advised.length === 1 ? advised : [];
  const marks = [
    ...pointed.map((points) => ({ ...arrow, coord: [coming, points] })),
    ...middle.map((points) => ({ coord: [coming, points], symbol: 'diamond', symbolSize: 20 })),
  ];
  const [low, high] = advised;
  const area = high === undefined ? [] : [[{ coord: [left, low] }, { coord: [right, high] }]];
  const drawn = [
    ...lines(-0.5, left, [...advised, ...middle], { color: palette.advice, width: 1.5, type: [7, 4] }),
    ...lines(left, right, advised, { color: palette.advice, width: 4, type: 'solid' }),
    ...lines(left, right, heights('low-end', 'high-end'), { color: palette.ideal, width: 2, type: [3, 3] }),
  ];
  return {
    type: 'scatter',
    xAxisIndex: 2,
    markLine: { data: drawn as [] },
    markPoint: { itemStyle: { color: palette.advice }, data: marks as [] },
    markArea: { itemStyle: { color: palette.adviceFill }, data: area as [] },
  };
}

/** Beside the ends, moved apart where they would touch. */
function endWords(ends: readonly RangeEnd[], pxPerPoint: number, { right }: Places): ScatterSeriesOption {
  const stepPx: Partial<Record<RangeEnd['kind'], number>> = { 'no-low-end': -30, 'no-high-end': 30 };
  const wanted = ends.map(({ points, kind }) => points * pxPerPoint + (stepPx[kind] ?? 0));
  const heights = spread(wanted, endGapPx, { low: 6, high: plot.height });
  const data = ends.map((end, index) => ({
    value: [right, (heights[index] ?? 0) / pxPerPoint],
    label: {
      ...(end.kind.endsWith('end') ? text.quiet : text.bold),
      ...text.halo,
      show: true,
      formatter: say('range-chart-end', end),
    },
  }));
  return { type: 'scatter', xAxisIndex: 2, symbolSize: 0, label: { position: 'right', distance: 3 }, data };
}

/** A number at the left end must not reach the names of the rows. */
const digitPx = 8;

const inTable = { type: 'scatter' as const, xAxisIndex: 1, yAxisIndex: 1 };

/** The numbers below each sprint; where they are too wide for their places, some are left out. */
function tableCells(advice: RangeAdvice, { first, coming, widthPx }: Places): ScatterSeriesOption {
  const advised = advisedRange(advice.range);
  const cell = (place: number, row: number, formatter: string, look: object = text.ink) => ({
    value: [place, row],
    label: {
      ...{ ...look, show: true, formatter, minMargin: 4 },
      offset: [place === coming ? comingWordsPx : 0, 0],
    },
  });
  const past = shownSprints(advice).flatMap((sprint, index) => {
    const amounts = [sprint.commitmentPoints, sprint.pulledInPoints, sprint.velocityPoints];
    const verdict = pastVerdict(sprint, advice) === 'not-known' ? [undefined] : [];
    return [...amounts, ...verdict]
      .map((points, row) => ({ row, words: tablePoints(points) }))
      .filter(({ words }) => words.length * digitPx < 2 * (first + index + 0.5) * widthPx + digitPx)
      .map(({ row, words }) => cell(first + index, row, words));
  });
  const chance =
    advised.kind === 'middle way'
      ? [cell(coming, 3, say('range-chart-kept-chance', { chance: advised.chance }))]
      : [];
  const data = [...past, cell(coming, 0, advisedPoints(advised), text.bold), ...chance];
  return {
    ...inTable,
    symbolSize: 0,
    data,
    label: { position: 'inside' },
    labelLayout: { hideOverlap: true },
  };
}

/** Each verdict that there is has a symbol of its own, and its word in the key. */
function verdicts(advice: RangeAdvice, { first }: Places): ScatterSeriesOption[] {
  const past = shownSprints(advice).map((sprint) => pastVerdict(sprint, advice));
  const filled = { symbolSize: 12, itemStyle: { color: palette.ink } };
  const open = { color: palette.card, borderColor: palette.ink, borderWidth: 1.5 };
  const looks = [
    { verdict: 'kept', symbol: symbols.tick, ...filled },
    { verdict: 'missed', symbol: symbols.cross, ...filled },
    { verdict: 'no plan', symbol: 'circle', symbolSize: 9, itemStyle: open },
  ] as const;
  return looks.flatMap(({ verdict, ...look }) => {
    const data = past.flatMap((one, index) => (one === verdict ? [[first + index, 3]] : []));
    return data.length === 0 ? [] : [{ ...look, ...inTable, name: verdictWord(verdict), data }];
  });
}
