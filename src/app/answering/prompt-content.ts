/** The member's day as a message shows it. */
import type { Day } from '../../sprint/calendar.ts';
import { whyNotAnswerable } from '../../sprint/check-answer.ts';
import { type CardLine, cardLine, isOpenCard, type SprintCardState, statesOf } from '../cards/card-line.ts';
import { lastCallAsksBefore } from '../clock/sprint-clock.ts';
import type {
  Member,
  Prompt,
  PromptState,
  RecordedFact,
  Sprint,
  SprintHeading,
  SprintRecords,
  Team,
} from '../team/team.ts';

/** What a member said about one card on the day. */
export interface AnsweredLine {
  readonly card: CardLine;
  readonly workedPoints: number;
  readonly leftPoints: number;
  readonly growthPoints: number;
  readonly surprisePoints: number;
  readonly driftPoints: number;
  readonly note: string;
}

/** A card with the answer about it that counts, the latest of any owner; undefined: there is none yet. */
export interface PromptCard extends CardLine {
  readonly saidLast?: { readonly userId: string; readonly day: Day; readonly at: Date } | undefined;
}

/** The member's day: what is asked, or how it was met. */
export interface PromptContent extends SprintHeading {
  readonly userId: string;
  readonly day: Day;
  /** When it is the member's time to be asked on that day; with what is posted for the first time. */
  readonly dueAt?: Date;
  /** `listed`: on the first morning there is nothing to ask yet. */
  readonly state: 'listed' | PromptState | 'over';
  /** The member's cards that were open that morning, in the order in which an answer in words counts them: 1, 2, 3, … */
  readonly cards: readonly PromptCard[];
  readonly answered: readonly AnsweredLine[];
  /** How many cards of other teams are listed before, in a message about several. */
  readonly placesBefore?: number;
  /** How many cards are listed in all; undefined: only these. */
  readonly placesInAll?: number;
  /** The person's days on other teams that the same message is about. */
  readonly others?: readonly PromptContent[];
  /** Today's prompt is brought up to date with it, so the person needs no other message that says the same. */
  readonly isInPrompt?: boolean;
}

/** Whether the last call has nothing to ask the member: they are away, or said in the hour before it how things are. */
export function needsNoLastCall(
  team: Pick<Team, 'timeZone'>,
  sprint: Sprint,
  userId: string,
  { facts }: SprintRecords,
  prompt: Prompt | undefined,
): boolean {
  const askedBefore = lastCallAsksBefore(team, sprint);
  return (
    prompt?.state === 'away' ||
    (prompt?.answeredAt !== undefined && prompt.answeredAt >= askedBefore) ||
    facts.some((fact) => fact.kind === 'answer' && fact.memberId === userId && fact.recordedAt >= askedBefore)
  );
}

/** The day was met, or co-owners have said today what is left on each of the member's open cards. */
export function needsNoReminder(
  _team: Pick<Team, 'timeZone'>,
  _sprint: Sprint,
  userId: string,
  records: SprintRecords,
  prompt: Prompt | undefined,
): boolean {
  if (prompt === undefined) return false;
  if (prompt.state !== 'asked') return true;
  const { day } = prompt;
  const answered = new Set(
    records.facts.filter((fact) => fact.kind === 'answer' && fact.day === day).map(({ cardId }) => cardId),
  );
  return answerableStates(records, userId, day)
    .filter(isOpenCard)
    .every(({ card }) => answered.has(card.id));
}

export function promptContentOf(
  team: Team,
  sprint: Sprint,
  member: Pick<Member, 'userId' | 'ownPrompt'>,
  day: Day,
  records: SprintRecords,
  state: PromptState,
): PromptContent {
  const { userId } = member;
  const isOver = sprint.state !== 'open' && state === 'asked';
  return {
    team,
    sprint,
    userId,
    day,
    state: isOver ? 'over' : state,
    cards: answerableStates(records, userId, day).map(promptCard),
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

function promptCard(state: SprintCardState): PromptCard {
  const last = state.entries.at(-1)?.answer as (RecordedFact & { kind: 'answer' }) | undefined;
  return {
    ...cardLine(state),
    saidLast: last && { userId: last.memberId, day: last.day, at: last.recordedAt },
  };
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
