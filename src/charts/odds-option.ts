/** Lays the surprise odds out: a dot and its whiskers for each size, and the same in numbers. Pure; draws nothing. */
import type { EChartsOption } from 'echarts';
import type { OddsAdvice } from '../app/advice/advice.ts';
import {
  LITTLE_HISTORY_CARDS,
  type SurpriseOdds,
  type SurpriseOddsBySize,
} from '../forecast/surprise-odds.ts';
import { isDefined } from '../sprint/undefined-value.ts';
import { wholePercent, wholePercentSpan } from '../sprint/whole-percent.ts';
import { reasonSentence } from '../words/undefined.ts';
import { countText } from './alt-text.ts';
import { lineMark, type Mark, paragraphMark, symbolMarks, textMark } from './marks.ts';
import { marksOption, titleWithName } from './marks-option.ts';
import { type OddsLayout, oddsColumns, oddsLayout, shownOdds } from './odds-layout.ts';
import { palette } from './palette.ts';
import { pointsText } from './points-text.ts';

export interface OddsChart {
  readonly option: EChartsOption;
  readonly size: OddsLayout['size'];
}

/** Without odds, the reason stands in the picture's place. */
export function oddsChart(advice: OddsAdvice): OddsChart {
  const { odds } = advice;
  const title = titleWithName('Surprise odds by size', advice.team.name);
  if ('undefined' in odds) {
    const { size, plot } = oddsLayout(1);
    const reason = paragraphMark({ text: reasonSentence(odds.undefined), x: 20, y: plot.top, widthPx: 760 });
    return { size, option: marksOption({ title, subtitle: 'no odds yet', size, marks: [reason] }) };
  }
  const shown = shownOdds(odds.sizes);
  const layout = oddsLayout(shown.length);
  const subtitle = oddsSubtitle(odds, advice.sprintsWithCards, shown.length);
  return {
    size: layout.size,
    option: marksOption({ title, subtitle, size: layout.size, marks: oddsMarks(odds, shown, layout) }),
  };
}

function oddsSubtitle({ sizes, cards, withSurprise }: SurpriseOddsBySize, sprints: number, shown: number) {
  const held = `${withSurprise} of ${countText(cards, 'card')} of ${countText(sprints, 'closed sprint')} held surprise work`;
  return shown === sizes.length ? held : `${held} · the ${shown} sizes of most cards, of ${sizes.length}`;
}

export function oddsMarks(
  odds: SurpriseOddsBySize,
  shown: readonly SurpriseOdds[],
  layout: OddsLayout,
): Mark[] {
  return [
    ...axisMarks(layout),
    ...allSizesMarks(odds, layout),
    ...heads(layout),
    ...shown.flatMap((size, row) => rowMarks(size, layout, layout.yOf(row))),
    ...keyMarks(shown, layout),
  ];
}

function axisMarks({ plot, xOf }: OddsLayout): Mark[] {
  const shares = [0, 0.25, 0.5, 0.75, 1];
  return shares.flatMap((share): Mark[] => {
    const x = Math.round(xOf(share)) + 0.5;
    return [
      lineMark(
        [
          [x, plot.top],
          [x, plot.bottom],
        ],
        { stroke: share === 0 ? palette.axis : palette.gridLine, under: true },
      ),
      textMark({
        text: wholePercent(share),
        x,
        y: plot.bottom + 14,
        align: 'center',
        fill: palette.quietInk,
      }),
    ];
  });
}

/** A dashed upright line at the share of all sizes together. */
function allSizesMarks({ cards, withSurprise }: SurpriseOddsBySize, { plot, xOf }: OddsLayout): Mark[] {
  const share = withSurprise / cards;
  const x = Math.round(xOf(share)) + 0.5;
  return [
    lineMark(
      [
        [x, plot.top - 6],
        [x, plot.bottom],
      ],
      { stroke: palette.ideal, widthPx: 1.5, dash: [6, 5] },
    ),
    textMark({
      text: `all sizes ${wholePercent(share)}`,
      x: Math.min(Math.max(x, plot.left + 44), plot.right - 44),
      y: plot.top - 16,
      align: 'center',
      fill: palette.quietInk,
    }),
  ];
}

