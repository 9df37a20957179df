/** The member's day as a message shows it. */
import type { Day } from '../../sprint/calendar.ts';
import { whyNotAnswerable } from '../../sprint/check-answer.ts';
import type { SprintCardState } from '../cards/card-line.ts';
import { cardLine, statesOf } from '../cards/card-line.ts';
import { instantOf } from '../clock/local-time.ts';
import type { AnsweredLine, PromptContent } from '../posting/message-content.ts';
import type { PromptState, RecordedFact, Sprint, SprintRecords, Team } from '../team/team.ts';

export function promptContentOf(
  team: Team,
  sprint: Sprint,
  userId: string,
  day: Day,
  records: SprintRecords,
  state: PromptState,
): PromptContent {
  const isOver = sprint.state !== 'open' && state === 'asked';
  return {
    team,
    sprint,
    userId,
    day,
    dueAt: instantOf(day, team.promptAt, team.timeZone),
    state: isOver ? 'over' : state,
    cards: answerableStates(records, userId, day).map(cardLine),
    answered: answeredLines(records, userId, day),
  };
}

/**
 * The member's cards that can be answered for on the day, in the order in which they entered: those open
 * that morning. So an answer in words finds every card at its place all day long.
 */
export function answerableStates(records: SprintRecords, userId: string, day: Day): SprintCardState[] {
  const factsOfCard = Map.groupBy(records.facts, ({ cardId }) => cardId);
  return statesOf(records).filter(
    ({ card }) =>
      card.enteredOn <= day &&
      whyNotAnswerable(card, factsOfCard.get(card.id) ?? [], userId, day) === undefined,
  );
}

function answeredLines(records: SprintRecords, userId: string, day: Day): AnsweredLine[] {
  return statesOf(records).flatMap((state) =>
    state.entries
      .filter(({ answer }) => answer.memberId === userId && answer.day === day)
      .map((entry) => ({
        card: cardLine(state),
        workedPoints: entry.workedPoints,
        leftPoints: entry.leftPoints,
        growthPoints: entry.growthPoints,
        surprisePoints: entry.surprisePoints,
        driftPoints: entry.driftPoints,
        note: (entry.answer as RecordedFact & { kind: 'answer' }).note,
      })),
  );
}
