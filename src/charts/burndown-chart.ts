/**
 * The burndown: points left on top, below it a row that marks blocked cards, where there were any, a track of pulled-in
 * work and one of surprise work, all over the same days.
 * Position 0 is the start of the sprint, position n the evening of its n-th day. Pure.
 */
import type { BarSeriesOption, LineSeriesOption, ScatterSeriesOption } from 'echarts';
import { type Burndown, leftEnd } from '../sprint/burndown.ts';
import { addedInAll, burndownHeading } from '../words/charts/burndown.ts';
import { dayTicks } from '../words/charts/day-ticks.ts';
import { say } from '../words/say.ts';
import { pointsAxis, spread } from './chart-scales.ts';
import {
  axisName,
  type ChartPicture,
  cardWidthPx,
  chartCard,
  edgePx,
  headingPx,
  marginPx,
  palette,
  text,
} from './chart-theme.ts';
import { textWidthPx } from './text-width.ts';

const place = { left: 70, right: 108, top: headingPx + 44, height: 168 };
/** From the names at the left to the plot. */
const nameGapPx = 8;
/** Equally high, so that one point is equally high in both. */
const trackPx = 34;
/** A row of marks with their numbers above them. */
const blockedPx = 30;
/** Room above the highest point, for its label. */
const headroomPx = 22;
/** About as wide as "99,950.5 left" in bold. */
const longestLabelPx = 104;
const labelGapPx = 17;
/** Room for a day below the axis. */
const dayPx = 30;

export function burndownChart(burndown: Burndown): ChartPicture {
  const { days } = burndown;
  const names = {
    points: say('burndown-chart-points'),
    pulledIn: say('burndown-chart-pulled-in'),
    surprise: say('burndown-chart-surprise'),
    blocked: say('burndown-chart-blocked-row'),
  };
  const beside = [names.pulledIn, names.surprise, names.blocked];
  const widest = Math.max(...beside.map((name) => textWidthPx(name, 13)));
  const plot = { ...place, left: Math.max(place.left, widest + nameGapPx + edgePx) };
  const bandPx = (cardWidthPx - plot.left - plot.right) / (days.length + 1);
  const pulledIn = days.map((day) => day.pulledInPoints);
  const surprise = days.map((day) => day.surprisePoints);
  const floor = Math.min(0, ...surprise);
  const trackPoints = Math.max(1, ...pulledIn, Math.max(0, ...surprise) - floor);
  const heights = days.flatMap(({ leftPoints = 0, idealPoints }) => [leftPoints, idealPoints]);
  const highest = Math.max(burndown.commitmentPoints, ...heights);
  const axis = pointsAxis((highest * plot.height) / (plot.height - headroomPx));
  const blocked = days.map((day) => day.blockedCards);
  const blockedTop = plot.top + plot.height + 18;
  const hasBlocked = blocked.some((cards) => cards > 0);
  const pulledInTop = plot.top + plot.height + 24 + (hasBlocked ? blockedPx + 16 : 0);
  const surpriseTop = pulledInTop + trackPx + 20;
  return chartCard(burndownHeading(burndown), surpriseTop + trackPx + 72, {
    grid: [
      plot,
      { ...plot, top: pulledInTop, height: trackPx },
      { ...plot, top: surpriseTop, height: trackPx },
      // Over all of them, for today, which may lie between two days of the sprint.
      { ...plot, top: plot.top - 6, height: surpriseTop + trackPx - plot.top + 6 },
      { ...plot, top: blockedTop, height: blockedPx },
    ],
    xAxis: [
      ...[0, 1, 2].map((gridIndex) => dayAxis(burndown, gridIndex, bandPx)),
      { gridIndex: 3, type: 'value', show: false, min: -0.5, max: days.length + 0.5 },
      { gridIndex: 4, type: 'category', show: false, data: ['', ...days.map(({ day }) => day)] },
    ],
    yAxis: [
      {
        ...axis,
        ...axisName(names.points, 'end', 'right', 22),
        // Where it is too long to end at the axis, it begins at the margin.
        ...(textWidthPx(names.points, 13) > plot.left - edgePx && {
          nameTextStyle: { ...text.quiet, align: 'left', padding: [0, 0, 0, marginPx - plot.left] },
        }),
      },
      ...trackAxes(1, 0, trackPoints, names.pulledIn, addedInAll(pulledIn)),
      ...trackAxes(2, floor, trackPoints, names.surprise, addedInAll(surprise)),
      { gridIndex: 3, type: 'value', show: false },
      {
        ...{ gridIndex: 4, type: 'value', min: 0, max: 1, show: hasBlocked },
        ...axisName(names.blocked, 'middle', 'right', nameGapPx),
        ...bare,
      },
    ],
    series: [
      ...leftLines(burndown, place.height / axis.max, bandPx),
      { ...track(pulledIn, bandPx), xAxisIndex: 1, yAxisIndex: 1, itemStyle: { color: palette.pulledIn } },
      { ...track(surprise, bandPx), xAxisIndex: 2, yAxisIndex: 3, itemStyle: hatched },
      ...(hasBlocked ? [blockedMarks(blocked, bandPx)] : []),
      ...todayLine(burndown),
    ],
  });
}

