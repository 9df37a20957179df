/** Asks why cards grew, after an answer in words. Nothing has been recorded when this is shown. */
import type { TypedAnswer } from '../../../app/answering/read-answers.ts';
import type { AnswerOutcome, GrownCard } from '../../../app/answering/record-answers.ts';
import { linkedCardName } from '../../../words/cards.ts';
import { person } from '../../../words/people.ts';
import { mrkdwn, say } from '../../../words/say.ts';
import { teamTime } from '../../../words/sprint.ts';
import { encodeAnswers, encodeValue } from '../../button-values.ts';
import { ACTIONS } from '../../ids.ts';
import { actions, button, context, lead, section } from '../block-builders.ts';
import { lineList } from '../line-sections.ts';
import { type MessageView, messageView } from '../message-view.ts';

type GrowthToExplain = Extract<AnswerOutcome, { kind: 'growth-to-explain' }>;

export function growthMessage(outcome: GrowthToExplain): MessageView {
  const { grown } = outcome;
  const isContested = grown.every(({ saidByOther }) => saidByOther !== undefined);
  const lines = grown.map((card) => growthLine(card, outcome));
  return messageView([
    lead(isContested ? say('growth-title-other') : say('growth-title', { cards: grown.length })),
    lineList('', lines, (count) => mrkdwn('cards-more', { cards: count })),
    section(mrkdwn('growth-not-recorded')),
    actions(buttons(outcome)),
    context(mrkdwn('growth-explained')),
  ]);
}

function growthLine({ card, growthPoints, saidByOther }: GrownCard, { heading }: GrowthToExplain): string {
  const about = { card: linkedCardName(card), points: growthPoints };
  if (!saidByOther) return mrkdwn('growth-line', about);
  return mrkdwn('growth-line-other', {
    ...about,
    who: person(saidByOther.userId),
    left: say('cards-left', { points: saidByOther.leftPoints }),
    moment: teamTime(saidByOther.at, heading.team.timeZone),
  });
}

/** In place of the question once it is answered, when the day's prompt shows the rest. */
export function growthExplainedMessage(): MessageView {
  return messageView([lead(say('growth-recorded'))]);
}

function buttons(outcome: GrowthToExplain) {
  const { heading, day, answers, grown, asOf } = outcome;
  const sprintId = heading.sprint.id;
  const growthOf = new Map(grown.map(({ card, growthPoints }) => [card.cardId, growthPoints]));
  const explained = (surprise: (growthPoints: number) => number): string | undefined =>
    encodeAnswers({
      sprintId,
      day,
      asOf,
      answers: answers.map((answer): TypedAnswer => {
        const growthPoints = growthOf.get(answer.cardId);
        return growthPoints === undefined ? answer : { ...answer, surprise: String(surprise(growthPoints)) };
      }),
    });
  const allSurprise = explained((growthPoints) => growthPoints);
  const allDrift = explained(() => 0);
  const asTyped = encodeAnswers({ sprintId, day, asOf, answers: [...answers] });
  const contested = new Set(grown.filter(({ saidByOther }) => saidByOther).map(({ card }) => card.cardId));
  const others = answers.filter(({ cardId }) => !contested.has(cardId));
  const keepOther =
    others.length === 0
      ? encodeValue({ sprintId, day })
      : encodeAnswers({ sprintId, day, asOf, answers: others });
  return [
    ...(allSurprise
      ? [button(say('growth-surprise-button'), { actionId: ACTIONS.growthAllSurprise, value: allSurprise })]
      : []),
    ...(allDrift
      ? [button(say('growth-drift-button'), { actionId: ACTIONS.growthAllDrift, value: allDrift })]
      : []),
    button(say(asTyped ? 'growth-each-button' : 'growth-form-button'), {
      actionId: ACTIONS.growthSomeOfEach,
      value: asTyped ?? encodeValue({ sprintId, day }),
    }),
    ...(keepOther && contested.size > 0
      ? [button(say('growth-keep-other-button'), { actionId: ACTIONS.growthKeepOther, value: keepOther })]
      : []),
  ];
}
