/** The end of a sprint: closing, cancelling, and reopening for corrections. */

import { compareAsc } from 'date-fns/compareAsc';
import { workingTime } from '../../sprint/baseline.ts';
import { blockedCardDays } from '../../sprint/blocks.ts';
import type { Day } from '../../sprint/calendar.ts';
import { closingSummary, runningSummary, type SprintSummary } from '../../sprint/summary.ts';
import { tellDatesAfterSprint } from '../bodies/forecast-bodies.ts';
import { type CardLine, cardLine, statesOf } from '../cards/card-line.ts';
import { eveningsOf, reopenUntil } from '../clock/sprint-clock.ts';
import { experimentQuestions } from '../experiments/end-experiment.ts';
import { baselineFor } from '../history/baseline-of.ts';
import { pastSprintAtClosing } from '../history/past-sprint-at-closing.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import { channelPost } from '../posting/post-kinds.ts';
import { refreshVerdict } from '../posting/thread.ts';
import { Refusal } from '../refusal.ts';
import { guestsGo, guestsReturn } from '../team/guests.ts';
import {
  dayWithin,
  membershipAt,
  openSprint,
  type Place,
  requireBegun,
  requireFacilitator,
  type SprintReference,
  sprintForMember,
  todayOf,
} from '../team/place.ts';
import type { Actor, Sprint, SprintHeading, Team } from '../team/team.ts';
import { oweDirectVerdicts } from './direct-verdicts.ts';
import { sprintHabits } from './sprint-habits.ts';
import { type VerdictContent, verdictContent } from './verdict-content.ts';

const MAX_REASON_LENGTH = 300;

/** Nothing is left for the clock to do. */
const CLOCK_STOPPED = { nextPromptAt: undefined, nextReminderAt: undefined, lastCallAt: undefined } as const;

/**
 * Closes the sprint as it is, stores its numbers and queues the verdict; after a reopening the verdict
 * that was posted is brought up to date in place. The team must be locked.
 */
export async function closeNow(tx: Transaction, team: Team, sprint: Sprint, now: Date): Promise<Sprint> {
  const closed = await endQuietly(tx, team, sprint, now, 'closed');
  await tellDatesAfterSprint(tx, team, now);
  if (sprint.closedAt === undefined) {
    const questions = await experimentQuestions(tx, team, closed);
    if (questions.length > 0) await tx.write.posts.add(questions);
  }
  const isPosted = await refreshVerdict(tx, sprint.id);
  if (!isPosted) await tx.write.posts.add([channelPost(team, { kind: 'verdict', sprintId: sprint.id })]);
  await oweDirectVerdicts(tx, team, sprint);
  return closed;
}

/** Ends the sprint and stores its numbers, without a word to anybody. The team must be locked. */
export async function endQuietly(
  tx: Transaction,
  team: Team,
  sprint: Sprint,
  now: Date,
  state: 'closed' | 'cancelled',
): Promise<Sprint> {
  const ended: Sprint = { ...sprint, ...CLOCK_STOPPED, state, closedAt: sprint.closedAt ?? now };
  await recordResult(tx, team, ended, now);
  await tx.write.sprints.update(ended);
  await guestsGo(tx, ended);
  return ended;
}

async function recordResult(tx: Transaction, team: Team, sprint: Sprint, now: Date): Promise<void> {
  const cancelled = sprint.state === 'cancelled';
  const records = await tx.read.recordsOf(sprint.id);
  const states = statesOf(records);
  const past = await pastSprintAtClosing(tx.read, team, sprint, now);
  const measured = { ...past, name: sprint.name };
  const baseline = await baselineFor(tx.read, team, sprint.id, cancelled ? undefined : measured);
  const yardstick = { ...team, baseline, time: workingTime(measured) };
  if (!cancelled) await tx.write.history.savePastSprint(past);
  const before = await tx.read.latestResult(sprint.id);
  await tx.write.results.insert({
    sprintId: sprint.id,
    version: (before?.version ?? 0) + 1,
    recordedAt: now,
    cancelled,
    summary: {
      // A cancelled sprint never enters the history, so it can't be its own baseline.
      ...(cancelled
        ? runningSummary(states, yardstick)
        : closingSummary(states, yardstick, await sprintHabits(tx.read, team, sprint, records))),
      blockedCardDays: blockedCardDays(states, eveningsOf(team, sprint, now)),
    },
  });
}