function heads({ plot }: OddsLayout): Mark[] {
  const top = plot.top - 25;
  const head = (text: string, x: number, align: 'left' | 'right' = 'left') =>
    textMark({ text, x, y: top, align, fill: palette.quietInk });
  return [
    head('\nestimate', oddsColumns.sizeEnd, 'right'),
    head('chance of\nsurprise work', oddsColumns.share),
    head('cards that\nheld some', oddsColumns.cards),
    head('median\nsurprise', oddsColumns.surprise),
  ];
}

function rowMarks(size: SurpriseOdds, { plot, xOf }: OddsLayout, y: number): Mark[] {
  const { low, high } = size.likelyInterval;
  const quiet = { y, fill: palette.quietInk };
  const base: [number, number][] = [
    [plot.left, y],
    [plot.right, y],
  ];
  return [
    lineMark(base, { stroke: palette.gridLine, under: true }),
    ...whiskers(xOf(low), xOf(high), y),
    ...oddsDot(size.borrows, xOf(size.likelyShare), y),
    textMark({ text: pointsText(size.estimatePoints), x: oddsColumns.sizeEnd, y, align: 'right' }),
    textMark({ text: wholePercent(size.likelyShare), x: oddsColumns.share, y, bold: true }),
    textMark({ text: wholePercentSpan(size.likelyInterval), x: oddsColumns.interval, ...quiet }),
    textMark({ text: cardsText(size), x: oddsColumns.cards, y }),
    textMark({
      text: isDefined(size.medianSurprisePoints) ? pointsText(size.medianSurprisePoints) : '–',
      x: oddsColumns.surprise,
      y,
    }),
  ];
}

/** `4 of 10 cards, borrows`, `no card yet, borrows`. */
export function cardsText({ cards, withSurprise, borrows }: SurpriseOdds): string {
  const count = cards === 0 ? 'no card yet' : `${withSurprise} of ${countText(cards, 'card')}`;
  return borrows ? `${count}, borrows` : count;
}

function whiskers(left: number, right: number, y: number): Mark[] {
  const look = { stroke: palette.surprise, widthPx: 2 };
  const end = (x: number) =>
    lineMark(
      [
        [x, y - 5],
        [x, y + 5],
      ],
      look,
    );
  return [
    lineMark(
      [
        [left, y],
        [right, y],
      ],
      look,
    ),
    end(left),
    end(right),
  ];
}

/** Open and cornered where the share is drawn towards the other sizes, else filled and round. */
function oddsDot(borrows: boolean, x: number, y: number): Mark[] {
  return borrows
    ? symbolMarks('diamond', [x, y], { colour: palette.surprise, radiusPx: 5.5, body: 'open' })
    : symbolMarks('circle', [x, y], { colour: palette.surprise, radiusPx: 5.5 });
}

/** What the shapes mean; only of those that are there. */
function keyMarks(shown: readonly SurpriseOdds[], { plot }: OddsLayout): Mark[] {
  const keys = [
    ...(shown.some(({ borrows }) => !borrows) ? [{ borrows: false, text: 'from its own cards' }] : []),
    ...(shown.some(({ borrows }) => borrows)
      ? [{ borrows: true, text: `fewer than ${LITTLE_HISTORY_CARDS} cards: borrows from the other sizes` }]
      : []),
  ];
  const y = plot.bottom + 46;
  const widthsPx = [0, 170];
  const shapes = keys.flatMap(({ borrows, text }, place): Mark[] => {
    const x = plot.left + (widthsPx[place] ?? 0);
    return [...oddsDot(borrows, x, y), textMark({ text, x: x + 14, y, fill: palette.quietInk })];
  });
  return [
    ...shapes,
    ...whiskers(plot.left - 8, plot.left + 8, y + 24),
    textMark({
      text: 'the true chance lies within the line 19 times in 20',
      x: plot.left + 18,
      y: y + 24,
      fill: palette.quietInk,
    }),
  ];
}
