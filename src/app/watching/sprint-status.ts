/** The state of the sprint now, for the caller or shared with the channel. */
import { burndownOf } from '../../sprint/burndown.ts';
import type { Day } from '../../sprint/calendar.ts';
import { statesOf } from '../cards/card-line.ts';
import { eveningsBefore, lastDayOf } from '../clock/sprint-clock.ts';
import { isDayOver } from '../clock/sprint-time.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { PostImage } from '../ports/messenger.ts';
import { channelPost } from '../posting/post-kinds.ts';
import { readOrWrite } from '../read-or-write.ts';
import { Refusal } from '../refusal.ts';
import {
  currentSprint,
  membershipAt,
  openSprint,
  type Place,
  sprintForMember,
  todayOf,
} from '../team/place.ts';
import { type Actor, datedWorkersOf } from '../team/team.ts';
import { waitForAll } from '../wait-for-all.ts';
import { answerCounts, type StatusContent, statusContent } from './status-content.ts';
import type { TeamSprint } from './team-sprint.ts';

/** @throws Refusal `no-sprint-running` and those of finding the team. */
export async function sprintStatus(
  deps: AppDependencies,
  actor: Actor,
  place: Place,
): Promise<StatusContent> {
  return readOrWrite(deps.store, async (tx) => {
    const now = deps.clock.now();
    const membership = await membershipAt(tx.read, actor, place, 'product-owner-too', now);
    const today = todayOf(membership.team, now);
    const sprint = currentSprint(membership.openSprints, today);
    if (!sprint) throw new Refusal('no-sprint-running', {});
    return statusContent(tx, membership, sprint, today, membership.pastVersion);
  });
}

/**
 * The burndown of a sprint as an image with its words.
 *
 * @param isDayMet whether enough was said of the day for it to count as over; left out: it is read now
 */
export async function burndownImage(
  deps: AppDependencies,
  { team, members, sprint, states }: TeamSprint,
  on: Day,
  isDayMet?: boolean,
): Promise<PostImage> {
  const isRunning = sprint.state === 'open' && on <= sprint.endsOn;
  const isTodayOver = !isRunning || (isDayMet ?? (await isMet(deps, { team, members, sprint, states }, on)));
  const burndown = burndownOf(states, {
    sprintName: sprint.name,
    startsOn: sprint.startsOn,
    endsOn: sprint.endsOn,
    calendar: team,
    members: datedWorkersOf(members, sprint.id),
    today: isRunning ? on : undefined,
    lastDay: isRunning ? undefined : lastDayOf(team, sprint, states),
    isTodayOver,
    evenings: eveningsBefore(team, sprint, on),
  });
  return { ...(await deps.charts.burndown(burndown)), fileName: 'burndown.png' };
}

async function isMet({ store }: AppDependencies, drawn: TeamSprint, on: Day): Promise<boolean> {
  const { team, members, sprint, states } = drawn;
  const prompts = await store.read((read) => read.promptsOf([{ sprintId: sprint.id, day: on }]));
  return isDayOver(answerCounts(team, sprint, members, { states, prompts, on }));
}

/** The burndown of a status that the actor has read. Reads nothing itself. */
export function statusBurndown(
  deps: AppDependencies,
  _actor: Actor,
  status: StatusContent,
): Promise<PostImage> {
  return burndownImage(deps, status.drawn, status.on, isDayOver(status));
}

/** The burndown for those who may see the sprint. */
export async function statusChart(deps: AppDependencies, actor: Actor, sprintId: string): Promise<PostImage> {
  const found = await deps.store.read(async (read) => {
    const [found, records] = await waitForAll([
      sprintForMember(read, actor, sprintId, 'product-owner-too'),
      read.recordsOf(sprintId),
    ]);
    return { ...found, states: statesOf(records) };
  });
  return burndownImage(deps, found, todayOf(found.team, deps.clock.now()));
}

/** Posts the status in the team's channel, through the queue. */
export async function shareStatus(
  deps: AppDependencies,
  actor: Actor,
  { sprintId }: { readonly sprintId: string },
): Promise<void> {
  await deps.store.transaction(async (tx) => {
    const { team, sprint } = await openSprint(tx, actor, { sprintId }, deps.clock.now(), 'product-owner-too');
    const on = todayOf(team, deps.clock.now());
    const subject = { kind: 'shared-status', sprintId: sprint.id, byUserId: actor.userId, on } as const;
    await tx.write.posts.add([channelPost(team, subject)]);
  });
}
