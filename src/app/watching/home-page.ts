/** The bot's home page as a place to work: for each of a person's teams, what they have to do in it now. */
import { promptDays } from '../clock/sprint-clock.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading } from '../ports/store.ts';
import { teamsReadBy } from '../team/place.ts';
import type { Actor } from '../team/team.ts';
import { type TeamOverview, teamOverview } from './overview.ts';

export interface HomeTeam extends TeamOverview {
  /** Whether today is a day of the sprint on which members are asked. */
  readonly isPromptDay: boolean;
}

export interface HomePage {
  readonly teams: readonly HomeTeam[];
}

/** For somebody who opens the page: from then on it is kept up to date. */
export async function openHomePage(deps: AppDependencies, actor: Actor): Promise<HomePage> {
  return deps.store.transaction(async (tx) => {
    const now = deps.clock.now();
    const isFirst = (await tx.read.homeOpenedBy(actor.workspaceId, [actor.userId])).length === 0;
    if (isFirst) await tx.visits.homeOpened(actor, now);
    return homePageOf(tx.read, actor, now);
  });
}

/** The page again, after something that it shows has changed. Undefined: the person has never opened it. */
export async function refreshHomePage(deps: AppDependencies, actor: Actor): Promise<HomePage | undefined> {
  return deps.store.transaction(async (tx) => {
    const isSeen = (await tx.read.homeOpenedBy(actor.workspaceId, [actor.userId])).length > 0;
    return isSeen ? homePageOf(tx.read, actor, deps.clock.now()) : undefined;
  });
}

async function homePageOf(read: Reading, actor: Actor, now: Date): Promise<HomePage> {
  const teams: HomeTeam[] = [];
  for (const team of await teamsReadBy(read, actor)) {
    const about = await teamOverview(read, actor, team, now);
    const { sprint, today } = about;
    teams.push({ ...about, isPromptDay: sprint !== undefined && promptDays(team, sprint).includes(today) });
  }
  return { teams };
}
