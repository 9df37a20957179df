/** What the picture of surprise odds shows, in sentences. Pure. */
import type { OddsAdvice } from '../app/advice/advice.ts';
import { LITTLE_HISTORY_CARDS, type SurpriseOdds } from '../forecast/surprise-odds.ts';
import { isDefined } from '../sprint/undefined-value.ts';
import { wholePercent, wholePercentSpan } from '../sprint/whole-percent.ts';
import { reasonSentence } from '../words/undefined.ts';
import { countText, fittingText, spokenName } from './alt-text.ts';
import { shownOdds } from './odds-layout.ts';
import { cardsText } from './odds-option.ts';
import { pointsText } from './points-text.ts';

/** How much is told about each size; many sizes fall back to the next one. */
type Detail = 'all' | 'no amounts' | 'shares';
const details: readonly Detail[] = ['all', 'no amounts', 'shares'];

/** At most 2,000 characters: all sizes together, then each; of many sizes less is told. */
export function oddsAltText(advice: OddsAdvice): string {
  const name = spokenName(advice.team.name);
  const subject = name === '' ? 'Surprise odds by size' : `Surprise odds by size of the team “${name}”`;
  const { odds } = advice;
  if ('undefined' in odds) return fittingText([`${subject}: none. ${reasonSentence(odds.undefined)}`]);
  const shown = shownOdds(odds.sizes);
  const together =
    `${odds.withSurprise} of ${countText(odds.cards, 'card')} of ` +
    `${countText(advice.sprintsWithCards, 'closed sprint')} held surprise work ` +
    `(${wholePercent(odds.withSurprise / odds.cards)}).`;
  const leftOut = odds.sizes.length - shown.length;
  const rest =
    leftOut === 0
      ? []
      : [`${countText(leftOut, 'size')} of fewer cards ${leftOut === 1 ? 'is' : 'are'} not shown.`];
  const meaning = shown.some(({ borrows }) => borrows)
    ? [`Sizes of fewer than ${LITTLE_HISTORY_CARDS} cards borrow from the others.`]
    : [];
  return fittingText(
    details.map((detail) =>
      [
        `${subject}.`,
        together,
        ...rest,
        ...meaning,
        ...lead(detail),
        ...shown.map((size) => sizeText(size, detail)),
      ].join(' '),
    ),
  );
}

function lead(detail: Detail): string[] {
  return [
    detail === 'shares'
      ? 'The chance that a card holds surprise work:'
      : 'The chance that a card holds surprise work, and where the true chance lies 19 times in 20:',
  ];
}

function sizeText(size: SurpriseOdds, detail: Detail): string {
  const chance = `${pointsText(size.estimatePoints)}: ${wholePercent(size.likelyShare)}`;
  if (detail === 'shares') return `${chance}.`;
  const own = `${chance} (${wholePercentSpan(size.likelyInterval)}), ${cardsText(size)}`;
  return detail === 'all' && isDefined(size.medianSurprisePoints)
    ? `${own}, median surprise ${pointsText(size.medianSurprisePoints)}.`
    : `${own}.`;
}
