/**
 * Answers the planning questions: odds, range, forecast, history. It reads and computes; it changes nothing, and the
 * numbers are the team's only.
 */

import { WORTH_SPRINTS } from '../../forecast/graded-releases.ts';
import type { Day } from '../../sprint/calendar.ts';
import { mayKeepBodies } from '../bodies/body-keeper.ts';
import { keptNames } from '../bodies/forecast-bodies.ts';
import { knownVelocities, pastSprints } from '../history/team-history.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading } from '../ports/store.ts';
import { channelPost } from '../posting/post-kinds.ts';
import { readOrWrite } from '../read-or-write.ts';
import { audienceBy, audienceInTeam, type TeamReference, todayOf } from '../team/place.ts';
import type { Actor, Member, Team } from '../team/team.ts';
import type { Advice, AdviceQuestion } from './advice.ts';
import { adviceOf, spanAsked } from './advice-of.ts';
import { checkForecast, checkRange, withDaysRead } from './check-question.ts';

/**
 * Answers members and the product owner. Days may stand in the question as they were typed; in the answer's they are read.
 *
 * @throws Refusal `bad-input` with fields named as in the question, and those of finding the team.
 */
export async function askAdvice(
  deps: AppDependencies,
  actor: Actor,
  reference: TeamReference,
  question: AdviceQuestion,
): Promise<Advice> {
  return readOrWrite(deps.store, async (tx) => {
    const audience = await audienceBy(tx.read, actor, reference);
    const { team, members, isFacilitator } = audience;
    const on = todayOf(team, deps.clock.now());
    const read = await readQuestion(tx.read, team, members, question, on);
    const advice = await adviceOf(tx, team, members, read, on);
    const asked = { ...advice, askerIsFacilitator: isFacilitator };
    const isAboutWork = 'forecast' in asked || 'bodies' in asked;
    return isAboutWork ? { ...asked, askerMayKeep: mayKeepBodies(audience) } : asked;
  });
}

/** The question with its days read. @throws Refusal `bad-input` */
async function readQuestion(
  read: Reading,
  team: Team,
  members: readonly Member[],
  question: AdviceQuestion,
  on: Day,
): Promise<AdviceQuestion> {
  if (question.about === 'forecast') {
    return checkForecast(question, (await spanAsked(read, team, question, on)).startsOn, on);
  }
  if (question.about === 'range') {
    const asked = withDaysRead(question, on);
    checkRange(asked, { team, members, span: await spanAsked(read, team, asked, on) }, on);
    return asked;
  }
  return question;
}

export interface ForecastForm {
  readonly team: Team;
  /** Of the latest sprints, oldest first; fewer or none while few have closed. */
  readonly velocities: readonly number[];
  /** Names of the bodies of work that the team keeps. */
  readonly keptNames: readonly string[];
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
  return readOrWrite(deps.store, async (tx) => {
    const { team } = await audienceBy(tx.read, actor, reference);
    const velocities = knownVelocities(await pastSprints(tx, team)).slice(-WORTH_SPRINTS);
    return { team, velocities, keptNames: await keptNames(tx.read, team) };
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
    const asked = await readQuestion(tx.read, team, members, question, on);
    await tx.write.posts.add([
      channelPost(team, {
        kind: 'shared-advice',
        teamId: team.id,
        byUserId: actor.userId,
        on,
        question: asked,
      }),
    ]);
  });
}
