/** Corrects what a running sprint was planned with: its goal, its last day, its closing time, days off and away. */
import { dayAt } from '../clock/local-time.ts';
import { lastCallAt, nextPromptAt, sprintDays } from '../clock/sprint-clock.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Transaction } from '../ports/store.ts';
import { Refusal, refuseIfAny } from '../refusal.ts';
import { openSprint, type Place, requireFacilitator, type SprintReference, todayOf } from '../team/place.ts';
import { type Actor, type Sprint, type SprintHeading, type Team, workersOf } from '../team/team.ts';
import type { PlanChange } from './plan-change.ts';
import { goalProblems, readAwayDays, readSpan } from './read-plan.ts';
import { recordPlanChanges } from './record-plan-changes.ts';

export interface EditedSprint {
  readonly heading: SprintHeading;
  /** None: everything was as it is. */
  readonly changes: readonly PlanChange[];
}

/** As typed; undefined: stays as it is. */
interface SprintEdit {
  readonly goal?: string | undefined;
  readonly endsOn?: string | undefined;
  readonly closesAt?: string | undefined;
  readonly awayDays?: string | undefined;
}

export interface SprintToEdit {
  readonly team: Team;
  readonly sprint: Sprint;
}

/** What the form begins with. @throws Refusal `not-a-facilitator` */
export async function sprintToEdit(deps: AppDependencies, actor: Actor, place: Place): Promise<SprintToEdit> {
  return deps.store.transaction(async (tx) => {
    const found = await openSprint(tx, actor, { place }, deps.clock.now());
    requireFacilitator(found, 'edit');
    const { team, sprint } = found;
    return { team, sprint };
  });
}

/**
 * Corrects the sprint, and keeps what it was. All of it or nothing.
 *
 * @throws Refusal `bad-input` (goal, endsOn, closesAt, awayDays), `sprint-was-closed` for other days or times of a reopened one,
 *   `not-a-facilitator`
 */
export async function editSprint(
  deps: AppDependencies,
  actor: Actor,
  input: SprintReference & { readonly edit: SprintEdit },
): Promise<EditedSprint> {
  return deps.store.transaction(async (tx) => {
    const now = deps.clock.now();
    const found = await openSprint(tx, actor, input, now);
    requireFacilitator(found, 'edit');
    const { team, sprint } = found;
    const goal = input.edit.goal?.trim() ?? sprint.goal;
    const { endsOn = sprint.endsOn, closesAt = sprint.closesAt } = input.edit;
    const moves = endsOn !== sprint.endsOn || closesAt !== sprint.closesAt;
    if (moves && sprint.closedAt !== undefined) {
      throw new Refusal('sprint-was-closed', { sprintName: sprint.name });
    }
    const span = moves
      ? await readSpan(tx.read, team, { startsOn: sprint.startsOn, endsOn, closesAt }, now, sprint.id)
      : {
          problems: [],
          workingDays: sprintDays(team, sprint).length,
          closesAtInstant: sprint.closesAtInstant,
        };
    const typedAway = input.edit.awayDays ?? String(sprint.awayDays ?? '');
    const workers = workersOf(found.members, sprint.id);
    const away = readAwayDays(typedAway, span.workingDays, workers.length);
    // Of a team that has become smaller since, what the plan named may be too much by now.
    const awayProblems = away.awayDays === sprint.awayDays ? [] : away.problems;
    refuseIfAny([...goalProblems(goal), ...span.problems, ...awayProblems]);
    const { closesAtInstant } = span;
    const edited: Sprint = { ...sprint, goal, endsOn, closesAt, closesAtInstant, awayDays: away.awayDays };
    const changes = await recordPlanChanges(
      tx,
      sprint,
      { cardId: undefined, changedBy: actor.userId, changedAt: now },
      [
        { part: 'goal', was: sprint.goal, became: goal },
        { part: 'endsOn', was: sprint.endsOn, became: endsOn },
        { part: 'closesAt', was: sprint.closesAt, became: closesAt },
        { part: 'awayDays', was: daysText(sprint), became: daysText(edited) },
      ],
    );
    if (changes.length === 0) return { heading: { team, sprint }, changes };
    const clocked = moves ? await withClock(tx, team, sprint, edited, now) : edited;
    await tx.write.sprints.update(clocked);
    return { heading: { team, sprint: clocked }, changes };
  });
}

/** None and 0 are the same to whoever counts. */
function daysText({ awayDays = 0 }: Sprint): string {
  return awayDays === 0 ? '' : String(awayDays);
}

/** What the clock does next, now that the sprint ends at another time. */
async function withClock(
  tx: Transaction,
  team: Team,
  before: Sprint,
  edited: Sprint,
  now: Date,
): Promise<Sprint> {
  const today = todayOf(team, now);
  const people = await tx.read.membersOf(team.id);
  const userIds = people.map(({ userId }) => userId);
  await tx.write.posts.refreshAboutDay(edited.id, userIds, today);
  const isInTime = (at: Date | undefined): Date | undefined =>
    at && at < edited.closesAtInstant ? at : undefined;
  const lastCall = lastCallAt(edited);
  // Nobody is called twice on one day.
  const hasCalledToday = before.lastCallAt === undefined && dayAt(lastCall, team.timeZone) === today;
  return {
    ...edited,
    nextPromptAt: isInTime(before.nextPromptAt) ?? nextPromptAt(team, people, edited, now),
    nextReminderAt: isInTime(before.nextReminderAt),
    lastCallAt: hasCalledToday ? undefined : lastCall,
  };
}
