/** What the ledger shows about how a sprint went, as sentences. They speak of cards and of nobody. */
import type { CardLine } from '../app/cards/card-line.ts';
import type { Cause, GoodSign } from '../sprint/evidence.ts';
import { cardNameIn } from './cards.ts';
import type { Form } from './language.ts';
import { inForm, sayCode } from './say.ts';

/** @param cards of the sprint @param form in mrkdwn, cards have their links */
export function evidenceSentence(
  evidence: Cause | GoodSign,
  cards: readonly CardLine[],
  form: Form = 'mrkdwn',
): string {
  const words = inForm(form);
  const nameOf = (cardId: string) => cardNameIn(form, cardId, cards);
  switch (evidence.code) {
    case 'one-card': {
      const { cardId, driftPoints: _, ...points } = evidence;
      return words('evidence-one-card', {
        ...withoutCode(points),
        card: nameOf(cardId),
        part: evidence.points === evidence.unfinishedPoints ? 'all' : 'some',
        after: evidence.surprisePoints > 0 ? 'surprise' : 'nothing',
      });
    }
    case 'blocked': {
      const { cardId, ...counts } = evidence;
      return words('evidence-blocked', { ...withoutCode(counts), card: nameOf(cardId) });
    }
    case 'estimates-one-card': {
      const { cardId, ...points } = evidence;
      return words('evidence-estimates-one-card', {
        ...withoutCode(points),
        card: nameOf(cardId),
        part: evidence.offPoints === evidence.allPoints ? 'all' : 'some',
      });
    }
    case 'surprise-one-card': {
      const { cardId, ...points } = evidence;
      return words('evidence-surprise-one-card', {
        ...withoutCode(points),
        card: nameOf(cardId),
        part: evidence.surprisePoints === evidence.allPoints ? 'all' : 'some',
      });
    }
    case 'dropped':
      return words('evidence-dropped', {
        ...withoutCode(evidence),
        part: evidence.points === evidence.unfinishedPoints ? 'all' : 'some',
      });
    case 'grew':
      return words('evidence-grew', {
        ...withoutCode(evidence),
        by: evidence.surprisePoints <= 0 ? 'drift' : evidence.driftPoints <= 0 ? 'surprise' : 'both',
      });
    default:
      return sayCode('evidence', evidence, form);
  }
}

function withoutCode<Coded extends { readonly code: string }>({
  code: _,
  ...details
}: Coded): Omit<Coded, 'code'> {
  return details;
}
