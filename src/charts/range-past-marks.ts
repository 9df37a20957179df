/** Draws the past sprints of the range picture: their columns, and their numbers below. Pure. */
import type { RangeAdvice } from '../app/advice/advice.ts';
import type { PastSprint } from '../app/history/past-sprint.ts';
import { dateMarks } from './date-marks.ts';
import { areaMark, lineMark, type Mark, type Point, symbolMarks, textMark } from './marks.ts';
import { palette } from './palette.ts';
import { pastVerdict } from './past-verdict.ts';
import { pointsNumber } from './points-text.ts';
import { type RangeLayout, shownSprints } from './range-layout.ts';
import { spacedPositions } from './spaced-positions.ts';

/** About as wide as a digit of 13 pixels, rounded up. */
const digitPx = 8;

export function rangePastMarks(advice: RangeAdvice, layout: RangeLayout): Mark[] {
  const past = shownSprints(advice);
  const verdicts = past.map((sprint) => pastVerdict(sprint, advice.thresholds));
  return [
    ...past.flatMap((sprint, index) => columns(sprint, layout, layout.xOf(index))),
    ...dates(past, layout),
    ...rowHeads(layout),
    ...numbers(
      past.map(({ commitmentPoints }) => commitmentPoints),
      layout,
      layout.rows.commitment,
    ),
    ...numbers(
      past.map(({ pulledInPoints }) => pulledInPoints),
      layout,
      layout.rows.pulledIn,
    ),
    ...numbers(
      past.map(({ velocityPoints }) => velocityPoints),
      layout,
      layout.rows.velocity,
    ),
    ...verdicts.flatMap((verdict, index) => verdictMarks(verdict, [layout.xOf(index), layout.rows.verdict])),
    ...verdictKey(verdicts, layout),
  ];
}

/** Left what was promised with what was pulled in upon it, right what was finished. */
function columns(
  { commitmentPoints, pulledInPoints, velocityPoints }: PastSprint,
  layout: RangeLayout,
  x: number,
) {
  const { barPx, yOf, plot } = layout;
  const left = { left: x - barPx - 1, right: x - 1 };
  const committedY = yOf(commitmentPoints);
  const marks: Mark[] = [];
  if (commitmentPoints > 0) {
    const box = { ...left, top: committedY, bottom: plot.bottom };
    marks.push(areaMark(box, palette.commitmentFill, palette.commitment));
  }
  if (pulledInPoints !== undefined && pulledInPoints > 0) {
    const box = { ...left, top: yOf(commitmentPoints + pulledInPoints), bottom: committedY };
    marks.push(areaMark(box, palette.card, palette.pulledIn), ...stripes(box));
  }
  if (velocityPoints !== undefined && velocityPoints > 0) {
    const box = { left: x + 1, right: x + 1 + barPx, top: yOf(velocityPoints), bottom: plot.bottom };
    marks.push(areaMark(box, palette.velocity));
  }
  return marks;
}

/** Level stripes, so that pulled-in work is told by more than its colour. */
function stripes({ left, right, top, bottom }: { left: number; right: number; top: number; bottom: number }) {
  const marks: Mark[] = [];
  for (let y = bottom - 2; y > top; y -= 4) {
    marks.push(
      lineMark(
        [
          [left, y],
          [right, y],
        ],
        { stroke: palette.pulledIn, widthPx: 2 },
      ),
    );
  }
  return marks;
}

function dates(past: readonly PastSprint[], { bandPx, plot, xOf }: RangeLayout): Mark[] {
  return dateMarks(
    past.map(({ endsOn }) => endsOn),
    { bandPx, bottomPx: plot.bottom, xOf },
  );
}

/** The names of the rows, each with a sample of what is drawn above. */
function rowHeads({ plot, rows }: RangeLayout): Mark[] {
  const sampleX = plot.left - 112;
  const head = (text: string, y: number) => textMark({ text, x: sampleX + 20, y });
  const box = (y: number) => ({ left: sampleX, right: sampleX + 12, top: y - 6, bottom: y + 6 });
  return [
    textMark({ text: 'ended', x: sampleX + 20, y: plot.bottom + 16, fill: palette.quietInk }),
    areaMark(box(rows.commitment), palette.commitmentFill, palette.commitment),
    head('commitment', rows.commitment),
    areaMark(box(rows.pulledIn), palette.card, palette.pulledIn),
    ...stripes(box(rows.pulledIn)),
    head('pulled in', rows.pulledIn),
    areaMark(box(rows.velocity), palette.velocity),
    head('velocity', rows.velocity),
    head('verdict', rows.verdict),
  ];
}

/** The latest first, where there is no room for all; a dash for what nobody recorded. */
function numbers(amounts: readonly (number | undefined)[], { bandPx, xOf }: RangeLayout, y: number): Mark[] {
  const texts = amounts.map((points) => (points === undefined ? '–' : pointsNumber(points)));
  const widestPx = (Math.max(0, ...texts.map((text) => text.length)) + 1) * digitPx;
  const latestFirst = texts.map((_, index) => texts.length - 1 - index);
  const shown = spacedPositions(latestFirst, widestPx / bandPx);
  return texts.flatMap((text, index) =>
    shown.has(index) ? [textMark({ text, x: xOf(index), y, align: 'center' })] : [],
  );
}

type PastVerdict = ReturnType<typeof pastVerdict>;

/** Symbols and what they mean, below all; only those that are there. */
function verdictKey(verdicts: readonly PastVerdict[], { plot, rows }: RangeLayout): Mark[] {
  const present = (['kept', 'missed', 'no plan'] as const).filter((verdict) => verdicts.includes(verdict));
  return present.flatMap((verdict, place): Mark[] => {
    const x = plot.left + 10 + place * 84;
    const y = rows.key;
    return [
      ...verdictMarks(verdict, [x, y]),
      textMark({ text: verdict, x: x + 13, y, fill: palette.quietInk }),
    ];
  });
}

function verdictMarks(verdict: PastVerdict, at: Point): Mark[] {
  const look = { colour: palette.ink, radiusPx: 5.5, widthPx: 2.5 };
  switch (verdict) {
    case 'kept':
      return symbolMarks('tick', at, look);
    case 'missed':
      return symbolMarks('cross', at, look);
    case 'no plan':
      return symbolMarks('circle', at, { ...look, radiusPx: 4.5, body: 'open', widthPx: 1.5 });
    case 'not known':
      return [textMark({ text: '–', x: at[0], y: at[1], align: 'center' })];
  }
}
