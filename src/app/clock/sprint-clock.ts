/** When the clock has something to do with a sprint. Pure; the instants end up in the database. */
import { type Day, dayPlus } from '../../sprint/calendar.ts';
import type { CardState } from '../../sprint/ledger.ts';
import { teamShareOf, workingDaysOf } from '../../sprint/work-calendar.ts';
import type { Transaction } from '../ports/store.ts';
import { isWorking, type Member, type Sprint, type Team } from '../team/team.ts';
import { dayAt, dayExists, instantOf, timeAt } from './local-time.ts';
import { type Asked, LAST_CALL_MINUTES_BEFORE_CLOSING, promptInstant } from './prompt-time.ts';

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
  return eveningsBefore(team, sprint, dayAt(now, team.timeZone));
}

/** The same, up to the evening before the day. */
export function eveningsBefore(
  team: Calendar,
  sprint: Pick<Sprint, 'startsOn' | 'endsOn' | 'state' | 'closedAt'>,
  today: Day,
): Day[] {
  const { state, closedAt } = sprint;
  const last = state === 'open' || closedAt === undefined ? today : dayAt(closedAt, team.timeZone);
  return sprintDays(team, sprint).filter((day) => day < last || (day === last && state === 'closed'));
}

/**
 * The last day of which there is something to tell: the sprint's own, or that on which it was closed or cancelled before. Once
 * it was reopened, people may have answered for later ones.
 */
export function lastDayOf(
  { timeZone }: Pick<Team, 'timeZone'>,
  { endsOn, closedAt }: Pick<Sprint, 'endsOn' | 'closedAt'>,
  states: readonly Pick<CardState, 'entries'>[],
): Day {
  if (closedAt === undefined) return endsOn;
  let last = dayAt(closedAt, timeZone);
  for (const { entries } of states)
    for (const { answer } of entries) if (answer.day > last) last = answer.day;
  return last < endsOn ? last : endsOn;
}

/** Noon: before it, nobody has worked on the first day yet. */
const NOON = '12:00';

/**
 * Whether the member is asked on the day what is left. On the first morning the message only lists their cards, since there
 * is nothing to report yet; for those with a time of their own, it is morning while it is where the team is.
 */
export function isQuestionDay(
  team: Rhythm,
  sprint: Pick<Sprint, 'startsOn' | 'endsOn'>,
  member: Asked | undefined,
  day: Day,
): boolean {
  if (!isSprintDay(team, sprint, day)) return false;
  for (let before = sprint.startsOn; before < day; before = dayPlus(before, 1)) {
    if (isSprintDay(team, sprint, before)) return true;
  }
  return timeAt(promptInstant(team, member, day), team.timeZone) >= NOON;
}

/** Whether the day is one of `sprintDays`. */
function isSprintDay(
  team: Calendar,
  { startsOn, endsOn }: Pick<Sprint, 'startsOn' | 'endsOn'>,
  day: Day,
): boolean {
  if (day < startsOn || day > endsOn) return false;
  return teamShareOf(team, day) > 0 && dayExists(day, team.timeZone);
}

/** When somebody of the team is asked on the day, in order. */
function promptInstants(team: Rhythm, people: readonly Member[], day: Day): Date[] {
  const own = people.filter(isWorking).filter(({ ownPrompt }) => ownPrompt !== undefined);
  const times = [undefined, ...own].map((member) => promptInstant(team, member, day).getTime());
  return [...new Set(times)].sort((a, b) => a - b).map((at) => new Date(at));
}

/**
 * When next in the sprint, after `after` and before closing, somebody is asked; undefined: nobody is any more.
 *
 * @param people those of whom some may have times of their own
 */
export function nextPromptAt(
  team: Rhythm,
  people: readonly Member[],
  sprint: Span,
  after: Date,
): Date | undefined {
  for (const day of sprintDays(team, sprint)) {
    const at = promptInstants(team, people, day).find((instant) => instant > after);
    if (at !== undefined) return at < sprint.closesAtInstant ? at : undefined;
  }
  return undefined;
}

/** When the member is asked next; undefined: not any more. */
export function nextPromptOf(
  team: Rhythm,
  member: Member | undefined,
  sprint: Span,
  after: Date,
): Date | undefined {
  return sprintDays(team, sprint)
    .map((day) => promptInstant(team, member, day))
    .find((at) => at > after && at < sprint.closesAtInstant);
}

/**
 * The first prompt not in the past, today's included even if its time has gone by: for a sprint that is
 * planned in the middle of its first day.
 */
export function firstPromptAt(
  team: Rhythm,
  people: readonly Member[],
  sprint: Span,
  today: Day,
): Date | undefined {
  return sprintDays(team, sprint)
    .filter((day) => day >= today)
    .flatMap((day) => promptInstants(team, people, day))
    .find((at) => at < sprint.closesAtInstant);
}

/** When a member who has not answered a prompt is reminded; undefined when nothing was asked or the sprint closes before. */
export function reminderAt(
  team: Rhythm & Pick<Team, 'reminderAfterMinutes'>,
  sprint: Span,
  promptedAt: Date,
  member?: Asked,
): Date | undefined {
  if (!isQuestionDay(team, sprint, member, dayAt(promptedAt, team.timeZone))) return undefined;
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
    const people = await tx.read.membersOf(team.id);
    const askedIds = await askedOn(tx, sprint, today);
    const isToCome = ({ ownPrompt, userId }: Member): boolean =>
      ownPrompt !== undefined && !askedIds.has(userId);
    const later = earliest(
      people
        .filter(isWorking)
        .filter(isToCome)
        .map((member) => nextPromptOf(team, member, moved, now)),
    );
    await tx.write.sprints.update({
      ...moved,
      // A day that has been asked about is not asked about, nor reminded of, a second time.
      nextPromptAt: earliest([
        firstPromptAt(team, people, moved, askedIds.size > 0 ? dayPlus(today, 1) : today),
        later,
      ]),
      lastCallAt: sprint.lastCallAt === undefined ? undefined : lastCallAt(moved),
    });
  }
}

/**
 * After a member chose another time: they are asked at it, and at once when it has gone by today and nobody has asked them yet.
 */
export async function resetClockOf(tx: Transaction, team: Team, member: Member, now: Date): Promise<void> {
  const today = dayAt(now, team.timeZone);
  for (const sprint of await tx.read.openSprintsOf(team.id)) {
    if (sprint.closedAt !== undefined) continue;
    const from = (await askedOn(tx, sprint, today)).has(member.userId) ? dayPlus(today, 1) : today;
    const next = sprintDays(team, sprint)
      .filter((day) => day >= from)
      .map((day) => promptInstant(team, member, day))
      .find((at) => at < sprint.closesAtInstant);
    await tx.write.sprints.updateClocks([{ ...sprint, nextPromptAt: earliest([sprint.nextPromptAt, next]) }]);
  }
}

async function askedOn(tx: Transaction, { id }: Sprint, day: Day): Promise<Set<string>> {
  const prompts = await tx.read.promptsOf([{ sprintId: id, day }]);
  return new Set(prompts.filter(({ postId }) => postId !== undefined).map(({ userId }) => userId));
}

/** The earliest of those that there are. */
export function earliest(instants: readonly (Date | undefined)[]): Date | undefined {
  const times = instants.flatMap((at) => (at === undefined ? [] : [at.getTime()]));
  return times.length === 0 ? undefined : new Date(Math.min(...times));
}
