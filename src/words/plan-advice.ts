/** What a plan means before the team commits to it: the range and its big cards. As mrkdwn. */
import type { RangeAdvice } from '../app/advice/advice.ts';
import type { BigCards } from '../app/advice/odds-advice.ts';
import type { SetReading } from '../app/advice/set-advice.ts';
import type { CommitmentChances } from '../forecast/commitment-range.ts';
import { isDefined, type UndefinedValue } from '../sprint/undefined-value.ts';
import { numbered } from './cards.ts';
import { sizeSentences } from './odds.ts';
import { rangeLead, scaledTo } from './range.ts';
import { mrkdwn, say } from './say.ts';
import { mrkdwnOf } from './typed-text.ts';

const NUMBERS_SHOWN = 12;
/** From here on a size in a plan is worth a warning. */
const OFTEN_FROM = 0.5;

/** How much to commit to, and whether the plan leaves enough to do; whether it is kept, its very cards tell. */
export function planRangeWords(
  advice: RangeAdvice,
  { ranOut }: Pick<CommitmentChances, 'ranOut'>,
  commitmentPoints: number,
): string {
  const { range } = advice;
  const lead = mrkdwnOf(rangeLead(advice));
  if ('undefined' in range) return `${lead} ${mrkdwn('advice-import-hint')}`;
  const basis = `${lead} ${mrkdwn('plan-range-basis', { sprints: range.sprints, scaledTo: scaledTo(range) })}`;
  const isAdvised = !('undefined' in range.advised) && range.advised.points === commitmentPoints;
  if (!isDefined(ranOut) || isAdvised) return basis;
  const chance = say('range-chance-ran-out', { chance: ranOut });
  return `${basis}\n${mrkdwn('plan-run-out', { points: commitmentPoints, chance })}`;
}

/**
 * How likely these very cards are kept, and which of them endangers that most.
 *
 * @param ofAmount the chance to keep as many points, however they are cut
 */
export function planSetWords(
  { chance, points, floor, isAllNeeded, endangering, sprints }: SetReading,
  ofAmount: CommitmentChances['kept'],
): string {
  const { kept, all } = chance;
  return [
    isAllNeeded
      ? mrkdwn('plan-set-all-needed', { floor, points, kept })
      : mrkdwn('plan-set-chances', { floor, points, kept, all }),
    ...(isDefined(ofAmount) && tenths(ofAmount) > tenths(kept)
      ? [mrkdwn('plan-set-smaller', { kept: ofAmount })]
      : []),
    ...(endangering && tenths(endangering.chanceWithout.kept) > tenths(kept)
      ? [
          mrkdwn('plan-set-endangering', {
            ...numbered(endangering.card),
            points: endangering.card.estimatePoints,
            floor,
            without: endangering.chanceWithout.kept,
          }),
        ]
      : []),
    mrkdwn('plan-set-basis', { sprints }),
  ].join(' ');
}

/** As the chance is told. */
function tenths(chance: number): number {
  return Math.round(chance * 10);
}

/** The odds of the big cards of a plan; lines of mrkdwn, none where there is no such card. */
export function planOddsWords(bigCards: readonly BigCards[] | UndefinedValue): string[] {
  if ('undefined' in bigCards) return [mrkdwn('plan-odds-none')];
  const isOften = bigCards.some(({ odds }) => odds.likelyShare >= OFTEN_FROM);
  return [...bigCards.map(bigCardsLine), ...(isOften ? [mrkdwn('plan-odds-advice')] : [])];
}

/** `• Cards of 8 points hold surprise work about 6 times in 10. In this plan: cards 2 and 5.` */
function bigCardsLine({ odds, cardNumbers }: BigCards): string {
  const shown = cardNumbers.slice(0, NUMBERS_SHOWN).map(String);
  const count = cardNumbers.length - shown.length;
  const numbers = [...shown, ...(count > 0 ? [say('plan-odds-more-cards', { count })] : [])];
  return `• ${mrkdwnOf(sizeSentences(odds))} ${mrkdwn('plan-odds-cards', { count: cardNumbers.length, numbers })}`;
}
