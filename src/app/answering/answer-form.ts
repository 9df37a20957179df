/** The form in which a member answers for their cards, as data. */
import { isBlockedSince } from '../../sprint/blocks.ts';
import { placeInLedger } from '../../sprint/check-answer.ts';
import { type CardLine, cardLine } from '../cards/card-line.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { Refusal } from '../refusal.ts';
import type { Place } from '../team/place.ts';
import {
  type Actor,
  type RecordedFact,
  type SprintCard,
  type SprintHeading,
  type SprintRecords,
  worksIn,
} from '../team/team.ts';
import { answeredDay, factsAbout, runningSprintId, takeableStates } from './answered-day.ts';
import { answerableStates } from './prompt-content.ts';

export interface AnswerFormCard {
  readonly card: CardLine;
  /** Left before this member's answer for the day. */
  readonly previousLeftPoints: number;
  /** What the member has answered for the day already, unless the card was blocked after it. */
  readonly given:
    | {
        readonly worked: number | undefined;
        readonly left: number;
        readonly surprise: number;
        readonly note: string;
      }
    | undefined;
}

export interface AnswerForm {
  readonly heading: SprintHeading;
  readonly userId: string;
  readonly day: string;
  readonly cards: readonly AnswerFormCard[];
  /** Open cards that nobody owns yet. */
  readonly takeable: readonly CardLine[];
}

/** The member's cards that can be answered for on the day, with what was said already. */
function answerableCards(
  records: SprintRecords,
  userId: string,
  day: string,
): { card: SprintCard; form: AnswerFormCard }[] {
  return answerableStates(records, userId, day).map((state) => {
    const context = placeInLedger(state.card, factsAbout(records, state.card), userId, day);
    const given = context.corrects as (typeof context.corrects & RecordedFact) | undefined;
    return {
      card: state.card,
      form: {
        card: cardLine(state),
        previousLeftPoints: context.previousLeftPoints,
        given:
          given && !isBlockedSince(state, given)
            ? {
                worked: given.workedPoints,
                left: given.leftPoints,
                surprise: given.surprisePoints,
                note: given.note,
              }
            : undefined,
      },
    };
  });
}

/**
 * The form in which a member answers for all their cards. Without a day: today, or the last day of a
 * sprint that was reopened.
 *
 * @throws Refusal `no-cards-of-yours` and the refusals of finding team, sprint and day.
 */
export async function answerForm(
  deps: AppDependencies,
  actor: Actor,
  where: { readonly place?: Place; readonly sprintId?: string; readonly day?: string },
): Promise<AnswerForm> {
  return deps.store.transaction(async (tx) => {
    const sprintId =
      where.sprintId ??
      (await runningSprintId(tx.read, actor, where.place as Place, deps.clock.now(), where.day));
    const found = await answeredDay(deps, tx, actor, sprintId, where.day, []);
    const { team, member, sprint, day, records } = found;
    const cards = answerableCards(records, actor.userId, day).map(({ form }) => form);
    const takeable = worksIn(member, sprint.id) ? takeableStates(records).map(cardLine) : [];
    if (cards.length === 0 && takeable.length === 0) {
      throw new Refusal('no-cards-of-yours', { sprintName: sprint.name });
    }
    return { heading: { team, sprint }, userId: actor.userId, day, cards, takeable };
  });
}
