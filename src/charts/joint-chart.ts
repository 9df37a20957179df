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
  chartCard,
  edgePx,
  headingPx,
  keyBelow,
  palette,
  symbols,
  text,
} from './chart-theme.ts';
import { textWidthPx } from './text-width.ts';

const place = { left: 56, right: 132, top: headingPx + 20, height: 220 };
const datesGapPx = 12;
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
  const bottom = place.top + place.height + 70;
  const key = keyBelow([lines.least.name, lines.most.name], bottom);
  const icons = [symbols.thickLine, symbols.dashes];
  return chartCard(jointHeading(advice), bottom + key.heightPx + 8, {
    grid: { ...place, right: Math.max(place.right, datesWidthPx(dates)) },
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
        nameTextStyle: { ...text.quiet, align: 'left', padding: [0, 0, 0, 16 - place.left] },
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
    legend: { ...key.legend, data: key.legend.data.map((name, i) => ({ name, icon: icons[i] as string })) },
  });
}

function datesWidthPx(dates: readonly JointDate[]): number {
  const widths = dates.flatMap((date) => {
    const [heading = '', day = ''] = jointDateLines(date);
    return [textWidthPx(heading, 13), textWidthPx(day, 14, 'bold')];
  });
  return datesGapPx + Math.max(...widths) + edgePx;
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
      margin: datesGapPx,
      customValues: dates.filter(({ surely }) => surely !== undefined).map(({ chance }) => chance),
      formatter,
      rich: { date: { ...text.bold, lineHeight: 20 } },
    },
  };
}
