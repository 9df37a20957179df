/** When the clock has something to do with a sprint. Pure; the instants end up in the database. */
import { addHours } from 'date-fns/addHours';
import { type Day, dayPlus, workingDaysFromTo } from '../../sprint/calendar.ts';
import type { Transaction } from '../ports/store.ts';
import type { Sprint, Team } from '../team/team.ts';
import { dayAt, dayExists, instantOf } from './local-time.ts';

/** How long before closing the last call goes out. */
export const LAST_CALL_MINUTES_BEFORE_CLOSING = 60;

/** How long after its first closing a sprint may be reopened, and how long it may then stay open. */
export const REOPEN_WINDOW_HOURS = 24;

/**
 * Until when a closed sprint may be reopened, and until when it then stays open; undefined before closing, and for
 * an imported sprint, of which nobody is here to correct the answers.
 */
export function reopenUntil(sprint: Pick<Sprint, 'closedAt' | 'importedAt'>): Date | undefined {
  if (sprint.closedAt === undefined || sprint.importedAt !== undefined) return undefined;
  return addHours(sprint.closedAt, REOPEN_WINDOW_HOURS);
}

type Rhythm = Pick<Team, 'timeZone' | 'promptAt' | 'workingDays'>;
type Span = Pick<Sprint, 'startsOn' | 'endsOn' | 'closesAtInstant'>;

/** The days of the sprint on which members are asked. */
export function promptDays(
  team: Pick<Team, 'timeZone' | 'workingDays'>,
  sprint: Pick<Sprint, 'startsOn' | 'endsOn'>,
): Day[] {
  return workingDaysFromTo(sprint.startsOn, sprint.endsOn, team.workingDays).filter((day) =>
    dayExists(day, team.timeZone),
  );
}

/** The first prompt of the sprint that comes after `after` and before closing; undefined: none does. */
export function nextPromptAt(team: Rhythm, sprint: Span, after: Date): Date | undefined {
  return promptDays(team, sprint)
    .map((day) => instantOf(day, team.promptAt, team.timeZone))
    .find((at) => at > after && at < sprint.closesAtInstant);
}

/**
 * The first prompt not in the past, today's included even if its time has gone by: for a sprint that is
 * planned in the middle of its first day.
 */
export function firstPromptAt(team: Rhythm, sprint: Span, today: Day): Date | undefined {
  return promptDays(team, sprint)
    .filter((day) => day >= today)
    .map((day) => instantOf(day, team.promptAt, team.timeZone))
    .find((at) => at < sprint.closesAtInstant);
}

/** When those who have not answered a prompt are reminded; undefined when the sprint closes before. */
export function reminderAt(
  team: Pick<Team, 'reminderAfterMinutes'>,
  sprint: Span,
  promptedAt: Date,
): Date | undefined {
  const at = new Date(promptedAt.getTime() + team.reminderAfterMinutes * 60_000);
  return at < sprint.closesAtInstant ? at : undefined;
}

/** When the last call goes out on the sprint's last day. */
export function lastCallAt(sprint: Pick<Sprint, 'closesAtInstant'>): Date {
  return new Date(sprint.closesAtInstant.getTime() - LAST_CALL_MINUTES_BEFORE_CLOSING * 60_000);
}

/** After a change of zone, prompt time or working days: what the clock does next with the open sprints. */
export async function resetClocks(tx: Transaction, team: Team, now: Date): Promise<void> {
  for (const sprint of await tx.read.openSprintsOf(team.id)) {
    // A reopened sprint closes at the end of its 24 hours and asks nobody any more.
    if (sprint.closedAt !== undefined) continue;
    const today = dayAt(now, team.timeZone);
    const closesAtInstant = instantOf(sprint.endsOn, sprint.closesAt, team.timeZone);
    const moved = { ...sprint, closesAtInstant };
    const askedToday = (await tx.read.promptsOf([{ sprintId: sprint.id, day: today }])).some(
      ({ postId }) => postId,
    );
    await tx.write.sprints.update({
      ...moved,
      // A day that has been asked about is not asked about, nor reminded of, a second time.
      nextPromptAt: firstPromptAt(team, moved, askedToday ? dayPlus(today, 1) : today),
      lastCallAt: sprint.lastCallAt === undefined ? undefined : lastCallAt(moved),
    });
  }
}
