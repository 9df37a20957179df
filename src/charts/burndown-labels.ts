/**
 * The words written straight into the burndown picture: names and values at the ends of the lines, names and
 * sums of the two tracks, and today. Pure: gives ECharts graphic elements, at places that keep clear of the
 * lines and of each other.
 */
import type { Burndown } from '../sprint/burndown.ts';
import type { BurndownLayout } from './burndown-layout.ts';
import { type Label, lineHeightPx, lineMark, type Mark, textMark } from './marks.ts';
import { palette } from './palette.ts';
import { pointsNumber } from './points-text.ts';

const gutterGapPx = 10;
/** About as wide as "99950.5 left" in bold. */
const longestLabelPx = 105;
/** Row of the axis name and of "today", above the plot. */
const rowAboveY = 80;

export function burndownLabels(burndown: Burndown, layout: BurndownLayout): Mark[] {
  const labels = [
    axisName(layout),
    ...lineEndLabels(burndown, layout),
    ...trackLabels(burndown, layout),
    ...todayLabel(layout),
  ];
  return [...todayLine(layout), ...labels.map(textMark)];
}

function axisName({ leftPlot }: BurndownLayout): Label {
  return { text: 'points left', x: leftPlot.left - 8, y: rowAboveY, align: 'right', fill: palette.quietInk };
}

function lineEndLabels({ days, commitmentPoints }: Burndown, layout: BurndownLayout): Label[] {
  const { leftEnd, leftPlot, yOf } = layout;
  const gutterX = leftPlot.right + gutterGapPx;
  const idealY = yOf(days.at(-1)?.idealPoints ?? 0);
  const leftY = yOf(leftEnd.leftPoints);
  const ideal = { text: 'ideal', x: gutterX, y: idealY, fill: palette.quietInk };
  const left = { text: `${pointsNumber(leftEnd.leftPoints)} left`, fill: palette.left, bold: true };
  // Without a commitment or a day there is no pace to hold, and no ideal line is drawn.
  const drawsIdeal = commitmentPoints > 0 && days.length > 0;

  if (leftEnd.position < days.length)
    return [...(drawsIdeal ? [ideal] : []), { ...left, ...besideLeftEnd(layout) }];
  if (!drawsIdeal) return [{ ...left, x: gutterX, y: leftY }];

  // Both lines end at the last day: each label gives way by half of what the two overlap.
  const shiftPx = Math.max(0, lineHeightPx - Math.abs(idealY - leftY)) / 2;
  const leftIsAbove = leftY <= idealY;
  return [
    { ...ideal, y: idealY + (leftIsAbove ? shiftPx : -shiftPx) },
    { ...left, x: gutterX, y: leftY + (leftIsAbove ? -shiftPx : shiftPx) },
  ];
}

/** The side of a point in mid-plot where its own line does not pass, and the ideal line seldom does. */
function besideLeftEnd({ leftEnd, leftPlot, xOf, yOf }: BurndownLayout) {
  const x = xOf(leftEnd.position);
  const y = yOf(leftEnd.leftPoints);
  const isBelowIdeal = leftEnd.leftPoints < leftEnd.idealPoints;
  const hasRoomBelow = leftPlot.bottom - y > lineHeightPx + 6;
  if (isBelowIdeal && hasRoomBelow) {
    const goesLeft = !leftEnd.rising && x - longestLabelPx > leftPlot.left;
    return goesLeft
      ? { x: x - 8, y: y + 13, align: 'right' as const }
      : { x: x + 8, y: y + 13, align: 'left' as const };
  }
  // Near the bottom it keeps above the row where the ideal line has its label.
  return { x: x + 8, y: Math.min(y - 12, leftPlot.bottom - lineHeightPx - 1), align: 'left' as const };
}

function trackLabels({ days }: Burndown, layout: BurndownLayout): Label[] {
  const tracks = [
    { name: 'pulled-in\nwork', box: layout.pulledInTrack, amounts: days.map((day) => day.pulledInPoints) },
    { name: 'surprise\nwork', box: layout.surpriseTrack, amounts: days.map((day) => day.surprisePoints) },
  ];
  return tracks.flatMap(({ name, box, amounts }) => {
    const y = (box.top + box.bottom) / 2;
    const sum = amounts.reduce((total, amount) => total + amount, 0);
    const sumText = amounts.every((amount) => amount === 0) ? 'none' : `${pointsNumber(sum)} in all`;
    return [
      { text: name, x: box.left - 8, y, align: 'right' as const },
      { text: sumText, x: box.right + gutterGapPx, y },
    ];
  });
}

function todayLabel({ todayPosition, xOf }: BurndownLayout): Label[] {
  return todayPosition === undefined
    ? []
    : [{ text: 'today', x: xOf(todayPosition), y: rowAboveY, align: 'center' }];
}

/** One upright line through all three plots. */
function todayLine({ todayPosition, xOf, leftPlot, surpriseTrack }: BurndownLayout): Mark[] {
  if (todayPosition === undefined) return [];
  // On a whole pixel, where a thin line is sharp.
  const x = Math.round(xOf(todayPosition));
  return [
    lineMark(
      [
        [x, leftPlot.top - 6],
        [x, surpriseTrack.bottom],
      ],
      { stroke: palette.today },
    ),
  ];
}
