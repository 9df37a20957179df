/** A joint date: between which lines the chance that all parts are done rises. It shows no part by itself. Pure. */
import type { LineSeriesOption } from 'echarts';
import type { JointAdvice } from '../app/advice/advice.ts';
import type { JointDate } from '../forecast/joint-release.ts';
import { type Day, daysBetween } from '../sprint/calendar.ts';
import { wholePercent } from '../words/amounts.ts';
import { dayTicks } from '../words/charts/day-ticks.ts';
import { jointDateLines, jointHeading } from '../words/charts/joint.ts';
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

const plot = { left: 56, right: 132, top: headingPx + 20, height: 220 };
const keyRowPx = 22;
const mostTicks = 5;

export function jointChart(advice: JointAdvice): ChartPicture {
  const { joint } = advice;
  const first = joint?.curve[0];
  if (!joint || !first) return chartCard(jointHeading(advice));
  const { curve, dates } = joint;
  const placeOf = (day: Day): number => daysBetween(first.on, day);
  const last = placeOf((curve.at(-1) ?? first).on);
  const each = Math.max(1, Math.ceil((curve.length - 1) / mostTicks));
  const ticks = curve.filter((_, i) => (curve.length - 1 - i) % each === 0).map(({ on }) => on);
  const labels = dayTicks(ticks, () => true, { years: true });
  const customValues = ticks.map(placeOf);
  const lines = {
    least: { name: say('joint-chart-key-least'), width: 2.5, type: 'solid' },
    most: { name: say('joint-chart-key-most'), width: 1.8, type: [5, 3] },
  } as const;
  const bottom = plot.top + plot.height + 70;
  return chartCard(jointHeading(advice), bottom + 2 * keyRowPx + 8, {
    grid: plot,
    xAxis: {
      type: 'value',
      max: Math.max(1, last),
      splitLine: { show: false },
      axisLine: { show: true, lineStyle: { color: palette.axis } },
      axisTick: { show: true, customValues, lineStyle: { color: palette.axis } },
      axisLabel: { customValues, formatter: (place: number) => labels[customValues.indexOf(place)] ?? '' },
    },
    yAxis: [
      {
        ...axisName(say('joint-chart-chance'), 'end', 'left', 14),
        nameTextStyle: { ...text.quiet, align: 'left', padding: [0, 0, 0, 16 - plot.left] },
        type: 'value',
        max: 1,
        interval: 0.2,
        axisLabel: { formatter: (chance: number) => wholePercent(chance) },
      },
      datesAxis(dates),
    ],
    series: [
      ...(['least', 'most'] as const).map(
        (bound): LineSeriesOption => ({
          type: 'line',
          name: lines[bound].name,
          symbol: 'none',
          lineStyle: { color: palette.left, width: lines[bound].width, type: lines[bound].type as 'solid' },
          itemStyle: { color: palette.left },
          data: curve.map((at) => [placeOf(at.on), at[bound]]),
        }),
      ),
      ...dates.flatMap(({ surely, chance }) =>
        surely === undefined
          ? []
          : [
              {
                type: 'scatter' as const,
                symbol: 'circle',
                symbolSize: 12,
                itemStyle: { color: palette.card, borderColor: palette.today, borderWidth: 2 },
                data: [[placeOf(surely), chance]],
                z: 5,
              },
            ],
      ),
    ],
    legend: {
      data: [
        { name: lines.least.name, icon: symbols.thickLine },
        { name: lines.most.name, icon: symbols.dashes },
      ],
      ...{ left: marginPx, top: bottom, orient: 'vertical' as const, itemGap: keyRowPx - 16 },
      textStyle: { ...text.quiet, width: cardWidthPx - 4 * marginPx },
    },
  });
}

/** The words of the days, at the heights of their chances. */
function datesAxis(dates: readonly JointDate[]) {
  const texts = new Map(dates.map((date) => [date.chance, jointDateLines(date)]));
  const formatter = (chance: number) => {
    const [heading = '', day = ''] = texts.get(chance) ?? [];
    return `${heading}\n{date|${day}}`;
  };
  return {
    type: 'value' as const,
    position: 'right' as const,
    min: 0,
    max: 1,
    splitLine: { show: false },
    axisLabel: {
      margin: 12,
      customValues: dates.filter(({ surely }) => surely !== undefined).map(({ chance }) => chance),
      formatter,
      rich: { date: { ...text.bold, lineHeight: 20 } },
    },
  };
}