/** Only the lowest plot writes the days. Where there is no room for every day, the last, and each week's first. */
function dayAxis({ days }: Burndown, gridIndex: number, bandPx: number) {
  const dates = days.map(({ day }) => day);
  const positions = dates.map((_, index) => index + 1);
  const weeks = positions.filter((position) => startsWeek(dates, position - 1));
  const writesAll = bandPx >= dayPx || weeks.length === 0;
  const shown = [0];
  const start = say('burndown-chart-start');
  const startPx = Math.max(dayPx, (textWidthPx(start, 13) + dayPx) / 2);
  for (const position of [dates.length, ...(writesAll ? positions : weeks)]) {
    const hasRoom = (other: number) => Math.abs(other - position) * bandPx >= (other === 0 ? startPx : dayPx);
    if (shown.every(hasRoom)) shown.push(position);
  }
  const ticks = [start, ...dayTicks(dates, (index) => shown.includes(index + 1), { weekdays: true })];
  return {
    type: 'category' as const,
    gridIndex,
    data: ['', ...dates],
    axisLabel: {
      show: gridIndex === 2,
      // Leaves a row for the amounts under bars that hang below the line.
      margin: 17,
      formatter: (_: string, position: number) => ticks[position] ?? '',
    },
  };
}

/** Whether a new ISO week (Monday to Sunday) began since the day before this one in the list. */
function startsWeek(days: readonly string[], index: number): boolean {
  const week = (day = '') => Math.floor((Date.parse(day) / 86_400_000 + 3) / 7);
  return index > 0 && week(days[index]) > week(days[index - 1]);
}

const bare = { splitLine: { show: false }, axisLabel: { show: false } };

/** Of one track: its name at the left, its sum at the right. */
function trackAxes(gridIndex: number, min: number, points: number, name: string, sum: string) {
  const track = { ...bare, type: 'value' as const, gridIndex, min, max: min + points };
  return [
    { ...track, ...axisName(name, 'middle', 'right', nameGapPx) },
    { ...track, ...axisName(sum, 'middle', 'left', 10), position: 'right' as const },
  ];
}

/** Both lines set out from the commitment. Without one, or without a day, there is no pace to hold. */
function leftLines(burndown: Burndown, pxPerPoint: number, bandPx: number): LineSeriesOption[] {
  const { commitmentPoints, days } = burndown;
  const end = leftEnd(burndown);
  const hasIdeal = commitmentPoints > 0 && days.length > 0;
  const endsLast = end.position === days.length;
  const wanted = [(days.at(-1)?.idealPoints ?? 0) * pxPerPoint, end.leftPoints * pxPerPoint];
  // Where both lines end at the last day, their labels are moved apart.
  const bounds = { low: -labelGapPx / 2, high: place.height };
  const heights = hasIdeal && endsLast ? spread(wanted, labelGapPx, bounds) : wanted;
  const atRightEnd = (line: 0 | 1) => ({
    position: 'right' as const,
    distance: bandPx / 2 + 10,
    offset: [0, (wanted[line] ?? 0) - (heights[line] ?? 0)],
  });
  const label = {
    ...text.bold,
    ...text.halo,
    ...(endsLast ? atRightEnd(1) : besideEnd(end, end.leftPoints * pxPerPoint, bandPx)),
    show: true,
    color: palette.left,
    formatter: say('burndown-chart-left', { points: end.leftPoints }),
  };
  const ideal: LineSeriesOption = {
    type: 'line',
    data: [commitmentPoints, ...days.map((day) => day.idealPoints)],
    symbol: 'none',
    lineStyle: { color: palette.ideal, width: 1.5, type: [6, 5] },
    endLabel: { ...text.quiet, ...atRightEnd(0), show: true, formatter: say('burndown-chart-ideal') },
    z: 3,
  };
  const left: LineSeriesOption = {
    type: 'line',
    data: [commitmentPoints, ...days.map((day) => day.leftPoints ?? null)].map((value, position) =>
      position === end.position ? { value, label } : { value },
    ),
    symbolSize: bandPx > 20 ? 9 : 6,
    itemStyle: { color: palette.left },
    lineStyle: { color: palette.left, width: 2.5 },
    z: 4,
  };
  return hasIdeal ? [ideal, left] : [left];
}

