/** When the clock has something to do with a sprint. Pure; the instants end up in the database. */
import { type Day, dayPlus } from '../../sprint/calendar.ts';
import { teamShareOf, workingDaysOf } from '../../sprint/work-calendar.ts';
import type { Transaction } from '../ports/store.ts';
import type { Sprint, Team } from '../team/team.ts';
import { dayAt, dayExists, instantOf } from './local-time.ts';

/** How long before closing the last call goes out. */
export const LAST_CALL_MINUTES_BEFORE_CLOSING = 60;

type Calendar = Pick<Team, 'timeZone' | 'workingDays' | 'daysOff'>;
type Rhythm = Calendar & Pick<Team, 'promptAt'>;
type Span = Pick<Sprint, 'startsOn' | 'endsOn' | 'closesAtInstant'>;

/** The days of the sprint on which the team works. */
export function sprintDays(team: Calendar, sprint: Pick<Sprint, 'startsOn' | 'endsOn'>): Day[] {
  return workingDaysOf(team, sprint.startsOn, sprint.endsOn).filter((day) => dayExists(day, team.timeZone));
}

/**
 * Until when a closed sprint may be reopened, and until when it then stays open: closing time on the team's next working
 * day after its first closing. Undefined before closing, and for an imported sprint, of which nobody is here to correct
 * the answers.
 */
export function reopenUntil(
  team: Calendar,
  { closedAt, closesAt, importedAt }: Pick<Sprint, 'closedAt' | 'closesAt' | 'importedAt'>,
): Date | undefined {
  if (closedAt === undefined || importedAt !== undefined) return undefined;
  let day = dayPlus(dayAt(closedAt, team.timeZone), 1);
  while (teamShareOf(team, day) === 0 || !dayExists(day, team.timeZone)) day = dayPlus(day, 1);
  return instantOf(day, closesAt, team.timeZone);
}

/**
 * The sprint's working days whose evening has come. The closing of a sprint is the evening of its day; a sprint that was
 * cancelled has no evening on that day.
 */
export function eveningsOf(
  team: Calendar,
  sprint: Pick<Sprint, 'startsOn' | 'endsOn' | 'state' | 'closedAt'>,
  now: Date,
): Day[] {
  const { state, closedAt } = sprint;
  const last = dayAt(state === 'open' || closedAt === undefined ? now : closedAt, team.timeZone);
  return sprintDays(team, sprint).filter((day) => day < last || (day === last && state === 'closed'));
}

/** Noon: before it, nobody has worked on the first day yet. */
const NOON = '12:00';

/**
 * The days on which members are asked what is left. On the first morning the message only lists their cards, since there
 * is nothing to report yet.
 */
export function questionDays(
  team: Calendar & Pick<Team, 'promptAt'>,
  sprint: Pick<Sprint, 'startsOn' | 'endsOn'>,
): Day[] {
  return sprintDays(team, sprint).slice(team.promptAt < NOON ? 1 : 0);
}

/** The first prompt of the sprint that comes after `after` and before closing; undefined: none does. */
export function nextPromptAt(team: Rhythm, sprint: Span, after: Date): Date | undefined {
  return sprintDays(team, sprint)
    .map((day) => instantOf(day, team.promptAt, team.timeZone))
    .find((at) => at > after && at < sprint.closesAtInstant);
}

/**
 * The first prompt not in the past, today's included even if its time has gone by: for a sprint that is
 * planned in the middle of its first day.
 */
export function firstPromptAt(team: Rhythm, sprint: Span, today: Day): Date | undefined {
  return sprintDays(team, sprint)
    .filter((day) => day >= today)
    .map((day) => instantOf(day, team.promptAt, team.timeZone))
    .find((at) => at < sprint.closesAtInstant);
}

/** When those who have not answered a prompt are reminded; undefined when nothing was asked or the sprint closes before. */
export function reminderAt(
  team: Rhythm & Pick<Team, 'reminderAfterMinutes'>,
  sprint: Span,
  promptedAt: Date,
): Date | undefined {
  if (!questionDays(team, sprint).includes(dayAt(promptedAt, team.timeZone))) return undefined;
  const at = new Date(promptedAt.getTime() + team.reminderAfterMinutes * 60_000);
  return at < sprint.closesAtInstant ? at : undefined;
}

/** When the last call goes out on the sprint's last day. */
export function lastCallAt(sprint: Pick<Sprint, 'closesAtInstant'>): Date {
  return new Date(sprint.closesAtInstant.getTime() - LAST_CALL_MINUTES_BEFORE_CLOSING * 60_000);
}

/** Answers from before that are more than an hour old when the last call goes out, so it asks about them again. */
export function lastCallAsksBefore(
  { timeZone }: Pick<Team, 'timeZone'>,
  { endsOn, closesAt }: Pick<Sprint, 'endsOn' | 'closesAt'>,
): Date {
  // Not by the instant of closing, which moves when the sprint is reopened.
  const closesFirst = instantOf(endsOn, closesAt, timeZone).getTime();
  return new Date(closesFirst - (LAST_CALL_MINUTES_BEFORE_CLOSING + 60) * 60_000);
}

/** After a change of zone, prompt time or working days: what the clock does next with the open sprints. */
export async function resetClocks(tx: Transaction, team: Team, now: Date): Promise<void> {
  for (const sprint of await tx.read.openSprintsOf(team.id)) {
    // A reopened sprint closes when its time for corrections is over, and asks nobody any more.
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
