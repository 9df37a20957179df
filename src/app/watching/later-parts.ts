/** What the team's past sprints did from a moment on: its pace in the rest of the running one. */
import { relativeTime } from '../../forecast/availability.ts';
import { RECENT_SPRINTS } from '../../forecast/commitment-model.ts';
import { type LaterPace, type LaterPart, laterPace } from '../../forecast/paced-velocity.ts';
import type { SprintTime } from '../clock/sprint-time.ts';
import type { PastSprint } from '../history/past-sprint.ts';
import { oncePerPast, pastSprints, tracePointAt } from '../history/team-history.ts';
import type { Transaction } from '../ports/store.ts';
import { workersOf } from '../team/team.ts';
import type { TeamSprint } from './team-sprint.ts';

type TimeAhead = Pick<SprintTime, 'elapsedShare' | 'total' | 'memberDays'>;

/**
 * Undefined where too few sprints show it.
 *
 * @param pastVersion of the workspace's past, read before in the same transaction
 */
export async function paceAhead(
  tx: Transaction,
  { team, members, sprint }: TeamSprint,
  { elapsedShare, total, memberDays }: TimeAhead,
  pastVersion: string | undefined,
): Promise<LaterPace | undefined> {
  const known = pacesOf(await pastSprints(tx, team, pastVersion));
  const asked = { elapsedShare, total, memberDays, members: workersOf(members, sprint.id).length };
  const key = JSON.stringify(asked);
  if (!known.paces.has(key)) known.paces.set(key, known.paceAt(asked));
  return known.paces.get(key);
}

/** Learnt once for each moment, and kept with the past: one sprint runs at a time. */
const pacesOf = oncePerPast((past) => ({
  paces: new Map<string, LaterPace | undefined>(),
  paceAt: ({ members, ...time }: TimeAhead & { readonly members: number }) =>
    laterPace(laterParts(past, time, members)),
}));

/** What the latest sprints did from this moment on, scaled to the length of this one. */
export function laterParts(
  past: readonly PastSprint[],
  { elapsedShare, total, memberDays }: TimeAhead,
  members: number,
): LaterPart[] {
  const recent = past.slice(-RECENT_SPRINTS);
  const { factors } = relativeTime(recent, {
    workingDays: total,
    memberDays,
    memberDaysWhenAllThere: total * members,
  });
  return recent.flatMap((sprint, i) => {
    const part = laterPart(sprint, elapsedShare);
    const factor = factors[i];
    if (!part || factor === undefined) return [];
    return [
      {
        ...part,
        workedPoints: part.workedPoints * factor,
        evenPoints: part.evenPoints * factor,
        openPoints: part.openPoints * factor,
      },
    ];
  });
}

function laterPart(sprint: PastSprint, elapsedShare: number): LaterPart | undefined {
  const { trace, velocityPoints } = sprint;
  const shareLeft = 1 - elapsedShare;
  const then = tracePointAt(trace, elapsedShare);
  const end = trace.at(-1);
  if (then && end && velocityPoints !== undefined) {
    return {
      workedPoints: Math.max(
        0,
        velocityPoints + end.underwayPoints - then.finishedPoints - then.underwayPoints,
      ),
      evenPoints: velocityPoints * shareLeft,
      openPoints: Math.max(0, then.cardPoints - then.finishedPoints - then.underwayPoints),
      isWatched: true,
      // Work that was pulled in after that moment had only the time that was left then.
      hadTimeToSpare: end.finishedPoints >= end.cardPoints && end.cardPoints <= then.cardPoints,
    };
  }
  // An imported sprint was not watched, so it is taken to have gone evenly, though all of it may have been open then.
  if (velocityPoints === undefined) return undefined;
  const pulledInPoints = sprint.pulledInPoints ?? 0;
  const evenPoints = velocityPoints * shareLeft;
  return {
    workedPoints: evenPoints,
    evenPoints,
    openPoints: sprint.commitmentPoints,
    isWatched: false,
    hadTimeToSpare: pulledInPoints === 0 && velocityPoints >= sprint.commitmentPoints,
  };
}
