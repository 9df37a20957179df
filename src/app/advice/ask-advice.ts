/**
 * Answers the planning questions: odds, range, forecast, history. It reads and computes; it changes nothing, and the
 * numbers are the team's only.
 */

import { WORTH_SPRINTS } from '../../forecast/graded-releases.ts';
import type { Day } from '../../sprint/calendar.ts';
import { mayKeepBodies } from '../bodies/body-keeper.ts';
import { keepsAny } from '../bodies/forecast-bodies.ts';
import { knownVelocities, pastSprints } from '../history/team-history.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading } from '../ports/store.ts';
import { channelPost } from '../posting/post-kinds.ts';
import { audienceBy, audienceInTeam, type TeamReference, todayOf } from '../team/place.ts';
import type { Actor, Member, Team } from '../team/team.ts';
import type { Advice, AdviceQuestion } from './advice.ts';
import { adviceOf, spanAsked } from './advice-of.ts';
import { checkDays, checkForecast, checkRange } from './check-question.ts';

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
    const audience = await audienceBy(tx.read, actor, reference);
    const { team, members, isFacilitator } = audience;
    const on = todayOf(team, deps.clock.now());
    await requireAnswerable(tx.read, team, members, question, on);
    const advice = await adviceOf(tx, team, members, question, on);
    const asked = { ...advice, askerIsFacilitator: isFacilitator };
    const isAboutWork = 'forecast' in asked || 'bodies' in asked;
    return isAboutWork ? { ...asked, askerMayKeep: mayKeepBodies(audience) } : asked;
  });
}

/** @throws Refusal `bad-input` */
export async function requireAnswerable(
  read: Reading,
  team: Team,
  members: readonly Member[],
  question: AdviceQuestion,
  on: Day,
): Promise<void> {
  if (question.about === 'forecast') {
    checkForecast(question, (await spanAsked(read, team, question, on)).startsOn);
  }
  if (question.about === 'range') {
    checkDays(question);
    checkRange(question, { team, members, span: await spanAsked(read, team, question, on) }, on);
  }
}

export interface ForecastForm {
  readonly team: Team;
  /** Of the latest sprints, oldest first; fewer or none while few have closed. */
  readonly velocities: readonly number[];
  /** Whether the team keeps bodies of work. */
  readonly keepsAny: boolean;
}

/**
 * What one should know before asking when a body of work will be finished. It forecasts nothing itself.
 *
 * For members and the product owner. @throws Refusal those of finding the team.
 */
export async function forecastForm(
  deps: AppDependencies,
  actor: Actor,
  reference: TeamReference,
): Promise<ForecastForm> {
  return deps.store.transaction(async (tx) => {
    const { team } = await audienceBy(tx.read, actor, reference);
    const velocities = knownVelocities(await pastSprints(tx, team)).slice(-WORTH_SPRINTS);
    return { team, velocities, keepsAny: await keepsAny(tx.read, team) };
  });
}

/**
 * Posts the answer to a planning question in the team's channel, through the queue.
 *
 * Members and the product owner may share.
 *
 * @throws Refusal `bad-input` with fields named as in the question, and those of finding the team.
 */
export async function shareAdvice(
  deps: AppDependencies,
  actor: Actor,
  { teamId, question }: { readonly teamId: string; readonly question: AdviceQuestion },
): Promise<void> {
  await deps.store.transaction(async (tx) => {
    const { team, members } = await audienceInTeam(tx.read, actor, teamId);
    const on = todayOf(team, deps.clock.now());
    await requireAnswerable(tx.read, team, members, question, on);
    await tx.write.posts.add([
      channelPost(team, { kind: 'shared-advice', teamId: team.id, byUserId: actor.userId, on, question }),
    ]);
  });
}
