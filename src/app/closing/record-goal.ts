/** Whether the sprint's goal was met: said by the product owner or a facilitator, in the sprint or after its end. */
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading } from '../ports/store.ts';
import { refreshVerdict } from '../posting/thread.ts';
import { Refusal } from '../refusal.ts';
import {
  type Audience,
  audienceAt,
  audienceInTeam,
  currentSprint,
  facilitatorIdsOf,
  type Place,
  type SprintReference,
  todayOf,
} from '../team/place.ts';
import type { Actor, GoalMet, GoalOutcome, Sprint, SprintHeading } from '../team/team.ts';

export const GOAL_NOTE_MAX_LENGTH = 300;
const WORDS: readonly string[] = ['yes', 'partly', 'no'] satisfies readonly GoalMet[];

export interface RecordedGoal {
  readonly heading: SprintHeading;
  readonly outcome: GoalOutcome;
}

export interface GoalForm {
  readonly heading: SprintHeading;
  /** What was said before. */
  readonly outcome: GoalOutcome | undefined;
}

/** In words, as `yes, more or less`; or of a sprint, part by part. */
type GoalAnswer =
  | { readonly place: Place; readonly line: string }
  | { readonly sprintId: string; readonly met: string; readonly note: string };

/** What the form begins with. @throws Refusal as `recordGoal` */
export async function goalForm(
  deps: AppDependencies,
  actor: Actor,
  reference: SprintReference,
): Promise<GoalForm> {
  return deps.store.transaction(async ({ read }) => {
    const found = await goalKeeperAt(read, actor, reference);
    const sprint = found.sprint ?? (await sprintWithGoal(read, found.audience, deps.clock.now()));
    requireGoal(sprint);
    return { heading: { team: found.audience.team, sprint }, outcome: sprint.goalOutcome };
  });
}

/**
 * Records it for the sprint, or for the running one, or between two sprints for the one that ended last; what was said before
 * is replaced. A verdict that is posted already is brought up to date, and the question to the person who was asked.
 *
 * @throws Refusal `bad-argument`, `not-a-goal-keeper`, `no-sprint-running`, `sprint-over` for a cancelled one
 */
export async function recordGoal(
  deps: AppDependencies,
  actor: Actor,
  answer: GoalAnswer,
): Promise<RecordedGoal> {
  const { met, note } = readAnswer(answer);
  return deps.store.transaction(async (tx) => {
    const now = deps.clock.now();
    const { audience } = await goalKeeperAt(tx.read, actor, answer);
    const { team } = audience;
    await tx.lock.team(team.id);
    const sprint =
      'sprintId' in answer
        ? await tx.read.sprintById(answer.sprintId)
        : await sprintWithGoal(tx.read, audience, now);
    requireGoal(sprint);
    const outcome: GoalOutcome = { met, note, saidBy: actor.userId, saidAt: now };
    await tx.write.sprints.update({ ...sprint, goalOutcome: outcome });
    await refreshVerdict(tx, sprint.id);
    await tx.write.posts.refreshSent(sprint.id, 'goal-question');
    return { heading: { team, sprint }, outcome };
  });
}

function readAnswer(answer: GoalAnswer): Pick<GoalOutcome, 'met' | 'note'> {
  const { met: word, note: sentence } = 'line' in answer ? partsOf(answer.line) : answer;
  const note = sentence.replace(/\s+/g, ' ').trim();
  const met = word.toLowerCase();
  if (isGoalMet(met) && note.length <= GOAL_NOTE_MAX_LENGTH) return { met, note };
  const problem = isGoalMet(met)
    ? ({ code: 'note-length', most: GOAL_NOTE_MAX_LENGTH } as const)
    : ({ code: 'goal-word' } as const);
  throw new Refusal('bad-argument', { command: 'goal', problem, example: undefined });
}

function partsOf(line: string): { met: string; note: string } {
  const [, met = '', note = ''] = /^(\p{L}*)[\s,.;:–-]*([\s\S]*)$/u.exec(line.trim()) ?? [];
  return { met, note };
}

function isGoalMet(word: string): word is GoalMet {
  return WORDS.includes(word);
}

/** @throws Refusal `not-a-goal-keeper` */
async function goalKeeperAt(
  read: Reading,
  actor: Actor,
  reference: SprintReference,
): Promise<{ readonly audience: Audience; readonly sprint: Sprint | undefined }> {
  const sprint = 'sprintId' in reference ? await read.sprintById(reference.sprintId) : undefined;
  const audience =
    'place' in reference
      ? await audienceAt(read, actor, reference.place)
      : await audienceInTeam(read, actor, sprint?.teamId ?? '');
  const { team, members, isFacilitator, isProductOwner } = audience;
  if (isFacilitator || isProductOwner) return { audience, sprint };
  throw new Refusal('not-a-goal-keeper', {
    teamName: team.name,
    productOwnerId: team.productOwnerId,
    facilitatorIds: facilitatorIdsOf(members),
  });
}

/** The running sprint, or between two the one that ended last. */
async function sprintWithGoal(read: Reading, { team }: Audience, now: Date): Promise<Sprint | undefined> {
  const today = todayOf(team, now);
  const running = currentSprint(await read.openSprintsOf(team.id), today);
  const begun = running && running.startsOn <= today ? running : undefined;
  return begun ?? (await read.latestFinishedSprint(team.id));
}

function requireGoal(sprint: Sprint | undefined): asserts sprint {
  if (!sprint || sprint.importedAt !== undefined) throw new Refusal('no-sprint-running', {});
  if (sprint.state === 'cancelled') {
    throw new Refusal('sprint-over', { sprintName: sprint.name, state: sprint.state });
  }
}
