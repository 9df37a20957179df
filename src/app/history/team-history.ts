/** The team's closed sprints as the statistics want them. Reads; each question has a function of its own elsewhere. */
import type { SprintEvidence } from '../../forecast/commitment-evidence.ts';
import { marginOfError } from '../../forecast/margin-of-error.ts';
import {
  type EndedSprint,
  MOST_SPRINTS_BACK,
  NO_HISTORY,
  type ProjectionHistory,
  withEndedSprints,
} from '../../forecast/project-velocity.ts';
import type { PulledInCard } from '../../forecast/pull-in-chance.ts';
import type { ClosedCard } from '../../forecast/surprise-odds.ts';
import { wholeMembersOn } from '../../sprint/work-calendar.ts';
import { dayAt } from '../clock/local-time.ts';
import { letOthersTurn } from '../let-others-turn.ts';
import { Memory } from '../memory.ts';
import type { Transaction } from '../ports/store.ts';
import { datedMembers, type Sprint, type Team } from '../team/team.ts';
import { waitForAll } from '../wait-for-all.ts';
import type { PastCard, PastSprint, PastTrace, TracePoint } from './past-sprint.ts';
import { pastSprintAtClosing } from './past-sprint-at-closing.ts';

/**
 * The closed sprints, oldest first. It is the same array until something of it changes, so what takes long to compute from it
 * can be kept as long: see `oncePerPast`.
 *
 * @param pastVersion of the workspace's past, read before in the same transaction; left out: it is read now
 */
export async function pastSprints(
  tx: Transaction,
  team: Team,
  pastVersion?: string,
): Promise<readonly PastSprint[]> {
  const known = await rememberedPast(tx, team, pastVersion);
  if (known.importedAtMs.length === 0) return known.past;
  const members = datedMembers(await tx.read.membersOf(team.id));
  const membersAt = new Map(
    known.importedAtMs.map((atMs) => [
      atMs,
      wholeMembersOn(team, members, dayAt(new Date(atMs), team.timeZone)),
    ]),
  );
  const countedBy = JSON.stringify([...membersAt]);
  if (known.counted?.by !== countedBy) {
    known.counted = { by: countedBy, past: known.past.map((sprint) => withMembersThen(sprint, membersAt)) };
  }
  return known.counted.past;
}

/** Nobody said who was there in an imported sprint; who imports has at least said who the team is. */
function withMembersThen(sprint: PastSprint, membersAt: ReadonlyMap<number, number>): PastSprint {
  const atMs = importTimeOf(sprint);
  if (atMs === undefined) return sprint;
  const membersThen = membersAt.get(atMs) ?? 0;
  return { ...sprint, membersThen: membersThen > 0 ? membersThen : undefined };
}

/** Undefined where member-days are known, or it was not imported. */
function importTimeOf({ memberDays, importedAt }: PastSprint): number | undefined {
  return memberDays === undefined ? importedAt?.getTime() : undefined;
}

interface KnownPast {
  readonly past: readonly PastSprint[];
  /** When sprints came for which the members of that day are counted: once for a thousand that came with one import. */
  readonly importedAtMs: readonly number[];
  /** With the members that those imports count by, as the team says now who they were. */
  counted?: { readonly by: string; readonly past: readonly PastSprint[] };
}

/** To read a long past takes longer than all the rest of an answer, and it hardly ever changes. */
async function rememberedPast(tx: Transaction, team: Team, pastVersion?: string): Promise<KnownPast> {
  const version = pastVersion ?? (await tx.read.pastVersion(team.workspaceId));
  let isRecordedNow = false;
  return pasts.get(
    version && JSON.stringify([version, team.id]),
    async () => {
      // Sprints that closed before there was such a record get one now.
      const missing = await tx.read.sprintsWithoutPast(team.id);
      await recordPast(tx, team, missing);
      isRecordedNow = missing.length > 0;
      const past = await tx.read.pastSprintsOf(team.id);
      return { past, importedAtMs: [...new Set(past.flatMap((sprint) => importTimeOf(sprint) ?? []))] };
    },
    // What this transaction has just recorded may yet be rolled back.
    () => !isRecordedNow,
  );
}

/** The same function, which computes once for each past, and forgets it with the past. */
export function oncePerPast<Value>(
  compute: (past: readonly PastSprint[]) => Value,
): (past: readonly PastSprint[]) => Value {
  const computed = new WeakMap<readonly PastSprint[], { readonly value: Value }>();
  return (past) => {
    const known = computed.get(past) ?? { value: compute(past) };
    computed.set(past, known);
    return known.value;
  };
}

async function recordPast(tx: Transaction, team: Team, sprints: readonly Sprint[]): Promise<void> {
  for (const sprint of sprints) {
    await tx.write.history.savePastSprint(
      await pastSprintAtClosing(tx.read, team, sprint, sprint.closedAt ?? new Date(0)),
    );
  }
}

/** As the commitment range wants them. */
export function commitmentPast(past: readonly PastSprint[]): SprintEvidence[] {
  return past.map((sprint) => ({
    commitmentPoints: sprint.commitmentPoints,
    pulledInPoints: sprint.pulledInPoints,
    surprisePoints: sprint.surprisePoints,
    velocityPoints: sprint.velocityPoints,
    committedFinishedPoints: sprint.committedFinishedPoints,
    workingDays: sprint.workingDays,
    memberDays: sprint.memberDays,
    membersThen: sprint.membersThen,
    largestOpenPoints: largestOpenPoints(sprint.cards),
  }));
}

