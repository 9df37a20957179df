/** What a member says about cards being blocked together with their answers, or in place of one. */
import { randomUUID } from 'node:crypto';
import { currentBlock } from '../../sprint/blocks.ts';
import { whyNotAnswerable } from '../../sprint/check-answer.ts';
import { cardState } from '../../sprint/ledger.ts';
import { parsePoints } from '../../sprint/points.ts';
import { cardName } from '../cards/card-line.ts';
import { MAX_REASON_LENGTH } from '../cards/change-cards.ts';
import type { InputProblem } from '../input-problem.ts';
import { Refusal } from '../refusal.ts';
import type { Actor, NewFact, RecordedFact, SprintCard, SprintRecords } from '../team/team.ts';
import { factsAbout } from './answered-day.ts';
import { inputProblem, type TypedAnswer } from './read-answers.ts';

export interface SaidBlock {
  readonly card: SprintCard;
  readonly on: string;
}

/** Problems are those of the field `blocked:` + card id, and of `left:` where the card can't be answered for. */
export function readBlocks(
  records: SprintRecords,
  { userId }: Actor,
  day: string,
  answers: readonly TypedAnswer[],
): { blocks: SaidBlock[]; problems: InputProblem[] } {
  const problems: InputProblem[] = [];
  const blocks: SaidBlock[] = [];
  for (const { cardId, left, blocked = '' } of answers) {
    const on = blocked.trim();
    if (on === '') continue;
    const card = records.cards.find(({ id }) => id === cardId);
    if (!card) throw new Refusal('sprint-changed', {});
    const facts = factsAbout(records, card);
    const field = `blocked:${cardId}`;
    const notAnswerable = whyNotAnswerable(card, facts, userId, day);
    const isFinished = left.trim() === '' ? cardState(card, facts).finished : parsePoints(left) === 0;
    if (notAnswerable) {
      // Of a card that is answered for as well, the answer says so.
      if (left.trim() === '') problems.push(inputProblem(notAnswerable, card));
    } else if (isFinished)
      problems.push({ field, problem: { code: 'blocked-finished', card: cardName(card) } });
    else if (on.length > MAX_REASON_LENGTH)
      problems.push({ field, problem: { code: 'blocked-on', most: MAX_REASON_LENGTH } });
    else blocks.push({ card, on });
  }
  return { blocks, problems };
}

/**
 * The facts to record. A block that is known already is not recorded once more, unless the same person's answer would
 * end it.
 *
 * @param answered cards that are answered for at the same time
 */
export function blockFacts(
  records: SprintRecords,
  { userId: memberId }: Actor,
  { day, at: recordedAt }: { readonly day: string; readonly at: Date },
  blocks: readonly SaidBlock[],
  answered: ReadonlySet<string>,
): NewFact[] {
  return blocks
    .filter(({ card, on }) => {
      const said = currentBlock(cardState(card, factsAbout(records, card)))?.said as RecordedFact | undefined;
      return answered.has(card.id) || said?.note !== on;
    })
    .map(({ card, on }) => ({
      kind: 'blocked',
      id: randomUUID(),
      cardId: card.id,
      memberId,
      day,
      recordedAt,
      note: on,
      supersedesId: undefined,
    }));
}
