/** How often cards of each size held surprise work, in sentences. It warns before a commitment and forbids nothing. */
import type { OddsAdvice } from '../../app/advice/advice.ts';
import type { SurpriseOdds, SurpriseOddsBySize } from '../../forecast/surprise-odds.ts';
import { formatPointsWithUnit } from '../../sprint/points.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import { wholePercentSpan } from '../../sprint/whole-percent.ts';
import { mrkdwnOf } from '../../words/typed-text.ts';
import type { AdviceWords } from './advice-words.ts';
import { bold } from './block-builders.ts';
import { chanceWords } from './chance-words.ts';
import { howOften } from './often-words.ts';
import { counted } from './sprint-words.ts';

const UNKNOWN = [
  'What the cards are: a new part of the system and an old one look alike at the same size.',
  'What was not called surprise work when a card grew. Growth that was put down to the estimate is not in it.',
  'What changes from here on: a team that splits its big cards changes its odds.',
];

export function oddsWords(advice: OddsAdvice): AdviceWords {
  const { odds } = advice;
  if ('undefined' in odds) {
    return {
      lead: 'No odds yet: no card of a closed sprint is known.',
      evidence: [
        'They come by themselves: when a sprint closes here, each of its cards counts. Until then, ask of every big card what could turn up in it.',
      ],
      unknown: [],
      isAnswered: false,
    };
  }
  return {
    lead: leadOf(odds),
    evidence: [
      { title: 'Cards that held surprise work, by size', lines: odds.sizes.map(sizeLine) },
      readingWords(odds),
      `${bold('Before you commit to a card of a size that often holds some')}: ask what could turn up in it, split it, or timebox a first look inside.`,
      basisWords(advice, odds),
    ],
    unknown: UNKNOWN,
    isAnswered: true,
  };
}

function leadOf({ sizes, cards, withSurprise }: SurpriseOddsBySize): string {
  if (withSurprise === 0) {
    return `No surprise work so far: ${cards === 1 ? 'the one card' : `none of ${cards} cards`} of your closed sprints held any.`;
  }
  const top = sizes.reduce((most, size) => (size.likelyShare >= most.likelyShare ? size : most));
  return `${oddsSentence(top)}.`;
}

/** `Cards of 8 points hold surprise work about 6 times in 10; when they do, 3 points is typical`, as plain text. */
export function oddsSentence(odds: SurpriseOdds): string {
  const { borrows, cards, likelyShare } = odds;
  const which = `Cards of ${formatPointsWithUnit(odds.estimatePoints)}`;
  if (likelyShare === 0) return `${which} have held no surprise work so far`;
  if (likelyShare === 1) return `${which} have always held surprise work so far${typicalWords(odds)}`;
  // Told of few cards as of many it would sound surer than it is.
  if (borrows && cards === 0) {
    return `${which} are new here; going by the other sizes, they hold surprise work ${howOften(likelyShare)}`;
  }
  if (borrows) {
    return `${which} probably hold surprise work ${howOften(likelyShare)}, going by ${counted(cards, 'card')} and the other sizes${typicalWords(odds)}`;
  }
  return `${which} hold surprise work ${howOften(likelyShare)}${typicalWords(odds)}`;
}

/** Empty where no card of the size held any. */
function typicalWords({ medianSurprisePoints }: SurpriseOdds): string {
  return isDefined(medianSurprisePoints)
    ? `; when they do, ${formatPointsWithUnit(medianSurprisePoints)} is typical`
    : '';
}

/** `• 8 points: 7 of 12 cards (58%, span 32 to 81%); typically 3 points` */
function sizeLine(odds: SurpriseOdds): string {
  const { estimatePoints, cards, withSurprise, likelyShare, likelyInterval, medianSurprisePoints } = odds;
  const span = `${chanceWords(likelyShare)}, span ${wholePercentSpan(likelyInterval)}`;
  const share = odds.borrows ? `; borrowed ${span}` : ` (${span})`;
  const typical = isDefined(medianSurprisePoints)
    ? `; typically ${formatPointsWithUnit(medianSurprisePoints)}`
    : '';
  return `• ${formatPointsWithUnit(estimatePoints)}: ${withSurprise} of ${counted(cards, 'card')}${share}${typical}`;
}

function readingWords({ sizes }: SurpriseOddsBySize): string {
  const span =
    'The span is where the true share lies 19 times in 20; “typically” is how much surprise work there was when there was any.';
  return sizes.some(({ borrows }) => borrows)
    ? `${span} “Borrowed” marks sizes of fewer than 12 cards: their share leans on the other sizes until they have a history of their own.`
    : span;
}

function basisWords({ sprints, sprintsWithCards }: OddsAdvice, odds: SurpriseOddsBySize): string {
  const share = chanceWords(odds.withSurprise / odds.cards);
  const basis = `It rests on ${counted(odds.cards, 'card')} of ${counted(sprintsWithCards, 'closed sprint')}; ${odds.withSurprise} of them held surprise work (${share}).`;
  const without = sprints - sprintsWithCards;
  if (without === 0) return mrkdwnOf(basis);
  return mrkdwnOf(
    `${basis} ${without === 1 ? 'One more sprint tells' : `${without} more sprints tell`} nothing of cards.`,
  );
}
