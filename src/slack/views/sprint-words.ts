/** Dates, times and amounts of a sprint in words. */
import { dayAt, timeAt } from '../../app/clock/local-time.ts';
import type { SprintHeading } from '../../app/posting/message-content.ts';
import { formatDay } from '../../sprint/calendar.ts';
import { formatPoints } from '../../sprint/points.ts';

/** `Mon 2 Nov to Fri 13 Nov` */
export function spanWords({
  startsOn,
  endsOn,
}: Pick<SprintHeading['sprint'], 'startsOn' | 'endsOn'>): string {
  return startsOn === endsOn ? formatDay(startsOn) : `${formatDay(startsOn)} to ${formatDay(endsOn)}`;
}

/** When the sprint closes by itself, in the team's zone: `Fri 13 Nov at 17:00`. Moves when it is reopened. */
export function closingWords({ sprint, team }: SprintHeading): string {
  const { closesAtInstant } = sprint;
  return `${formatDay(dayAt(closesAtInstant, team.timeZone))} at ${timeAt(closesAtInstant, team.timeZone)}`;
}

/** An instant that each reader sees in their own zone, and in the team's zone where that cannot be. */
export function instantWords(instant: Date, timeZone: string): string {
  const there = `${formatDay(dayAt(instant, timeZone))} at ${timeAt(instant, timeZone)} (${timeZone})`;
  return `<!date^${Math.floor(instant.getTime() / 1000)}^{date_short} at {time}|${there}>`;
}

/** `1 card`, `3 cards` */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** `+2`, `−1`, `0` */
export function signedPoints(points: number): string {
  return points > 0 ? `+${formatPoints(points)}` : formatPoints(points);
}

/** `a`, `a and b`, `a, b and c` */
export function listed(items: readonly string[]): string {
  if (items.length < 2) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}
