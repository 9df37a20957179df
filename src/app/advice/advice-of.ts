/** The answers to the planning questions, from what the store holds. */

import type { Day } from '../../sprint/calendar.ts';
import { forecastBodies } from '../bodies/forecast-bodies.ts';
import { keptOf } from '../bodies/kept-advice.ts';
import type { PastSprint } from '../history/past-sprint.ts';
import { pastSprints } from '../history/team-history.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import type { Member, Sprint, Team } from '../team/team.ts';
import type { Advice, AdviceQuestion } from './advice.ts';
import { forecastGround, forecastOf, nextSprint } from './forecast-advice.ts';
import { goalsMet, historyOf } from './history-advice.ts';
import { oddsOf } from './odds-advice.ts';
import { comingSprint, rangeOf } from './range-advice.ts';

/**
 * Makes the answer from what the store holds; refuses nothing, for a shared answer is made when it is posted.
 *
 * @param on the team's day on which it was asked
 */
export async function adviceOf(
  tx: Transaction,
  team: Team,
  members: readonly Member[],
  question: AdviceQuestion,
  on: Day,
): Promise<Advice> {
  const past = await pastSprints(tx, team);
  const base = adviceBase(team, past, on);
  switch (question.about) {
    case 'odds':
      return { ...base, question, ...oddsOf(past) };
    case 'range': {
      const span = await spanAsked(tx.read, team, question, on);
      const coming = comingSprint(team, members, span, question.awayDays);
      return { ...base, question, ...rangeOf(team, past, coming) };
    }
    case 'forecast': {
      const { startsOn } = await spanAsked(tx.read, team, question, on);
      const ground = await forecastGround(tx.read, team, members, startsOn);
      return { ...base, question, ...forecastOf(question, past, ground) };
    }
    case 'kept': {
      const forecasts = await forecastBodies(tx, team, members, on);
      return { ...base, question, ...(await keptOf(tx, team, forecasts)) };
    }
    case 'history':
      return {
        ...base,
        question,
        ...historyOf(team, past),
        goals: goalsMet(team, past),
      };
  }
}

/** What every answer says about where it comes from. @param past all closed sprints that are known */
export function adviceBase(
  { id, name, channelId, timeZone }: Team,
  past: readonly PastSprint[],
  on: Day,
): Pick<Advice, 'team' | 'on' | 'sprints' | 'importedSprints'> {
  return {
    team: { id, name, channelId, timeZone },
    on,
    sprints: past.length,
    importedSprints: past.filter(({ importedAt }) => importedAt !== undefined).length,
  };
}

/** The days that the question names; those that it leaves open are the next free ones. */
export async function spanAsked(
  read: Reading,
  team: Team,
  question: AdviceQuestion,
  on: Day,
): Promise<Pick<Sprint, 'startsOn' | 'endsOn'>> {
  const asked: { readonly startsOn?: Day | undefined; readonly endsOn?: Day | undefined } =
    question.about === 'range' ? question : {};
  const next = await nextSprint(read, team, on, asked.startsOn);
  return { startsOn: next.startsOn, endsOn: asked.endsOn ?? next.endsOn };
}
