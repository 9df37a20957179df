/** The words of the surprise odds: above them, beside their marks, and in place of them. */
import type { OddsAdvice } from '../../app/advice/advice.ts';
import { MOST_SIZES_SHOWN, sizesOfMostCards } from '../../app/advice/shown-in-chart.ts';
import {
  LITTLE_HISTORY_CARDS,
  type SurpriseOdds,
  type SurpriseOddsBySize,
} from '../../forecast/surprise-odds.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import { say } from '../say.ts';
import { altTextOf, type ChartHeading, shortName } from './chart-text.ts';

export function oddsHeading(advice: OddsAdvice): ChartHeading {
  const { odds, team } = advice;
  const heading = { title: say('odds-chart-title'), name: team.name };
  if ('undefined' in odds) return { ...heading, subtitle: say('odds-none') };
  const of = odds.sizes.length;
  const sentences = [
    basisSentence(advice, odds),
    ...(of > MOST_SIZES_SHOWN ? [say('odds-chart-sizes', { shown: MOST_SIZES_SHOWN, of })] : []),
  ];
  return { ...heading, subtitle: sentences.join(' ') };
}

function basisSentence(
  { sprintsWithCards }: OddsAdvice,
  { cards, withSurprise }: SurpriseOddsBySize,
): string {
  const share = withSurprise / cards;
  return say('odds-basis', { sprints: sprintsWithCards, cards, withSurprise, share });
}

/** `4 of 10`, `none yet`; its mark says whether a size borrows. */
export function heldWords({ cards, withSurprise }: SurpriseOdds): string {
  return cards === 0 ? say('odds-chart-none') : say('odds-chart-held', { withSurprise, cards });
}

/** In points. */
export function medianWords({ medianSurprisePoints }: SurpriseOdds): string {
  return isDefined(medianSurprisePoints)
    ? say('odds-chart-median-points', { points: medianSurprisePoints })
    : say('chart-unknown');
}

/** All sizes together, then each. The sizes of fewest cards go first when there are too many. */
export function oddsAltText(advice: OddsAdvice): string {
  const { odds, team } = advice;
  const subject = say('odds-alt-subject', { team: shortName(team.name) });
  if ('undefined' in odds) return `${subject} ${say('odds-none')}`;
  const { sizes } = odds;
  const borrowing = sizes.some(({ borrows }) => borrows);
  const summary = [
    subject,
    basisSentence(advice, odds),
    ...(borrowing ? [say('odds-alt-borrowing', { cards: LITTLE_HISTORY_CARDS })] : []),
  ];
  return altTextOf(Math.min(sizes.length, MOST_SIZES_SHOWN), (told) => [
    ...summary,
    ...(told === 0 ? [] : [say('odds-alt-sizes')]),
    ...sizesOfMostCards(sizes, told).map(sizeSentence),
    ...(told === sizes.length ? [] : [say('odds-alt-sizes-left-out', { sizes: sizes.length - told })]),
  ]);
}

function sizeSentence(size: SurpriseOdds): string {
  const { estimatePoints, cards, withSurprise, borrows, likelyShare, likelyInterval } = size;
  const { medianSurprisePoints: median } = size;
  const facts = [
    say('odds-alt-size-held', { withSurprise, cards }),
    ...(borrows ? [say('odds-alt-size-borrows')] : []),
    ...(isDefined(median) ? [say('odds-alt-size-median', { points: median })] : []),
  ];
  return say('odds-alt-size', { points: estimatePoints, share: likelyShare, ...likelyInterval, facts });
}
