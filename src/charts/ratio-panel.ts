/** Draws one ratio of the history: its values, what is ordinary for them, and its thresholds. Pure. */
import type { PastSprint } from '../app/history/past-sprint.ts';
import type { Day } from '../sprint/calendar.ts';
import { formatAgainst, formatPercent } from '../sprint/percent.ts';
import { ratioTitle } from '../sprint/ratio-names.ts';
import { isDefined } from '../sprint/undefined-value.ts';
import { reasonSentence } from '../words/undefined.ts';
import type { Box } from './chart-frame.ts';
import type { ShownRatio } from './history-window.ts';
import { areaMark, lineMark, type Mark, paragraphMark, symbolMarks } from './marks.ts';
import { ordinaryLimits } from './ordinary-limits.ts';
import { palette } from './palette.ts';
import {
  axisMarks,
  type HeightOf,
  headingMarks,
  heightOf,
  levelMark,
  type RightWord,
  rightWords,
  runsOf,
  spanOf,
} from './panel-marks.ts';
import { ratioAxis } from './ratio-axis.ts';
import { shortShare } from './short-share.ts';

/** A line so many times higher than every value would press them flat; it is named instead of drawn. */
const farTimes = 2.5;

export interface PanelPlace {
  readonly plot: Box;
  xOf(index: number): number;
  /** The last day of the sprint that counts as 100%; undefined where none does. */
  readonly measuredBy?: Day | undefined;
}

export function ratioPanel(shown: ShownRatio, past: readonly PastSprint[], place: PanelPlace): Mark[] {
  const { plot, xOf, measuredBy } = place;
  const heading = headingMarks(ratioTitle(shown.ratio), plot, measuredBy);
  const values = shown.values.filter(isDefined);
  if (values.length === 0) {
    const last = shown.values.at(-1);
    const reason =
      last === undefined || isDefined(last)
        ? 'There is no closed sprint yet.'
        : reasonSentence(last.undefined);
    return [
      ...heading,
      paragraphMark({ text: reason, x: plot.left, y: plot.top + 10, widthPx: plot.right - plot.left + 90 }),
    ];
  }
  const lines = namedLines(shown);
  const highest = Math.max(1, ...values) * farTimes;
  const drawn = lines.filter(({ value }) => value <= highest);
  const { chart } = shown;
  const ordinary = 'undefined' in chart ? [] : [chart.mean, chart.limits.low, chart.limits.high];
  const axis = ratioAxis(spanOf([...values, ...ordinary, ...drawn.map(({ value }) => value)]));
  const yOf = heightOf(plot, axis);
  const far = lines
    .filter(({ value }) => value > highest)
    .map(({ text }) => ({ text: `${text} above`, value: axis.high }));
  return [
    ...heading,
    ...axisMarks(plot, axis, yOf),
    ...ordinaryMarks(shown, plot, yOf),
    ...drawn.map(({ value }) =>
      levelMark(value, plot, yOf, { stroke: palette.ink, widthPx: 1.5, dash: [7, 4] }),
    ),
    ...valueMarks(shown, past, xOf, yOf),
    ...rightWords([...far, ...ordinaryWords(shown), ...drawn, ...latestWord(shown)], plot, yOf),
  ];
}

/** A value that crosses a threshold never looks as if it lay on it. */
export function latestText(
  latest: number,
  { floor, ceiling }: Pick<ShownRatio, 'floor' | 'ceiling'>,
): string {
  if (floor !== undefined && latest < floor) return formatAgainst(latest, floor).value;
  if (ceiling !== undefined && latest > ceiling) return formatAgainst(latest, ceiling).value;
  return formatPercent(latest);
}

/** Thresholds and marks, with their words. */
function namedLines({ floor, ceiling, marks }: ShownRatio): RightWord[] {
  return [
    ...(floor === undefined ? [] : [{ text: `at least ${formatPercent(floor)}`, value: floor }]),
    ...(ceiling === undefined ? [] : [{ text: `at most ${formatPercent(ceiling)}`, value: ceiling }]),
    ...marks.map((mark) => ({ text: `mark ${formatPercent(mark)}`, value: mark })),
  ];
}

/** A band between the limits with thin edges, and the mean. An end of the number itself has no edge. */
function ordinaryMarks({ chart }: ShownRatio, plot: Box, yOf: HeightOf): Mark[] {
  const ordinary = ordinaryLimits(chart);
  if (ordinary === undefined || 'undefined' in chart) return [];
  const { limits } = chart;
  const edge = { stroke: palette.axis, widthPx: 1, dash: [2, 3] };
  const told = [ordinary.low, ordinary.high].filter((limit) => limit !== undefined);
  return [
    areaMark({ ...plot, top: yOf(limits.high), bottom: yOf(limits.low) }, palette.ordinaryFill),
    ...told.map((limit) => levelMark(limit, plot, yOf, edge)),
    levelMark(ordinary.mean, plot, yOf, { stroke: palette.axis, widthPx: 1.5 }),
  ];
}

function ordinaryWords({ chart }: ShownRatio): RightWord[] {
  const ordinary = ordinaryLimits(chart);
  if (ordinary === undefined) return [];
  const { mean, low, high } = ordinary;
  return [
    ...(high === undefined ? [] : [{ text: `limit ${shortShare(high)}`, value: high }]),
    { text: `mean ${shortShare(mean)}`, value: mean },
    ...(low === undefined ? [] : [{ text: `limit ${shortShare(low)}`, value: low }]),
  ];
}

function latestWord(shown: ShownRatio): RightWord[] {
  const latest = shown.values.at(-1);
  return latest !== undefined && isDefined(latest)
    ? [{ text: latestText(latest, shown), value: latest, bold: true }]
    : [];
}

function valueMarks(
  { values, floor, signalsAt, crossedAt }: ShownRatio,
  past: readonly PastSprint[],
  xOf: (index: number) => number,
  yOf: HeightOf,
): Mark[] {
  const line = runsOf(values, (index, value) => [xOf(index), yOf(value)]).map((run) =>
    lineMark(run, { stroke: palette.left, widthPx: 1.8 }),
  );
  const symbols = values.flatMap((value, index): Mark[] => {
    if (!isDefined(value)) return [];
    const [x, y] = [xOf(index), yOf(value)];
    const isImported = past[index]?.importedAt !== undefined;
    const below = floor !== undefined && value < floor;
    return [
      ...symbolMarks('circle', [x, y], {
        colour: palette.left,
        radiusPx: 3,
        body: isImported ? 'open' : 'filled',
        widthPx: 1.5,
      }),
      ...(signalsAt.has(index) ? signalMarks(x, y) : []),
      ...(crossedAt.has(index) ? crossedMarks(x, below ? y + 11 : y - 11) : []),
    ];
  });
  return [...line, ...symbols];
}

export function signalMarks(x: number, y: number): Mark[] {
  return symbolMarks('diamond', [x, y], { colour: palette.signal, radiusPx: 6, body: 'ring', widthPx: 1.8 });
}

export function crossedMarks(x: number, y: number): Mark[] {
  return symbolMarks('cross', [x, y], { colour: palette.ink, radiusPx: 3.5, widthPx: 1.8 });
}
