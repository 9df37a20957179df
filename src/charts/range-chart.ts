/**
 * The commitment range: how the chances to keep a commitment, to finish all of it and to run out of work fall the more
 * is committed to, with a line at the number that is advised. Pure.
 */
import type { EChartsOption, LineSeriesOption, ScatterSeriesOption } from 'echarts';
import type { RangeAdvice } from '../app/advice/advice.ts';
import { type CommitmentCurve, commitmentCurve } from '../app/advice/shown-in-chart.ts';
import { isDefined } from '../sprint/undefined-value.ts';
import { wholePercent } from '../words/amounts.ts';
import { type ChanceId, chanceLabel, rangeHeading } from '../words/charts/range.ts';
import { say } from '../words/say.ts';
import { pointsAxis, spread } from './chart-scales.ts';
import { axisName, type ChartPicture, chartCard, edgePx, headingPx, palette, text } from './chart-theme.ts';
import { textWidthPx } from './text-width.ts';

/** With room for a heading whose second line wraps three times, as with a chance of "more than 9 in 10" and imported sprints. */
const place = { left: 56, right: 142, top: headingPx + 62, height: 240 };
/** Of words of two lines at the right. */
const wordsGapPx = 40;
/** From the plot to them, with the mark in between. */
const wordsLeftPx = 28;

/** Each line differs from the others by its dashes and by the mark on it, not by its colour alone. */
const looks = [
  { id: 'kept', color: palette.left, symbol: 'circle', type: 'solid' },
  { id: 'finishedWhole', color: palette.pulledIn, symbol: 'rect', type: [9, 4] },
  { id: 'ranOut', color: palette.surprise, symbol: 'triangle', type: [2, 4] },
] as const satisfies readonly { id: ChanceId; [look: string]: unknown }[];
type Look = (typeof looks)[number];

/** What of the advice is drawn: data alone, which can go to another thread. */
export interface RangeToDraw {
  readonly heading: ReturnType<typeof rangeHeading>;
  /** Undefined: there is no number to advise. */
  readonly curve: CommitmentCurve | undefined;
}

export function rangeToDraw(advice: RangeAdvice): RangeToDraw {
  return { heading: rangeHeading(advice), curve: commitmentCurve(advice) };
}

/** Without a number to advise, the heading says why. */
export function rangeChart({ heading, curve }: RangeToDraw): ChartPicture {
  if (!curve) return chartCard(heading);
  const points = pointsAxis(curve.steps.at(-1)?.points ?? 0);
  const grid = { ...place, right: Math.max(place.right, wordsLeftPx + wordsWidthPx(curve) + edgePx) };
  const parts: EChartsOption = {
    grid,
    xAxis: {
      ...points,
      name: say('range-chart-committed'),
      nameLocation: 'middle',
      nameGap: 28,
      splitLine: { show: false },
      axisLine: { show: true, lineStyle: { color: palette.axis } },
      axisTick: { show: true, lineStyle: { color: palette.axis } },
    },
    yAxis: {
      ...axisName(say('range-chart-chance'), 'end', 'left', 28),
      nameTextStyle: { ...text.quiet, align: 'left', padding: [0, 0, 0, 16 - place.left] },
      type: 'value',
      max: 1,
      interval: 0.2,
      axisLabel: { formatter: (chance: number) => wholePercent(chance) },
    },
    series: [
      ...looks.map((look) => chanceLine(look, curve)),
      advisedLine(curve),
      ...marks(curve, points.max),
    ],
  };
  return chartCard(heading, place.top + place.height + 62, parts, 4);
}

function wordsWidthPx({ advised: { chances } }: CommitmentCurve): number {
  const words = looks.flatMap(({ id }) => {
    const chance = chances[id];
    return isDefined(chance) ? [chanceLabel(id, chance)] : [];
  });
  return Math.max(0, ...words.map((one) => textWidthPx(one, 13)));
}

function chanceLine({ id, color, type }: Look, { steps }: CommitmentCurve): LineSeriesOption {
  return {
    type: 'line',
    data: steps.flatMap(({ points, chances }) => {
      const chance = chances[id];
      return isDefined(chance) ? [[points, chance]] : [];
    }),
    symbolSize: 0,
    lineStyle: { color, width: 2.5, type: type as 'solid' | number[] },
  };
}

/** At the advised number, up to its words; filled behind it where more than one number serves. */
function advisedLine({ advised: { points }, span }: CommitmentCurve): ScatterSeriesOption {
  const area = span ? [[{ coord: [span.low, 0] }, { coord: [span.high, 1] }]] : [];
  return {
    type: 'scatter',
    symbolSize: 0,
    data: [[points, 1]],
    label: { show: true, position: 'top', formatter: say('range-chart-advised', { points }), ...text.bold },
    markLine: {
      lineStyle: { color: palette.advice, width: 2, type: 'solid' },
      data: [[{ coord: [points, 0] }, { coord: [points, 1] }]],
    },
    markArea: { itemStyle: { color: palette.adviceFill }, data: area as [] },
  };
}

/** Where the lines meet the advised number, and the same marks at the right with their words, kept apart. */
function marks({ advised: { points, chances } }: CommitmentCurve, mostPoints: number): ScatterSeriesOption[] {
  const known = looks.flatMap((look) => {
    const chance = chances[look.id];
    return isDefined(chance) ? [{ ...look, chance }] : [];
  });
  const heights = spread(
    known.map(({ chance }) => chance * place.height),
    wordsGapPx,
    { low: wordsGapPx / 2, high: place.height },
  );
  return known.map(({ id, color, symbol, chance }, i) => ({
    type: 'scatter',
    symbol,
    symbolSize: 12,
    itemStyle: { color, borderColor: palette.card, borderWidth: 1.5 },
    z: 5,
    data: [
      [points, chance],
      {
        value: [mostPoints, (heights[i] ?? 0) / place.height],
        symbolOffset: [16, 0],
        label: {
          ...text.ink,
          show: true,
          position: 'right',
          distance: 6,
          align: 'left',
          formatter: chanceLabel(id, chance),
        },
      },
    ],
  }));
}
