/** Draws the coming sprint of the range picture: what to commit to, and its ends in words. Pure. */
import type { RangeAdvice } from '../app/advice/advice.ts';
import { type AdvisedRange, advisedRange } from '../forecast/advised-range.ts';
import { wholePercent } from '../sprint/whole-percent.ts';
import { reasonSentence } from '../words/undefined.ts';
import { dateShort } from './day-text.ts';
import {
  areaMark,
  lineHeightPx,
  lineMark,
  type Mark,
  paragraphMark,
  symbolMarks,
  textMark,
} from './marks.ts';
import { palette } from './palette.ts';
import { pointsNumber } from './points-text.ts';
import { type RangeLayout, rangeSize } from './range-layout.ts';
import { spreadLabels } from './spread-labels.ts';

/** A word beside a height of the coming sprint. */
interface EndWord {
  readonly points: number;
  readonly text: string;
  readonly bold?: boolean;
  /** So much below the height of the points. */
  readonly lowerPx?: number;
}

export function rangeComingMarks(advice: RangeAdvice, layout: RangeLayout): Mark[] {
  const advised = advisedRange(advice.range);
  return [
    ...shapeMarks(advised, layout),
    ...words(endWords(advised), layout),
    ...daysOf(advice, layout),
    ...shortAdvice(advised, layout),
  ];
}

function shapeMarks(advised: AdvisedRange, layout: RangeLayout): Mark[] {
  const { coming, yOf } = layout;
  const { left, right } = coming;
  switch (advised.kind) {
    case 'range': {
      const box = { left, right, top: yOf(advised.highPoints), bottom: yOf(advised.lowPoints) };
      return [
        areaMark(box, palette.adviceFill),
        ...end(advised.highPoints, layout),
        ...end(advised.lowPoints, layout),
      ];
    }
    case 'at most':
      return [...end(advised.highPoints, layout), ...arrow(advised.highPoints, 'down', layout)];
    case 'at least':
      return [...end(advised.lowPoints, layout), ...arrow(advised.lowPoints, 'up', layout)];
    case 'crossed':
      return [
        ...end(advised.highPoints, layout),
        ...arrow(advised.highPoints, 'down', layout),
        ...doubtfulEnd(advised.lowPoints, layout),
      ];
    case 'middle way':
      return [
        ...doubtfulEnd(advised.highPoints, layout),
        ...doubtfulEnd(advised.lowPoints, layout),
        ...guide(advised.points, layout),
        ...symbolMarks('diamond', [(left + right) / 2, yOf(advised.points)], {
          colour: palette.advice,
          radiusPx: 8,
        }),
      ];
    case 'none':
      return [
        paragraphMark({
          text: reasonSentence(advised.why),
          x: left,
          y: coming.top,
          widthPx: rangeSize.widthPx - left - 16,
        }),
      ];
  }
}

/** A thick edge, carried on to the left as a thin one, so that past commitments can be held against it. */
function end(points: number, layout: RangeLayout): Mark[] {
  const { coming, yOf } = layout;
  const y = yOf(points);
  const edge = lineMark(
    [
      [coming.left, y],
      [coming.right, y],
    ],
    { stroke: palette.advice, widthPx: 4 },
  );
  return [...guide(points, layout), edge];
}

function guide(points: number, { plot, coming, yOf }: RangeLayout): Mark[] {
  const y = yOf(points);
  return [
    lineMark(
      [
        [plot.left, y],
        [coming.left, y],
      ],
      { stroke: palette.advice, widthPx: 1.5, dash: [7, 4] },
    ),
  ];
}

/** An end that there is but that is not advised. */
function doubtfulEnd(points: number, { coming, yOf }: RangeLayout): Mark[] {
  const y = yOf(points);
  return [
    lineMark(
      [
        [coming.left, y],
        [coming.right, y],
      ],
      { stroke: palette.ideal, widthPx: 2, dash: [3, 3] },
    ),
  ];
}