/** The side of a point in mid-plot where its own line does not pass, and the ideal line seldom does. */
function besideEnd(end: ReturnType<typeof leftEnd>, heightPx: number, bandPx: number) {
  const isBelowIdeal = end.leftPoints < end.idealPoints && heightPx > 2 * labelGapPx;
  if (!isBelowIdeal) return { position: 'right' as const, distance: 8, offset: [0, -labelGapPx] };
  const goesLeft = !end.rising && (end.position + 0.5) * bandPx > longestLabelPx;
  return { position: goesLeft ? ('left' as const) : ('right' as const), distance: 8, offset: [0, 13] };
}

const hatched = {
  color: palette.surprise,
  borderColor: palette.surprise,
  borderWidth: 1,
  // Slanted stripes in the card's colour, drawn as one tile: the canvas does not turn patterns.
  decal: {
    symbol: 'path://M0 4L4 0H6L0 6ZM6 4V6H4Z',
    symbolSize: 1,
    color: palette.card,
    dashArrayX: [6, 0],
    dashArrayY: [6, 0],
  },
};

/** Bars with their amounts at their ends. A bar of nothing would still show its outline. */
function track(amounts: readonly number[], bandPx: number): BarSeriesOption {
  return {
    type: 'bar',
    barWidth: Math.min(28, Math.max(3, bandPx * 0.5)),
    label: {
      ...text.ink,
      ...text.halo,
      show: true,
      distance: 3,
      formatter: ({ value }) => say('burndown-chart-added', { points: Number(value) }),
    },
    labelLayout: { hideOverlap: true },
    data: [0, ...amounts].map((amount) => ({
      value: amount === 0 ? null : amount,
      label: { position: amount < 0 ? ('bottom' as const) : ('top' as const) },
    })),
  };
}

/** A mark for each evening in which cards were blocked, with how many above it. */
function blockedMarks(blocked: readonly number[], bandPx: number): ScatterSeriesOption {
  return {
    type: 'scatter',
    xAxisIndex: 4,
    yAxisIndex: 6,
    symbol: 'rect',
    symbolSize: [Math.min(28, Math.max(3, bandPx * 0.5)), 6],
    itemStyle: { color: palette.ink },
    label: {
      ...text.ink,
      show: true,
      position: 'top',
      distance: 3,
      formatter: ({ dataIndex }) =>
        say('burndown-chart-blocked-cards', { cards: blocked[dataIndex - 1] ?? 0 }),
    },
    labelLayout: { hideOverlap: true },
    data: [0, ...blocked].map((cards) => (cards === 0 ? null : 0.2)),
  };
}

/** One upright line through all plots, where today lies within the sprint. */
function todayLine({ days, today }: Burndown): LineSeriesOption[] {
  // ISO dates sort as text.
  const next = today === undefined ? -1 : days.findIndex((day) => day.day >= today);
  const isWorkingDay = days[next]?.day === today;
  if (next < 0 || (next === 0 && !isWorkingDay)) return [];
  const label = {
    ...text.ink,
    show: true,
    formatter: say('burndown-chart-today'),
    position: 'end' as const,
    distance: 4,
  };
  const lineStyle = { color: palette.today, width: 1, type: 'solid' as const };
  const data = [{ xAxis: isWorkingDay ? next + 1 : next + 0.5 }];
  return [{ type: 'line', xAxisIndex: 3, yAxisIndex: 5, markLine: { z: 1, lineStyle, label, data } }];
}