/** Undefined without a committed card, or where it isn't known how much of each was done. */
function largestOpenPoints(cards: readonly PastCard[]): number | undefined {
  let largest: number | undefined;
  for (const { pulledIn, doneShare, estimatePoints } of cards) {
    if (pulledIn) continue;
    if (doneShare === undefined) return undefined;
    const openPoints = doneShare > 0 && doneShare < 1 ? estimatePoints : 0;
    largest = Math.max(largest ?? 0, openPoints);
  }
  return largest;
}

/** As the surprise odds want them. */
export function closedCards(past: readonly PastSprint[]): ClosedCard[] {
  return past.flatMap(({ cards }) => cards);
}

/** As the record of pulled-in cards wants them. */
export function pulledInCards(past: readonly PastSprint[]): PulledInCard[] {
  return past.flatMap(({ cards }) =>
    cards.flatMap(({ estimatePoints, pulledIn }) => (pulledIn ? [{ estimatePoints, ...pulledIn }] : [])),
  );
}

/** As the release forecast wants them: velocities, oldest first. */
export function knownVelocities(past: readonly PastSprint[]): number[] {
  return past.flatMap(({ velocityPoints }) => (velocityPoints === undefined ? [] : [velocityPoints]));
}

/** How far off the team's numbers were so far. */
export const marginOfPast = oncePerPast((past) =>
  marginOfError(
    past.map(({ commitmentPoints, velocityPoints, ratios }) => ({
      commitmentPoints,
      velocityPoints,
      estimateAccuracy: ratios.estimateAccuracy,
    })),
  ),
);

/**
 * How the latest sprints of the team and of the others in its workspace went, oldest first; of each trace the point at
 * that share of its working days only. `isRecordedNow`: some of it was recorded by this transaction.
 */
async function pastTraces(
  tx: Transaction,
  team: Team,
  elapsedShare: number,
): Promise<{ readonly traces: PastTrace[]; readonly isRecordedNow: boolean }> {
  const readTraces = () => tx.read.pastTracesOf(team, MOST_SPRINTS_BACK, elapsedShare);
  const [missing, traces] = await waitForAll([
    tx.read.sprintsWithoutPast(team.id, MOST_SPRINTS_BACK.own),
    readTraces(),
  ]);
  if (missing.length === 0) return { traces, isRecordedNow: false };
  await recordPast(tx, team, missing);
  return { traces: await readTraces(), isRecordedNow: true };
}

/**
 * What the projection has learnt from the sprints that ended before, each at the same share of its working
 * days. Sprints without a card are left out: nothing can be finished in them. Sprints that ended on the same day are
 * taken to have run together.
 *
 * @param past oldest first
 * @param elapsedShare from 0 to 1
 */
export async function projectionHistory(
  past: readonly PastTrace[],
  elapsedShare: number,
): Promise<ProjectionHistory> {
  let history = NO_HISTORY;
  let learnt = 0;
  for (const together of Map.groupBy(past, ({ endsOn }) => endsOn).values()) {
    history = withEndedSprints(
      history,
      together.flatMap((sprint) => endedSprint(sprint, elapsedShare) ?? []),
    );
    learnt += together.length;
    if (learnt < LEARNT_A_TURN) continue;
    learnt = 0;
    await letOthersTurn();
  }
  return history;
}

/** Each is projected from all those before it. */
const LEARNT_A_TURN = 40;

function endedSprint(sprint: PastTrace, elapsedShare: number): EndedSprint | undefined {
  const { teamId, velocityPoints } = sprint;
  if (velocityPoints === undefined) return undefined;
  const soFar = tracePointAt(sprint.trace, elapsedShare) ?? {
    cardPoints: sprint.commitmentPoints,
    elapsedShare,
  };
  return soFar.cardPoints > 0 ? { team: teamId, soFar, velocityPoints } : undefined;
}

/** The state of the sprint at that share of its working days, to the nearest day; undefined when nobody watched. */
export function tracePointAt(trace: readonly TracePoint[], elapsedShare: number): TracePoint | undefined {
  return trace[Math.round(elapsedShare * (trace.length - 1))];
}

/** About ten megabytes when each has as long a past as is looked back at. */
const histories = new Memory<ProjectionHistory>(200);

/** Cards and points of traces in memory: about as much, twenty teams with ten years of fortnights. */
const MOST_PARTS = 200_000;

const pasts = new Memory<KnownPast>(MOST_PARTS, ({ past }) =>
  past.reduce((sum, { cards, trace }) => sum + 1 + cards.length + trace.length, 1),
);

/**
 * What projections have learnt from the past, kept from one status to the next: to read the past and to learn from it is
 * most of what a status costs, and it changes only when a sprint ends or is reopened.
 *
 * What was learnt from the past at that share of the working days.
 *
 * @param elapsedShare from 0 to 1
 * @param version of the workspace's past, read before this in the same transaction; undefined: nothing is kept
 */
export async function rememberedHistory(
  tx: Transaction,
  team: Team,
  elapsedShare: number,
  version: string | undefined,
): Promise<ProjectionHistory> {
  const key = version && JSON.stringify([version, team.id, elapsedShare]);
  let isRecordedNow = false;
  return histories.get(
    key,
    async () => {
      const read = await pastTraces(tx, team, elapsedShare);
      isRecordedNow = read.isRecordedNow;
      return projectionHistory(read.traces, elapsedShare);
    },
    () => !isRecordedNow,
  );
}