/** The side on which the range is open or goes on. */
function arrow(points: number, way: 'up' | 'down', { coming, yOf }: RangeLayout): Mark[] {
  const x = (coming.left + coming.right) / 2;
  const from = yOf(points);
  const sign = way === 'up' ? -1 : 1;
  const look = { stroke: palette.advice, widthPx: 2.5 };
  const tip = from + sign * 30;
  return [
    lineMark(
      [
        [x, from],
        [x, tip],
      ],
      look,
    ),
    lineMark(
      [
        [x - 6, tip - sign * 7],
        [x, tip],
        [x + 6, tip - sign * 7],
      ],
      look,
    ),
  ];
}

function endWords(advised: AdvisedRange): EndWord[] {
  switch (advised.kind) {
    case 'range':
      return advised.lowPoints === advised.highPoints
        ? [{ points: advised.highPoints, text: `${pointsNumber(advised.highPoints)} points`, bold: true }]
        : [
            { points: advised.highPoints, text: `at most ${pointsNumber(advised.highPoints)}`, bold: true },
            { points: advised.lowPoints, text: `at least ${pointsNumber(advised.lowPoints)}`, bold: true },
          ];
    case 'at most':
      return [
        { points: advised.highPoints, text: `at most ${pointsNumber(advised.highPoints)}`, bold: true },
        { points: advised.highPoints, text: 'low end unknown', lowerPx: 32 },
      ];
    case 'at least':
      return [
        { points: advised.lowPoints, text: `at least ${pointsNumber(advised.lowPoints)}`, bold: true },
        { points: advised.lowPoints, text: 'high end unknown', lowerPx: -32 },
      ];
    case 'crossed':
      return [
        { points: advised.highPoints, text: `at most ${pointsNumber(advised.highPoints)}`, bold: true },
        { points: advised.lowPoints, text: `low end: ${pointsNumber(advised.lowPoints)}` },
      ];
    case 'middle way':
      return [
        { points: advised.lowPoints, text: `low end: ${pointsNumber(advised.lowPoints)}` },
        { points: advised.points, text: `about ${pointsNumber(advised.points)}`, bold: true },
        { points: advised.highPoints, text: `high end: ${pointsNumber(advised.highPoints)}` },
      ];
    case 'none':
      return [];
  }
}

function words(ends: readonly EndWord[], { coming, plot, yOf }: RangeLayout): Mark[] {
  const heights = spreadLabels(
    ends.map(({ points, lowerPx = 0 }) => yOf(points) + lowerPx),
    lineHeightPx + 2,
    { top: plot.top, bottom: plot.bottom - 4 },
  );
  return ends.map(({ text, bold = false }, index) =>
    textMark({
      text,
      x: coming.right + 9,
      y: heights[index] ?? 0,
      bold,
      fill: bold ? palette.ink : palette.quietInk,
    }),
  );
}

/** Its days, where the others have theirs. */
function daysOf({ coming: sprint }: RangeAdvice, { coming, plot }: RangeLayout): Mark[] {
  const days = `${dateShort(sprint.startsOn)} to ${dateShort(sprint.endsOn)}`;
  return [
    textMark({ text: 'coming sprint', x: coming.left, y: plot.bottom + 16 }),
    textMark({ text: days, x: coming.left, y: plot.bottom + 32, fill: palette.quietInk }),
  ];
}

/** The advice once more, in the row of commitments. */
function shortAdvice(advised: AdvisedRange, { coming, rows }: RangeLayout): Mark[] {
  const advice = textMark({ text: shortText(advised), x: coming.left, y: rows.commitment, bold: true });
  if (advised.kind !== 'middle way') return [advice];
  const chance = `kept: ${wholePercent(advised.chance)}`;
  return [advice, textMark({ text: chance, x: coming.left, y: rows.verdict })];
}

export function shortText(advised: AdvisedRange): string {
  switch (advised.kind) {
    case 'range':
      return advised.lowPoints === advised.highPoints
        ? pointsNumber(advised.highPoints)
        : `${pointsNumber(advised.lowPoints)} to ${pointsNumber(advised.highPoints)}`;
    case 'at most':
    case 'crossed':
      return `at most ${pointsNumber(advised.highPoints)}`;
    case 'at least':
      return `at least ${pointsNumber(advised.lowPoints)}`;
    case 'middle way':
      return `about ${pointsNumber(advised.points)}`;
    case 'none':
      return 'no range';
  }
}
