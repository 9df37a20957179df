/** How often cards of each size held surprise work. It warns before a commitment and forbids nothing. */
import type { OddsAdvice } from '../app/advice/advice.ts';
import {
  LITTLE_HISTORY_CARDS,
  type SurpriseOdds,
  type SurpriseOddsBySize,
} from '../forecast/surprise-odds.ts';
import { isDefined } from '../sprint/undefined-value.ts';
import type { AdviceWords } from './advice.ts';
import { mrkdwn, say } from './say.ts';
import { mrkdwnOf } from './typed-text.ts';

const SIZES_AT_A_GLANCE = 4;

export function oddsWords(advice: OddsAdvice): AdviceWords {
  const { odds } = advice;
  if ('undefined' in odds) {
    return {
      lead: say('odds-none'),
      evidence: [mrkdwn('odds-none-hint')],
      details: [],
      unknown: [],
      isAnswered: false,
    };
  }
  return {
    lead: leadOf(odds),
    evidence: [
      { title: mrkdwn('odds-sizes-title'), lines: mostSurprising(odds).map(shortLine) },
      mrkdwn('odds-advice'),
    ],
    details: [
      { title: mrkdwn('odds-sizes-title'), lines: odds.sizes.map(sizeLine) },
      readingWords(odds),
      basisWords(advice, odds),
    ],
    unknown: [mrkdwn('odds-unknown-kind'), mrkdwn('odds-unknown-drift'), mrkdwn('odds-unknown-changes')],
    isAnswered: true,
  };
}

function leadOf({ sizes, cards, withSurprise }: SurpriseOddsBySize): string {
  if (withSurprise === 0) return say('odds-no-surprise', { cards });
  // The one that surely holds most: the share of a single card may be anything.
  return sizeSentences(
    sizes.reduce((most, size) => (size.likelyInterval.low >= most.likelyInterval.low ? size : most)),
  );
}

/** `Cards of 8 points hold surprise work about 6 times in 10. When they do, 3 points is typical.`, as plain text. */
export function sizeSentences(odds: SurpriseOdds): string {
  const { medianSurprisePoints: points, medianSurpriseInterval: span } = odds;
  if (!isDefined(points)) return sizeSentence(odds);
  const typical = say('undefined' in span ? 'odds-typical-of-few' : 'odds-typical', { points });
  return `${sizeSentence(odds)} ${typical}`;
}

function sizeSentence(odds: SurpriseOdds): string {
  const { borrows, cards, likelyShare: share, estimatePoints: points } = odds;
  const span = odds.likelyInterval;
  if (odds.isLargerThanAny) return say('odds-size-larger', { points, share, ...span });
  if (share === 0) return say('odds-size-never', { points });
  if (share === 1) return say('odds-size-always', { points });
  if (!borrows) return say('odds-size-known', { points, share });
  // Said of few cards as of many, it would sound surer than it is.
  return cards === 0
    ? say('odds-size-unseen', { points, share, ...span })
    : say('odds-size-little-seen', { points, share, cards, ...span });
}

/** The sizes that hold surprise work most often, as many as are read at a glance. */
function mostSurprising({ sizes }: SurpriseOddsBySize): SurpriseOdds[] {
  return sizes
    .toSorted((a, b) => b.likelyShare - a.likelyShare || a.estimatePoints - b.estimatePoints)
    .slice(0, SIZES_AT_A_GLANCE);
}

/** A share of few cards without its span would sound surer than it is. */
function shortLine(odds: SurpriseOdds): string {
  const { estimatePoints: points, cards, withSurprise, likelyShare: share, likelyInterval, borrows } = odds;
  const line = { points, cards, withSurprise, share };
  return `• ${borrows ? mrkdwn('odds-line', { ...line, ...likelyInterval }) : mrkdwn('odds-line-short', line)}`;
}

/** `• 8 points: 7 of 12 cards (58%, span 32% to 81%); typically 3 points, span 2 to 5` */
function sizeLine(odds: SurpriseOdds): string {
  const { borrows, estimatePoints, cards, withSurprise, likelyShare } = odds;
  const line = say(borrows ? 'odds-line-borrowed' : 'odds-line', {
    points: estimatePoints,
    cards,
    withSurprise,
    share: likelyShare,
    ...odds.likelyInterval,
  });
  return `• ${typicalLine(line, odds)}`;
}

function typicalLine(
  line: string,
  { medianSurprisePoints: points, medianSurpriseInterval: span }: SurpriseOdds,
) {
  if (!isDefined(points)) return mrkdwnOf(line);
  return 'undefined' in span
    ? mrkdwn('odds-line-typical', { line, points })
    : mrkdwn('odds-line-typical-span', { line, points, ...span });
}

function readingWords({ sizes, openCards }: SurpriseOddsBySize): string {
  return [
    mrkdwn('odds-reading'),
    ...(openCards > 0 ? [mrkdwn('odds-reading-open')] : []),
    ...(sizes.some(({ borrows }) => borrows)
      ? [mrkdwn('odds-reading-borrowed', { cards: LITTLE_HISTORY_CARDS })]
      : []),
  ].join(' ');
}

function basisWords({ sprints, sprintsWithCards }: OddsAdvice, odds: SurpriseOddsBySize): string {
  const { cards, withSurprise } = odds;
  const without = sprints - sprintsWithCards;
  return [
    mrkdwn('odds-basis', { sprints: sprintsWithCards, cards, withSurprise, share: withSurprise / cards }),
    ...(without === 0 ? [] : [mrkdwn('odds-without-cards', { sprints: without })]),
  ].join(' ');
}
