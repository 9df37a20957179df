/** Finds what the notes beyond the ratios are made from. Decides nothing: when there is a note, the core knows. */
import type { AnswerCount } from '../../sprint/answer-rate.ts';
import type { CarriedOverCard } from '../../sprint/coaching-note.ts';
import type { SprintHabits } from '../../sprint/habit-notes.ts';
import { memberShareOf } from '../../sprint/work-calendar.ts';
import { cardIdentity, isOpenCard, statesOf } from '../cards/card-line.ts';
import { dayAt, instantOf } from '../clock/local-time.ts';
import { promptInstant } from '../clock/prompt-time.ts';
import { isQuestionDay, sprintDays } from '../clock/sprint-clock.ts';
import type { OwnerMove } from '../ports/sprints.ts';
import type { Reading } from '../ports/store.ts';
import {
  everWorkersOf,
  type Member,
  type Prompt,
  type Sprint,
  type SprintCard,
  type SprintRecords,
  type Team,
} from '../team/team.ts';

type Move = Pick<OwnerMove, 'cardId' | 'userId' | 'kind' | 'day'>;

export async function sprintHabits(
  read: Reading,
  team: Team,
  sprint: Sprint,
  records: SprintRecords,
): Promise<SprintHabits> {
  const days = sprintDays(team, sprint);
  const prompts = await read.promptsOf(days.map((day) => ({ sprintId: sprint.id, day })));
  const asked = askedPrompts(team, sprint, everWorkersOf(await read.membersOf(team.id), sprint.id), prompts);
  return {
    answers: answerCount(team, sprint, asked, records, await read.ownerMovesOf(sprint.id)),
    carriedOver: await carriedOver(read, sprint, records),
  };
}

/**
 * The questions that members were asked on days on which they work.
 *
 * A day that somebody met before the prompt's time counts as one asked; an answer that nobody had asked for does not
 * count. A day off is no question, even if it was said only after asking, nor is the list of the first morning.
 */
export function askedPrompts(
  team: Pick<Team, 'timeZone' | 'promptAt' | 'workingDays' | 'daysOff'>,
  sprint: Pick<Sprint, 'startsOn' | 'endsOn'>,
  members: readonly Member[],
  prompts: readonly Prompt[],
): Prompt[] {
  const memberOf = new Map(members.map((member) => [member.userId, member]));
  return prompts.filter(({ userId, postId, day, answeredAt }) => {
    const member = memberOf.get(userId);
    if (member && memberShareOf(team, member, day) === 0) return false;
    if (!isQuestionDay(team, sprint, member, day)) return false;
    return (
      postId !== undefined || (answeredAt !== undefined && answeredAt < promptInstant(team, member, day))
    );
  });
}

/**
 * The questions of a sprint that there was something to say to, and how many of them were met.
 *
 * Left out are prompts not met by somebody whose cards were all finished, dropped or given away by that evening, and those of
 * the day on which the sprint was closed before its time.
 *
 * @param ownerMoves in order; without them, the cards had the same owners all the time
 */
export function answerCount(
  team: Pick<Team, 'timeZone'>,
  sprint: Pick<Sprint, 'endsOn' | 'closesAt' | 'closedAt'>,
  asked: readonly Prompt[],
  records: SprintRecords,
  ownerMoves: readonly Move[] = [],
): AnswerCount {
  const met = asked.filter(({ state }) => state !== 'asked');
  const closedEarlyOn = earlyClosingDay(team, sprint);
  const unmet = asked.filter(
    (prompt) =>
      prompt.state === 'asked' &&
      !(closedEarlyOn !== undefined && prompt.day >= closedEarlyOn) &&
      hasOpenCardsAtEvening(prompt, records, ownerMoves),
  );
  return { prompts: met.length + unmet.length, met: met.length };
}

/** The day on which the sprint was closed before its time; undefined when it was not. */
function earlyClosingDay(
  team: Pick<Team, 'timeZone'>,
  { endsOn, closesAt, closedAt }: Pick<Sprint, 'endsOn' | 'closesAt' | 'closedAt'>,
): string | undefined {
  if (closedAt === undefined || closedAt >= instantOf(endsOn, closesAt, team.timeZone)) return undefined;
  return dayAt(closedAt, team.timeZone);
}

function hasOpenCardsAtEvening(
  { userId, day }: Pick<Prompt, 'userId' | 'day'>,
  { cards, facts }: SprintRecords,
  ownerMoves: readonly Move[],
): boolean {
  // The first move after that evening says how it was before; without one, it is as it is now.
  const isMine = ({ id, ownerIds }: SprintCard): boolean => {
    const next = ownerMoves.find((move) => move.cardId === id && move.userId === userId && move.day > day);
    return next ? next.kind === 'removed' : ownerIds.includes(userId);
  };
  const mine = cards.filter((card) => card.enteredOn <= day && isMine(card));
  const ids = new Set(mine.map(({ id }) => id));
  const said = facts.filter((fact) => ids.has(fact.cardId) && fact.day <= day);
  return statesOf({ cards: mine, facts: said }).some(isOpenCard);
}

/**
 * The sprint's open cards that were open at the end of the sprints right before it as well. Cancelled sprints are
 * passed over, as in all history; an imported one ends the row, for its cards are not known.
 */
async function carriedOver(
  read: Reading,
  sprint: Sprint,
  records: SprintRecords,
): Promise<CarriedOverCard[]> {
  const open = statesOf(records).filter(isOpenCard);
  const rows = new Map(open.map(({ card }) => [card.id, 1]));
  let stillCarried = open;
  const earlier = (await read.sprintsOf(sprint.teamId))
    .filter(({ state, endsOn }) => state === 'closed' && endsOn < sprint.startsOn)
    .reverse();
  for (const { id, importedAt } of earlier) {
    if (stillCarried.length === 0 || importedAt !== undefined) break;
    const openThen = new Set(
      statesOf(await read.recordsOf(id))
        .filter(isOpenCard)
        .map(({ card }) => cardIdentity(card)),
    );
    stillCarried = stillCarried.filter(({ card }) => openThen.has(cardIdentity(card)));
    for (const { card } of stillCarried) rows.set(card.id, (rows.get(card.id) ?? 0) + 1);
  }
  return [...rows].filter(([, sprints]) => sprints > 1).map(([cardId, sprints]) => ({ cardId, sprints }));
}
