/** Whether the sprint's goal was met: said by the product owner or a facilitator, in the sprint or after its end. */
import type { AppDependencies } from '../ports/app-dependencies.ts';
import { refreshVerdict } from '../posting/thread.ts';
import { Refusal } from '../refusal.ts';
import { audienceAt, currentSprint, facilitatorIdsOf, type Place, todayOf } from '../team/place.ts';
import type { Actor, GoalMet, GoalOutcome, SprintHeading } from '../team/team.ts';

const MAX_NOTE_LENGTH = 300;
const WORDS: readonly string[] = ['yes', 'partly', 'no'] satisfies readonly GoalMet[];

export interface RecordedGoal {
  readonly heading: SprintHeading;
  readonly outcome: GoalOutcome;
}

/**
 * Records it for the running sprint, or between two sprints for the one that ended last; what was said before is replaced.
 * A verdict that is posted already is brought up to date.
 *
 * @param line `yes`, `partly` or `no`, and a sentence if they like
 * @throws Refusal `bad-argument`, `not-a-goal-keeper`, `no-sprint-running`, `sprint-over` for a cancelled one
 */
export async function recordGoal(
  deps: AppDependencies,
  actor: Actor,
  { place, line }: { readonly place: Place; readonly line: string },
): Promise<RecordedGoal> {
  const [, word = '', rest = ''] = /^(\p{L}*)[\s,.;:–-]*([\s\S]*)$/u.exec(line.trim()) ?? [];
  const met = WORDS.includes(word.toLowerCase()) ? (word.toLowerCase() as GoalMet) : undefined;
  const note = rest.replace(/\s+/g, ' ').trim();
  if (met === undefined || note.length > MAX_NOTE_LENGTH) {
    const problem = met === undefined ? ({ code: 'goal-word' } as const) : NOTE_TOO_LONG;
    throw new Refusal('bad-argument', { command: 'goal', problem, example: undefined });
  }
  return deps.store.transaction(async (tx) => {
    const now = deps.clock.now();
    const { team, members, isFacilitator, isProductOwner } = await audienceAt(tx.read, actor, place);
    if (!isFacilitator && !isProductOwner) {
      throw new Refusal('not-a-goal-keeper', {
        teamName: team.name,
        productOwnerId: team.productOwnerId,
        facilitatorIds: facilitatorIdsOf(members),
      });
    }
    await tx.lock.team(team.id);
    const today = todayOf(team, now);
    const running = currentSprint(await tx.read.openSprintsOf(team.id), today);
    const begun = running && running.startsOn <= today ? running : undefined;
    const sprint = begun ?? (await tx.read.latestFinishedSprint(team.id));
    if (!sprint || sprint.importedAt !== undefined) throw new Refusal('no-sprint-running', {});
    if (sprint.state === 'cancelled') {
      throw new Refusal('sprint-over', { sprintName: sprint.name, state: sprint.state });
    }
    const outcome: GoalOutcome = { met, note, saidBy: actor.userId, saidAt: now };
    await tx.write.sprints.update({ ...sprint, goalOutcome: outcome });
    await refreshVerdict(tx, sprint.id);
    return { heading: { team, sprint }, outcome };
  });
}

const NOTE_TOO_LONG = { code: 'note-length', most: MAX_NOTE_LENGTH } as const;
