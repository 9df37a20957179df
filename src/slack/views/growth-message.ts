/** Asks why cards grew, after an answer in words. Nothing has been recorded when this is shown. */
import type { TypedAnswer } from '../../app/answering/read-answers.ts';
import type { AnswerOutcome } from '../../app/answering/record-answers.ts';
import { formatPointsWithUnit } from '../../sprint/points.ts';
import { encodeAnswers, encodeValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import { actions, button, context, lead, section } from './block-builders.ts';
import { cardName } from './card-words.ts';
import { GROWTH_EXPLAINED } from './growth-words.ts';
import { lineSections } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';
import { counted } from './sprint-words.ts';

type GrowthToExplain = Extract<AnswerOutcome, { kind: 'growth-to-explain' }>;

export function growthMessage(outcome: GrowthToExplain): MessageView {
  const { grown } = outcome;
  const lines = grown.map(
    ({ card, growthPoints }) => `• ${cardName(card)}: grew by ${formatPointsWithUnit(growthPoints)}`,
  );
  return messageView([
    lead(grown.length === 1 ? 'A card grew. Why?' : `${counted(grown.length, 'card')} grew. Why?`),
    ...lineSections('', lines, {
      maxSections: 20,
      more: (count) => `… and ${counted(count, 'more card', 'more cards')}.`,
    }),
    section('Nothing is recorded yet. It will be as soon as you say why:'),
    actions(buttons(outcome)),
    context(GROWTH_EXPLAINED),
  ]);
}

function buttons(outcome: GrowthToExplain) {
  const { heading, day, answers, grown } = outcome;
  const sprintId = heading.sprint.id;
  const growthOf = new Map(grown.map(({ card, growthPoints }) => [card.cardId, growthPoints]));
  const explained = (surprise: (growthPoints: number) => number): string | undefined =>
    encodeAnswers({
      sprintId,
      day,
      answers: answers.map((answer): TypedAnswer => {
        const growthPoints = growthOf.get(answer.cardId);
        return growthPoints === undefined ? answer : { ...answer, surprise: String(surprise(growthPoints)) };
      }),
    });
  const allSurprise = explained((growthPoints) => growthPoints);
  const allDrift = explained(() => 0);
  const asTyped = encodeAnswers({ sprintId, day, answers: [...answers] });
  return [
    ...(allSurprise
      ? [button('All surprise work', { actionId: ACTIONS.growthAllSurprise, value: allSurprise })]
      : []),
    ...(allDrift
      ? [button('All estimate drift', { actionId: ACTIONS.growthAllDrift, value: allDrift })]
      : []),
    button(asTyped ? 'Some of each…' : 'Answer in the form…', {
      actionId: ACTIONS.growthSomeOfEach,
      value: asTyped ?? encodeValue({ sprintId, day }),
    }),
  ];
}
