/** A member's answer for all their cards in one form: a point of work on each. */
import { answerField } from '../../src/slack/ids.ts';
import type { Filling } from './fill-teams.ts';
import { cardId, memberId, sprintId, today } from './fill-teams.ts';
import { type Exchange, sendSigned, submissionFields } from './signed-request.ts';

export interface MemberOfTeam {
  readonly team: number;
  readonly member: number;
}

/** Left on a card before; see `fill-teams.ts`. */
const ESTIMATE_POINTS = 8;

/** @throws Error when the answer is refused */
export async function submitAnswers(
  eventsUrl: string,
  { team, member }: MemberOfTeam,
  { cardsAMember, answeredDays }: Pick<Filling, 'cardsAMember' | 'answeredDays'>,
): Promise<Exchange> {
  const values = Array.from({ length: cardsAMember }, (_, i): [string, string][] => {
    const card = cardId(team, member, i + 1);
    const surprise = (i + 1) % 3 === 0 ? 0.5 : 0;
    return [
      [answerField('left', card), String(ESTIMATE_POINTS - answeredDays - 1 + surprise)],
      [answerField('worked', card), '1'],
    ];
  });
  const fields = submissionFields({
    userId: memberId(team, member),
    callbackId: 'answer-form',
    context: JSON.stringify({ sprintId: sprintId(team), day: today() }),
    values: Object.fromEntries(values.flat()),
  });
  const exchange = await sendSigned(eventsUrl, fields);
  // "Still working" comes long after every bound, so it need not be waited for any longer.
  if (exchange.body !== '' && !exchange.body.includes('Still working'))
    throw new Error(`An answer was not taken: ${exchange.body}`);
  return exchange;
}
