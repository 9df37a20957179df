/** Lays the release forecast out: how the chance to be finished rises, and three dates on it. Pure; draws nothing. */
import type { EChartsOption } from 'echarts';
import type { ForecastAdvice } from '../app/advice/advice.ts';
import { MOST_SPRINTS, type ReleaseForecast } from '../forecast/release-forecast.ts';
import { wholePercent } from '../sprint/whole-percent.ts';
import { reasonSentence } from '../words/undefined.ts';
import { dateTickLabels } from './date-tick-labels.ts';
import { dateWithYear } from './day-text.ts';
import { type ForecastLayout, forecastLayout, forecastSize } from './forecast-layout.ts';
import {
  forecastSubtitle,
  forecastTitle,
  holdingSprint,
  type NamedDate,
  namedDates,
} from './forecast-words.ts';
import { lineMark, type Mark, type Point, paragraphMark, symbolMarks, textMark } from './marks.ts';
import { marksOption } from './marks-option.ts';
import { palette } from './palette.ts';

/** Where the three dates are written. */
const gutterGapPx = 14;
const symbolRadiusPx = 6.5;
/** So far left that a date below the first sprint keeps clear of them, however narrow the sprints. */
const rowNamesX = 20;

/** Without a forecast, the reason stands in the picture's place. */
export function forecastOption(advice: ForecastAdvice): EChartsOption {
  const { forecast } = advice;
  const title = forecastTitle(advice);
  if ('undefined' in forecast) {
    const reason = paragraphMark({ text: reasonSentence(forecast.undefined), x: 20, y: 110, widthPx: 760 });
    return marksOption({ title, subtitle: 'no forecast yet', size: forecastSize, marks: [reason] });
  }
  return marksOption({
    title,
    subtitle: forecastSubtitle(advice, forecast),
    size: forecastSize,
    marks: forecastMarks(advice, forecast),
  });
}

export function forecastMarks(advice: ForecastAdvice, forecast: ReleaseForecast): Mark[] {
  const layout = forecastLayout(advice, Math.max(1, forecast.chanceBySprint.length - 1));
  return [
    ...chanceAxis(layout),
    ...sprintAxis(layout),
    ...chanceLine(forecast, layout),
    ...namedDates(forecast).flatMap((named) => dateMarks(named, advice, layout)),
  ];
}

function chanceAxis({ plot, yOf }: ForecastLayout): Mark[] {
  const name = textMark({
    text: 'chance to be finished',
    x: 20,
    y: plot.top - 16,
    fill: palette.quietInk,
  });
  const lines = [0, 0.2, 0.4, 0.6, 0.8, 1].flatMap((chance): Mark[] => {
    const y = Math.round(yOf(chance)) + 0.5;
    return [
      lineMark(
        [
          [plot.left, y],
          [plot.right, y],
        ],
        { stroke: chance === 0 ? palette.axis : palette.gridLine, under: true },
      ),
      textMark({ text: wholePercent(chance), x: plot.left - 10, y, align: 'right', fill: palette.quietInk }),
    ];
  });
  return [name, ...lines];
}

/** Below a tick at the end of each sprint: its number and its date. */
function sprintAxis({ plot, bandPx, ends, xOf }: ForecastLayout): Mark[] {
  const dates = dateTickLabels(ends, bandPx);
  const quiet = { align: 'center' as const, fill: palette.quietInk };
  const ticks = ends.flatMap((_, index): Mark[] => {
    const x = Math.round(xOf(index + 1)) + 0.5;
    const label = dates[index] ?? '';
    const isLabelled = label !== '';
    if (!isLabelled && bandPx < 6) return [];
    const tick = lineMark(
      [
        [x, plot.bottom],
        [x, plot.bottom + (isLabelled ? 7 : 4)],
      ],
      { stroke: palette.axis },
    );
    if (!isLabelled) return [tick];
    const rows = label.split('\n');
    return [
      tick,
      textMark({ text: `${index + 1}`, x, y: plot.bottom + 17, ...quiet, fill: palette.ink }),
      ...rows.map((text, row) => textMark({ text, x, y: plot.bottom + 34 + row * 16, ...quiet })),
    ];
  });
  return [
    ...ticks,
    textMark({ text: 'sprint', x: rowNamesX, y: plot.bottom + 17 }),
    textMark({ text: 'ends', x: rowNamesX, y: plot.bottom + 34, fill: palette.quietInk }),
  ];
}

/** From nothing at the start to the last sprint, with a dot at the end of each. */
function chanceLine({ chanceBySprint }: ReleaseForecast, { xOf, yOf, bandPx }: ForecastLayout): Mark[] {
  const points = chanceBySprint.map((chance, sprint): Point => [xOf(sprint), yOf(chance)]);
  const hasRoom = bandPx >= 12;
  return [
    lineMark(points, { stroke: palette.left, widthPx: 2.5 }),
    ...(hasRoom ? points.slice(1) : []).flatMap((point) =>
      symbolMarks('circle', point, { colour: palette.left, radiusPx: 2.5, widthPx: 1 }),
    ),
  ];
}

const shapes = { optimistic: 'triangle', likely: 'circle', cautious: 'square' } as const;

/** From the date on the axis up to the line, and from there to its words in the gutter. */
function dateMarks(
  { name, chance, date }: NamedDate,
  advice: ForecastAdvice,
  layout: ForecastLayout,
): Mark[] {
  const { plot, xOf, yOf } = layout;
  const y = yOf(chance);
  const textX = plot.right + gutterGapPx;
  const words = (lines: readonly string[]) =>
    lines.map((text, row) =>
      textMark({
        text,
        x: textX,
        y: y + (row - 1) * 18,
        bold: row === 1,
        fill: row === 1 ? palette.ink : palette.quietInk,
      }),
    );
  const heading = `${name}: ${wholePercent(chance)} by`;
  if ('undefined' in date) return words([heading, 'no date', `not within ${MOST_SPRINTS} sprints`]);
  const x = xOf(date.sprints);
  const { sprint, endsOn } = holdingSprint(date, advice);
  const dashed = { stroke: palette.ideal, widthPx: 1.5, dash: [4, 4] };
  return [
    lineMark(
      [
        [x, plot.bottom],
        [x, y],
        [plot.right + gutterGapPx - 6, y],
      ],
      dashed,
    ),
    ...symbolMarks(shapes[name], [x, y], { colour: palette.today, radiusPx: symbolRadiusPx, body: 'open' }),
    ...words([heading, dateWithYear(date.on), `in sprint ${sprint}, to ${dateWithYear(endsOn)}`]),
  ];
}
