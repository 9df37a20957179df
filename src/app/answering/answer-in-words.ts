/** An answer in words, in direct messages or after the command. */
import { formatPoints } from '../../sprint/points.ts';
import { hasOwnKey, isOpenCard, type SprintCardState } from '../cards/card-line.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { Refusal } from '../refusal.ts';
import type { Place } from '../team/place.ts';
import type { Actor, SprintCard } from '../team/team.ts';
import { answeredDay, runningSprintId } from './answered-day.ts';
import { answerableStates } from './prompt-content.ts';
import type { TypedAnswer } from './read-answers.ts';
import { type AnswerOutcome, recordAnswers, recordAway, recordUnchanged } from './record-answers.ts';
import { understandWords } from './understand-words.ts';

export interface AnswerInWords {
  readonly text: string;
  readonly place: Place;
  /** The prompt's thread that it was said in. */
  readonly threadTs?: string;
  /** How a bare number names a card: by its place in the member's list (the default), or in the sprint. */
  readonly numbering?: 'list' | 'sprint';
}

/**
 * An answer in words. Said in the thread of a prompt it is about that prompt's day, otherwise about today.
 * Numbers without a name count the member's cards in the order of the prompt.
 *
 * @throws Refusal `unclear-words`, `no-cards-of-yours`, and those of `recordAnswers`.
 */
export async function answerInWords(
  deps: AppDependencies,
  actor: Actor,
  input: AnswerInWords,
): Promise<AnswerOutcome> {
  const { sprint, day, records } = await deps.store.transaction(async (tx) => {
    const asked =
      input.threadTs === undefined
        ? undefined
        : await tx.read.promptByPost(actor.workspaceId, {
            channelId: input.place.channelId,
            ts: input.threadTs,
          });
    const prompt = asked?.userId === actor.userId ? asked : undefined;
    const sprintId =
      prompt?.sprintId ?? (await runningSprintId(tx.read, actor, input.place, deps.clock.now(), undefined));
    return answeredDay(deps, tx, actor, sprintId, prompt?.day);
  });
  const where = { sprintId: sprint.id, day };
  const states = answerableStates(records, actor.userId, day);
  const list = states.map(({ card }) => card);
  // Cards of others follow the member's own, so that naming one gets the reason why it can't be answered.
  const named = [...list, ...records.cards.filter((card) => !list.includes(card))];
  const numbered = input.numbering === 'sprint' ? records.cards : list;
  const positionOf = (written: string): number | undefined => {
    const reference = written.replace(/^#(?=.)/, '');
    const byKey = named.findIndex(({ key }) => key.toLowerCase() === reference.toLowerCase());
    const byNumber = numbered.find(
      (card, i) => reference === String(numbered === list ? i + 1 : card.number),
    );
    const found = byNumber ?? named[byKey];
    return found && named.indexOf(found) + 1;
  };
  const open = states.flatMap((state, i) => (isOpenCard(state) ? [i + 1] : []));
  const understood = understandWords(input.text, { count: list.length, open, positionOf });
  if (understood.kind === 'unchanged')
    return { kind: 'recorded', prompt: await recordUnchanged(deps, actor, where) };
  if (understood.kind === 'away') return { kind: 'recorded', prompt: await recordAway(deps, actor, where) };
  if (understood.kind === 'unclear') {
    if (list.length === 0) throw new Refusal('no-cards-of-yours', { sprintName: sprint.name });
    const place = Math.max(states.findIndex(isOpenCard), 0);
    const { card, leftPoints } = states[place] as SprintCardState;
    const number = String(numbered === list ? place + 1 : card.number);
    throw new Refusal('unclear-words', {
      problems: understood.problems,
      cardCount: list.length,
      example: { reference: hasOwnKey(card) ? card.key : number, title: card.title, leftPoints },
    });
  }
  const answers = understood.answers.map(
    ({ position, leftPoints, workedPoints, surprisePoints, blockedOn = '', note = '' }): TypedAnswer => {
      const card = named[position - 1] as SprintCard;
      return {
        cardId: card.id,
        left: leftPoints === undefined ? '' : formatPoints(leftPoints),
        worked: workedPoints === undefined ? '' : formatPoints(workedPoints),
        surprise: surprisePoints === undefined ? '' : formatPoints(surprisePoints),
        note,
        blocked: blockedOn,
      };
    },
  );
  return recordAnswers(deps, actor, { ...where, answers });
}
