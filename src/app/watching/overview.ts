/** What the caller can do now, here. */

import { type DayShare, memberShareOf } from '../../sprint/work-calendar.ts';
import { type CardLine, cardLine, isOpenCard, statesOf } from '../cards/card-line.ts';
import { nextPromptOf, reopenUntil } from '../clock/sprint-clock.ts';
import { readersOf } from '../closing/direct-verdicts.ts';
import { type SpanOff, spansOff } from '../days-off/days-ahead.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading } from '../ports/store.ts';
import { refuseOutsider } from '../team/belonging.ts';
import { currentSprint, facilitates, type Place, teamsReadBy, todayOf } from '../team/place.ts';
import { type Actor, isWorking, type PromptState, type Sprint, type Team } from '../team/team.ts';

export interface TeamOverview {
  readonly team: Team;
  /** The running sprint, or the next one. */
  readonly sprint: Sprint | undefined;
  readonly begun: boolean;
  /** False for a product owner who is no member: the cards and the day's work are the members'. */
  readonly isMember: boolean;
  readonly isFacilitator: boolean;
  readonly isProductOwner: boolean;
  /** Posts that wait since others read the team's channel too; 0 for who is no facilitator and can't change it. */
  readonly heldBackPosts: number;
  readonly myOpenCards: readonly CardLine[];
  /** How the caller met today's prompt; undefined when there was none. */
  readonly promptState: PromptState | undefined;
  /** When the caller is asked next; undefined: not any more in this sprint. */
  readonly nextQuestionAt: Date | undefined;
  readonly today: string;
  /** How much of today the person works, as far as was said in advance. */
  readonly todayShare: DayShare;
  /** Their days off to come; undefined for somebody who does none of the team's work. */
  readonly daysOff: readonly SpanOff[] | undefined;
  /** Whether the last sprint may still be reopened for corrections. */
  readonly reopenable: boolean;
  /** Whether the verdicts come to their direct messages as well. */
  readonly getsVerdicts: boolean;
  /** Whether there is a sprint that is over, run here or imported. */
  readonly hasFinishedSprint: boolean;
}

export interface Overview {
  /** Teams whose numbers the caller may read; only the channel's own when asked in a team's channel. */
  readonly teams: readonly TeamOverview[];
  /** Whether this is a channel without a team. */
  readonly canSetUpHere: boolean;
}

/** @throws Refusal `outsider` */
export async function overview(deps: AppDependencies, actor: Actor, place: Place): Promise<Overview> {
  const now = deps.clock.now();
  const found = await deps.store.read(async (read): Promise<Overview> => {
    const mine = await teamsReadBy(read, actor);
    const channel = place.isDirect ? undefined : place.channelId;
    const here = channel === undefined ? undefined : await read.teamByChannel(actor.workspaceId, channel);
    const shown = channel === undefined ? mine : mine.filter(({ channelId }) => channelId === channel);
    const teams: TeamOverview[] = [];
    for (const team of shown) teams.push(await teamOverview(read, actor, team, now));
    return { teams, canSetUpHere: channel !== undefined && here === undefined };
  });
  if (found.teams.length === 0) await refuseOutsider(deps.directory, actor);
  return found;
}

export async function teamOverview(
  read: Reading,
  actor: Actor,
  team: Team,
  now: Date,
): Promise<TeamOverview> {
  const members = await read.membersOf(team.id);
  const last = await read.latestFinishedSprint(team.id);
  const until = last?.state === 'closed' ? reopenUntil(team, last) : undefined;
  const today = todayOf(team, now);
  const sprint = currentSprint(await read.openSprintsOf(team.id), today);
  const member = members.find(({ userId, isActive }) => userId === actor.userId && isActive);
  const states = sprint && member ? statesOf(await read.recordsOf(sprint.id)) : [];
  const prompt = sprint ? await read.promptOf(sprint.id, actor.userId, today) : undefined;
  const isFacilitator = member !== undefined && facilitates(member, members);
  return {
    team,
    sprint,
    begun: sprint !== undefined && sprint.startsOn <= today,
    isMember: member !== undefined,
    isFacilitator,
    isProductOwner: team.productOwnerId === actor.userId,
    heldBackPosts: isFacilitator ? await read.countHeldBack(team.workspaceId, team.channelId) : 0,
    myOpenCards: states
      .filter((state) => isOpenCard(state) && state.card.ownerIds.includes(actor.userId))
      .map(cardLine),
    promptState: prompt?.state,
    nextQuestionAt: sprint?.nextPromptAt && nextPromptOf(team, member, sprint, now),
    today,
    todayShare: member ? memberShareOf(team, member, today) : 0,
    daysOff: member && isWorking(member) ? spansOff(member.daysOff, today) : undefined,
    reopenable: until !== undefined && until > now,
    getsVerdicts: readersOf(team, members).includes(actor.userId),
    hasFinishedSprint: last !== undefined,
  };
}
