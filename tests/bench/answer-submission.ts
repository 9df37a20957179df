/** A member's answer for all their cards in one form: a point of work on each. */
import { answerField } from '../../src/slack/ids.ts';
import type { Filling } from './fill-teams.ts';
import { cardId, memberId, sprintId, today } from './fill-teams.ts';
import { type Exchange, sendSigned, submissionFields } from './signed-request.ts';

export interface MemberOfTeam {
  readonly team: number;
  readonly member: number;
}

/** One after the other, so that teams take turns; nobody twice, since to say the same again would be less work. */
export function* everybodyOnce({
  teams,
  membersATeam,
}: Pick<Filling, 'teams' | 'membersATeam'>): Generator<MemberOfTeam, undefined> {
  for (let member = 1; member <= membersATeam; member += 1) {
    for (let team = 1; team <= teams; team += 1) yield { team, member };
  }
}

/** @throws RangeError when everybody has had their turn */
export function next(members: Iterator<MemberOfTeam, undefined>): MemberOfTeam {
  const member = members.next().value;
  if (!member) throw new RangeError('there are not enough members');
  return member;
}

/** Left on a card before; see `fill-teams.ts`. */
const ESTIMATE_POINTS = 8;

/** The bot read the answer and wants something else; a bench that goes on measures refusals. */
export class AnswerRefused extends Error {
  override readonly name = 'AnswerRefused';
}

/**
 * @param filling of which at least two days are answered, since the surprise work of the second is in the points left
 * @throws AnswerRefused
 * @throws Error when the bot can't take it now
 */
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
    throw new AnswerRefused(exchange.body);
  return exchange;
}
