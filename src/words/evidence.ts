/** What the ledger shows about how a sprint went, as sentences. They speak of cards and of nobody. */
import type { CardLine } from '../app/cards/card-line.ts';
import type { Cause, GoodSign } from '../sprint/evidence.ts';
import { linkedCardName } from './cards.ts';
import { type Markup, mrkdwn, sayCode } from './say.ts';

/** In mrkdwn, for the card may have a link. @param cards of the sprint */
export function evidenceSentence(evidence: Cause | GoodSign, cards: readonly CardLine[]): string {
  switch (evidence.code) {
    case 'one-card': {
      const { cardId, driftPoints: _, ...points } = evidence;
      return mrkdwn('evidence-one-card', {
        ...withoutCode(points),
        card: nameOf(cardId, cards),
        part: evidence.points === evidence.unfinishedPoints ? 'all' : 'some',
        after: evidence.surprisePoints > 0 ? 'surprise' : 'nothing',
      });
    }
    case 'blocked': {
      const { cardId, ...counts } = evidence;
      return mrkdwn('evidence-blocked', { ...withoutCode(counts), card: nameOf(cardId, cards) });
    }
    case 'estimates-one-card': {
      const { cardId, ...points } = evidence;
      return mrkdwn('evidence-estimates-one-card', {
        ...withoutCode(points),
        card: nameOf(cardId, cards),
        part: evidence.offPoints === evidence.allPoints ? 'all' : 'some',
      });
    }
    case 'surprise-one-card': {
      const { cardId, ...points } = evidence;
      return mrkdwn('evidence-surprise-one-card', {
        ...withoutCode(points),
        card: nameOf(cardId, cards),
        part: evidence.surprisePoints === evidence.allPoints ? 'all' : 'some',
      });
    }
    case 'dropped':
      return mrkdwn('evidence-dropped', {
        ...withoutCode(evidence),
        part: evidence.points === evidence.unfinishedPoints ? 'all' : 'some',
      });
    case 'grew':
      return mrkdwn('evidence-grew', {
        ...withoutCode(evidence),
        by: evidence.surprisePoints <= 0 ? 'drift' : evidence.driftPoints <= 0 ? 'surprise' : 'both',
      });
    default:
      return sayCode('evidence', evidence, 'mrkdwn');
  }
}

function withoutCode<Coded extends { readonly code: string }>({
  code: _,
  ...details
}: Coded): Omit<Coded, 'code'> {
  return details;
}

/** A card can't be gone from its own sprint; without a name the sentence would be odd, but not wrong. */
function nameOf(cardId: string, cards: readonly CardLine[]): string | Markup {
  const card = cards.find((one) => one.cardId === cardId);
  return card ? linkedCardName(card) : '';
}
