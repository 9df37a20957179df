/** When each member is asked: at the team's time, or at a time that they chose for themselves. Pure. */
import { type Day, dayPlus } from '../../sprint/calendar.ts';
import { dayAt, instantOf, type TimeOfDay, timeAt } from './local-time.ts';

/** How long before closing the last call goes out. */
export const LAST_CALL_MINUTES_BEFORE_CLOSING = 60;

/** A member's own time of asking, by the clock where they are. */
export interface OwnPrompt {
  readonly at: TimeOfDay;
  readonly timeZone: string;
}

/** A team, as far as it says when its members are asked. */
interface TeamTimes {
  readonly timeZone: string;
  readonly promptAt: TimeOfDay;
}

/** A member, as far as they say when they are asked. */
export interface Asked {
  readonly ownPrompt?: OwnPrompt | undefined;
}

/**
 * When the member is asked about a day of the team. Their own time is the one that falls on that day where the team is,
 * even if it is another date where they are.
 */
export function promptInstant(team: TeamTimes, member: Asked | undefined, day: Day): Date {
  const own = member?.ownPrompt;
  if (own === undefined) return instantOf(day, team.promptAt, team.timeZone);
  const near = [day, dayPlus(day, -1), dayPlus(day, 1)].map((date) => instantOf(date, own.at, own.timeZone));
  // A change of clocks may leave none of them on the day; then it is the nearest.
  return near.find((at) => dayAt(at, team.timeZone) === day) ?? (near[0] as Date);
}

/** Until when on a working day somebody may want to be asked: the last call comes then, and closing an hour later. */
export function latestOwnPrompt({ closesAt }: { readonly closesAt: TimeOfDay }): TimeOfDay {
  const [hours = 0, minutes = 0] = closesAt.split(':').map(Number);
  const latest = Math.max(0, hours * 60 + minutes - LAST_CALL_MINUTES_BEFORE_CLOSING);
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${two(Math.floor(latest / 60))}:${two(latest % 60)}`;
}

/** Whether the time, on the day, is early enough for the team. */
export function fitsWorkingDay(
  team: TeamTimes & { readonly closesAt: TimeOfDay },
  ownPrompt: OwnPrompt,
  day: Day,
): boolean {
  const at = promptInstant(team, { ownPrompt }, day);
  return timeAt(at, team.timeZone) <= latestOwnPrompt(team);
}
