/** The bot's home page as a place to work: for each of a person's teams, what they have to do in it now. */

import { burndownOf, leftEnd } from '../../sprint/burndown.ts';
import type { Day } from '../../sprint/calendar.ts';
import { needsOwner, type SprintCardState, statesOf } from '../cards/card-line.ts';
import { sprintDays } from '../clock/sprint-clock.ts';
import type { SprintTime } from '../clock/sprint-time.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import { readOrWrite } from '../read-or-write.ts';
import { teamsReadBy } from '../team/place.ts';
import { type Actor, datedWorkersOf } from '../team/team.ts';
import { type LoadOutlook, loadOutlook } from './load-outlook.ts';
import { type TeamOverview, teamOverview } from './overview.ts';
import { sprintTimeToday } from './status-content.ts';
import type { TeamSprint } from './team-sprint.ts';

export interface HomeTeam extends TeamOverview {
  /** Whether today is a day of the sprint on which members are asked. */
  readonly isPromptDay: boolean;
  /** For members, once the sprint has begun. */
  readonly progress: HomeProgress | undefined;
  /** For facilitators, the most urgent first. */
  readonly nextSteps: readonly NextStep[];
}

/** How the team's sprint goes: sums only. */
export interface HomeProgress {
  readonly workingDays: number;
  /** Today included. */
  readonly workingDaysLeft: number;
  readonly commitmentPoints: number;
  readonly leftPoints: number;
  /** Where a steady pace would be this evening. */
  readonly idealPoints: number;
  readonly load: LoadOutlook;
}

/** What a facilitator has to do next. */
export type NextStep =
  /** Posts wait, since others read the channel too: may they, or is the team to move? */
  | { readonly code: 'say-who-reads'; readonly posts: number }
  /** Open cards that nobody owns, about which nobody is asked. */
  | { readonly code: 'find-owners'; readonly cards: number }
  /** The sprint was reopened. */
  | { readonly code: 'finish-corrections' }
  | { readonly code: 'finish-draft'; readonly sprint: string }
  | { readonly code: 'plan'; readonly when: 'now' | 'soon' };

/** Working days left, today included, from which on the next sprint should be planned. */
const PLAN_FROM_DAYS_LEFT = 2;

export interface HomePage {
  readonly teams: readonly HomeTeam[];
}

/** For somebody who opens the page: from then on it is kept up to date. */
export async function openHomePage(deps: AppDependencies, actor: Actor): Promise<HomePage> {
  return readOrWrite(deps.store, async (tx) => {
    const now = deps.clock.now();
    const isFirst = (await tx.read.homeOpenedBy(actor.workspaceId, [actor.userId])).length === 0;
    if (isFirst) await tx.visits.homeOpened(actor, now);
    return homePageOf(tx, actor, now);
  });
}

/** The page again, after something that it shows has changed. Undefined: the person has never opened it. */
export async function refreshHomePage(deps: AppDependencies, actor: Actor): Promise<HomePage | undefined> {
  const { store, clock } = deps;
  return readOrWrite(store, async (tx) => {
    const isSeen = (await tx.read.homeOpenedBy(actor.workspaceId, [actor.userId])).length > 0;
    return isSeen ? homePageOf(tx, actor, clock.now()) : undefined;
  });
}

async function homePageOf(tx: Transaction, actor: Actor, now: Date): Promise<HomePage> {
  const teams: HomeTeam[] = [];
  for (const team of await teamsReadBy(tx.read, actor)) {
    const about = await teamOverview(tx.read, actor, team, now);
    const { sprint, begun } = about;
    const seesSprint = about.isMember || about.isProductOwner;
    const states = sprint && seesSprint ? statesOf(await tx.read.recordsOf(sprint.id)) : [];
    const running =
      sprint && begun && seesSprint
        ? { team, sprint, states, members: await tx.read.membersOf(team.id) }
        : undefined;
    const time = running && (await sprintTimeToday(tx.read, running, about.today));
    teams.push({
      ...about,
      isPromptDay: sprint !== undefined && sprintDays(team, sprint).includes(about.today),
      progress: running && time && (await progressOf(tx, running, time, about.today)),
      nextSteps: about.isFacilitator ? await nextSteps(tx.read, actor, about, states, time) : [],
    });
  }
  return { teams };
}

async function progressOf(
  tx: Transaction,
  running: TeamSprint,
  time: SprintTime,
  today: Day,
): Promise<HomeProgress> {
  const { team, sprint, states } = running;
  const { name: sprintName, startsOn, endsOn } = sprint;
  const members = datedWorkersOf(running.members, sprint.id);
  const span = { sprintName, startsOn, endsOn, calendar: team, members };
  const burndown = burndownOf(states, { ...span, today: today <= endsOn ? today : undefined });
  const { leftPoints, idealPoints } = leftEnd(burndown);
  return {
    workingDays: time.total,
    workingDaysLeft: time.leftWithToday,
    commitmentPoints: burndown.commitmentPoints,
    leftPoints,
    idealPoints,
    load: await loadOutlook(tx, running, time, today),
  };
}

async function nextSteps(
  read: Reading,
  actor: Actor,
  { team, sprint, heldBackPosts }: TeamOverview,
  states: readonly SprintCardState[],
  time: SprintTime | undefined,
): Promise<NextStep[]> {
  const ownerless = states.filter(needsOwner).length;
  const isEnding = time !== undefined && time.leftWithToday <= PLAN_FROM_DAYS_LEFT;
  const isLast = (await read.openSprintsOf(team.id)).length <= 1;
  const draft = await read.draftOf(team.id, actor.userId);
  const isPlanningDue = !sprint || (isEnding && isLast);
  return [
    ...(heldBackPosts === 0 ? [] : [{ code: 'say-who-reads', posts: heldBackPosts } as const]),
    ...(sprint?.reopenedAt === undefined ? [] : [{ code: 'finish-corrections' } as const]),
    ...(ownerless === 0 ? [] : [{ code: 'find-owners', cards: ownerless } as const]),
    ...(draft ? [{ code: 'finish-draft', sprint: draft.name } as const] : []),
    ...(isPlanningDue && !draft ? [{ code: 'plan', when: sprint ? 'soon' : 'now' } as const] : []),
  ];
}