/** What is shown before a sprint is closed early or called off. Facilitators only. @throws what closing or cancelling does */
export async function sprintToEnd(
  deps: AppDependencies,
  actor: Actor,
  { place, how }: { readonly place: Place; readonly how: 'close' | 'cancel' },
): Promise<{ heading: SprintHeading; cards: CardLine[]; summary: SprintSummary }> {
  return deps.store.transaction(async (tx) => {
    const now = deps.clock.now();
    const found = await openSprint(tx, actor, { place }, now);
    requireFacilitator(found, how);
    const { team, sprint } = found;
    if (how === 'close') requireBegun(sprint, todayOf(team, now));
    const states = statesOf(await tx.read.recordsOf(sprint.id));
    const baseline = await baselineFor(tx.read, team, sprint.id);
    return {
      heading: { team, sprint },
      cards: states.map(cardLine),
      summary: runningSummary(states, { ...team, baseline }),
    };
  });
}

/** Closes the sprint before its time, or again after a reopening. Facilitators only. */
export async function closeSprint(
  deps: AppDependencies,
  actor: Actor,
  reference: SprintReference,
): Promise<VerdictContent> {
  return deps.store.transaction(async (tx) => {
    const found = await openSprint(tx, actor, reference, deps.clock.now());
    requireFacilitator(found, 'close');
    const now = deps.clock.now();
    requireBegun(found.sprint, todayOf(found.team, now));
    const closed = await closeNow(tx, found.team, found.sprint, now);
    return verdictContent(tx, found.team, closed, now);
  });
}

/** Calls the sprint off; its numbers are kept and marked. Facilitators only. */
export async function cancelSprint(
  deps: AppDependencies,
  actor: Actor,
  input: SprintReference & { readonly reason: string },
): Promise<VerdictContent> {
  const reason = input.reason.trim();
  if (reason.length > MAX_REASON_LENGTH) {
    throw new Refusal('bad-argument', {
      command: 'cancel',
      problem: { code: 'cancel-reason', most: MAX_REASON_LENGTH },
      example: undefined,
    });
  }
  return deps.store.transaction(async (tx) => {
    const found = await openSprint(tx, actor, input, deps.clock.now());
    requireFacilitator(found, 'cancel');
    const { team, sprint } = found;
    const now = deps.clock.now();
    const cancelled = await endQuietly(tx, team, sprint, now, 'cancelled');
    await tx.write.posts.add([
      channelPost(team, { kind: 'cancelled', sprintId: sprint.id, byUserId: actor.userId, reason }),
    ]);
    await refreshVerdict(tx, sprint.id);
    return verdictContent(tx, team, cancelled, now);
  });
}

/** The sprint that closed last; one that was cancelled since doesn't count. */
async function lastClosedSprint(read: Reading, teamId: string): Promise<Sprint | undefined> {
  const closed = (await read.closedSprintsOf(teamId)).map(({ sprint }) => sprint);
  return closed.sort((a, b) => compareAsc(a.closedAt ?? 0, b.closedAt ?? 0)).at(-1);
}

export interface ReopenedSprint {
  readonly heading: SprintHeading;
  /** When it closes again by itself. */
  readonly until: Date;
  /** The latest day that can be answered for. */
  readonly lastDay: Day;
}

/**
 * Opens the sprint that closed last for corrections; it closes by itself at closing time on the working day after its first closing.
 *
 * @throws Refusal `no-sprint-to-reopen`, `reopen-too-late`, `days-taken`, `not-a-facilitator`.
 */
export async function reopenSprint(
  deps: AppDependencies,
  actor: Actor,
  reference: SprintReference,
): Promise<ReopenedSprint> {
  return deps.store.transaction(async (tx) => {
    const found =
      'sprintId' in reference
        ? await sprintForMember(tx.read, actor, reference.sprintId)
        : await membershipAt(tx.read, actor, reference.place);
    requireFacilitator(found, 'reopen');
    const { team } = found;
    await tx.lock.team(team.id);
    const sprint =
      'sprintId' in reference
        ? await tx.read.sprintById(reference.sprintId)
        : await lastClosedSprint(tx.read, team.id);
    const until = sprint && reopenUntil(team, sprint);
    if (!sprint || !until || sprint.state !== 'closed') throw new Refusal('no-sprint-to-reopen', {});
    const now = deps.clock.now();
    if (now >= until)
      throw new Refusal('reopen-too-late', { sprintName: sprint.name, until: until.toISOString() });
    const inTheWay = (await tx.read.openSprintsOf(team.id)).find(
      (other) => other.startsOn <= sprint.endsOn && sprint.startsOn <= other.endsOn,
    );
    if (inTheWay) {
      throw new Refusal('days-taken', { sprintName: sprint.name, otherName: inTheWay.name });
    }
    const reopened: Sprint = { ...sprint, state: 'open', reopenedAt: now, closesAtInstant: until };
    await tx.write.sprints.update(reopened);
    await guestsReturn(tx, reopened);
    await refreshVerdict(tx, sprint.id);
    return { heading: { team, sprint: reopened }, until, lastDay: dayWithin(sprint, todayOf(team, now)) };
  });
}
