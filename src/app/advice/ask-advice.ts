/**
 * Answers the planning questions: odds, range, forecast, history. It reads and computes; it changes nothing, and the
 * numbers are the team's only.
 */
import type { Day } from '../../sprint/calendar.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading } from '../ports/store.ts';
import type { Audience, Place } from '../team/place.ts';
import { audienceAt, audienceInTeam, todayOf } from '../team/place.ts';
import type { Actor, Member, Team } from '../team/team.ts';
import type { Advice, AdviceQuestion } from './advice.ts';
import { adviceOf, spanAsked } from './advice-of.ts';
import { checkDays, checkForecast, checkRange } from './check-question.ts';

/** Where a question finds its team. */
export type TeamReference = { readonly place: Place } | { readonly teamId: string };

/**
 * Answers members and the product owner.
 *
 * @throws Refusal `bad-input` with fields named as in the question, and those of finding the team.
 */
export async function askAdvice(
  deps: AppDependencies,
  actor: Actor,
  reference: TeamReference,
  question: AdviceQuestion,
): Promise<Advice> {
  return deps.store.transaction(async (tx) => {
    const { team, members, isFacilitator } = await audienceBy(tx.read, actor, reference);
    const on = todayOf(team, deps.clock.now());
    await requireAnswerable(tx.read, team, members, question, on);
    return { ...(await adviceOf(tx, team, members, question, on)), askerIsFacilitator: isFacilitator };
  });
}

/** @throws Refusal as `audienceAt` and `audienceInTeam` do. */
export function audienceBy(read: Reading, actor: Actor, reference: TeamReference): Promise<Audience> {
  return 'teamId' in reference
    ? audienceInTeam(read, actor, reference.teamId)
    : audienceAt(read, actor, reference.place);
}

/** @throws Refusal `bad-input` */
export async function requireAnswerable(
  read: Reading,
  team: Team,
  members: readonly Member[],
  question: AdviceQuestion,
  on: Day,
): Promise<void> {
  if (question.about === 'forecast') checkForecast(question);
  if (question.about === 'range') {
    checkDays(question);
    checkRange(question, { team, members, span: await spanAsked(read, team, question, on) }, on);
  }
}
