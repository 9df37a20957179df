/** The state of the sprint now, for the caller or shared with the channel. */
import { randomUUID } from 'node:crypto';
import { burndownOf } from '../../sprint/burndown.ts';
import type { Day } from '../../sprint/calendar.ts';
import { runningSummary } from '../../sprint/summary.ts';
import type { SprintCardState } from '../cards/card-line.ts';
import { cardLine, isOpenCard, statesOf } from '../cards/card-line.ts';
import { sprintTime } from '../clock/sprint-time.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { PostImage } from '../ports/messenger.ts';
import type { Transaction } from '../ports/store.ts';
import type { StatusContent } from '../posting/message-content.ts';
import { Refusal } from '../refusal.ts';
import type { Membership, Place } from '../team/place.ts';
import { currentSprint, membershipAt, openSprint, sprintForMember, todayOf } from '../team/place.ts';
import type { Actor, Member, Prompt, RecordedFact, Sprint, Team } from '../team/team.ts';
import { waitForAll } from '../wait-for-all.ts';
import { loadOutlook } from './load-outlook.ts';

/** @throws Refusal `no-sprint-running` and those of finding the team. */
export async function sprintStatus(
  deps: AppDependencies,
  actor: Actor,
  place: Place,
): Promise<StatusContent> {
  return deps.store.transaction(async (tx) => {
    const membership = await membershipAt(tx.read, actor, place);
    const today = todayOf(membership.team, deps.clock.now());
    const sprint = currentSprint(membership.openSprints, today);
    if (!sprint) throw new Refusal('no-sprint-running', {});
    return statusContent(tx, membership, sprint, today);
  });
}

/** Makes the content from what the store holds. */
export async function statusContent(
  tx: Transaction,
  { team, members }: Pick<Membership, 'team' | 'members'>,
  sprint: Sprint,
  on: Day,
): Promise<StatusContent> {
  const [records, prompts, baselineVelocityPoints, pastVersion] = await waitForAll([
    tx.read.recordsOf(sprint.id),
    tx.read.promptsOf([{ sprintId: sprint.id, day: on }]),
    tx.read.baselineVelocityPoints(team, sprint.id),
    tx.read.pastVersion(team.workspaceId),
  ]);
  const states = statesOf(records);
  const counts = answerCounts(states, members, prompts, on);
  const time = sprintTime(team, sprint, on, counts);
  return {
    team,
    sprint,
    on,
    begun: on >= sprint.startsOn,
    workingDays: time.total,
    workingDaysLeft: time.left,
    summary: runningSummary(states, {
      scale: team.scale,
      thresholds: team.thresholds,
      baselineVelocityPoints,
    }),
    cards: states.map(cardLine),
    growth: growthOf(states),
    ...counts,
    load: await loadOutlook(tx, team, sprint, states, time, on, pastVersion),
  };
}

function growthOf(states: readonly SprintCardState[]): StatusContent['growth'] {
  return states
    .flatMap((state) =>
      state.entries
        .filter(({ growthPoints }) => growthPoints !== 0)
        .map((entry) => ({
          card: cardLine(state),
          day: entry.answer.day,
          surprisePoints: entry.surprisePoints,
          driftPoints: entry.driftPoints,
          note: (entry.answer as RecordedFact & { kind: 'answer' }).note,
        })),
    )
    .sort((a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : 0));
}

/** How many members have open cards or were asked today, and how many of them have met the day. */
export function answerCounts(
  states: readonly SprintCardState[],
  members: readonly Member[],
  prompts: readonly Prompt[],
  on: Day,
): { asked: number; answered: number } {
  const active = new Set(members.filter(({ isActive }) => isActive).map(({ userId }) => userId));
  const owners = states
    .filter((state) => isOpenCard(state) && state.card.enteredOn <= on)
    .flatMap(({ card }) => card.ownerIds);
  const asked = new Set(
    [...owners, ...prompts.map(({ userId }) => userId)].filter((userId) => active.has(userId)),
  );
  const met = prompts.filter(({ userId, state }) => state !== 'asked' && asked.has(userId));
  return { asked: asked.size, answered: met.length };
}

/** The burndown of a sprint as an image with its words. */
export async function burndownImage(
  deps: AppDependencies,
  team: Team,
  sprint: Sprint,
  states: readonly SprintCardState[],
  on: Day,
): Promise<PostImage> {
  const burndown = burndownOf(states, {
    sprintName: sprint.name,
    startsOn: sprint.startsOn,
    endsOn: sprint.endsOn,
    workingDays: team.workingDays,
    today: sprint.state === 'open' && on <= sprint.endsOn ? on : undefined,
  });
  return { ...(await deps.charts.burndown(burndown)), fileName: 'burndown.png' };
}

/** The burndown for those who may see the sprint. */
export async function statusChart(deps: AppDependencies, actor: Actor, sprintId: string): Promise<PostImage> {
  const { team, sprint, states } = await deps.store.read(async (read) => {
    const [found, records] = await waitForAll([
      sprintForMember(read, actor, sprintId),
      read.recordsOf(sprintId),
    ]);
    return { ...found, states: statesOf(records) };
  });
  return burndownImage(deps, team, sprint, states, todayOf(team, deps.clock.now()));
}

/** Posts the status in the team's channel, through the queue. */
export async function shareStatus(
  deps: AppDependencies,
  actor: Actor,
  { sprintId }: { readonly sprintId: string },
): Promise<void> {
  await deps.store.transaction(async (tx) => {
    const { team, sprint } = await openSprint(tx, actor, { sprintId }, deps.clock.now());
    await tx.write.posts.add([
      {
        id: randomUUID(),
        workspaceId: team.workspaceId,
        recipient: { channelId: team.channelId },
        subject: {
          kind: 'shared-status',
          sprintId: sprint.id,
          byUserId: actor.userId,
          on: todayOf(team, deps.clock.now()),
        },
      },
    ]);
  });
}
