/** Working days that members will be away or off in a coming sprint, all members together. Who it is, nobody asks. */
import { formatPoints, parsePoints } from '../../sprint/points.ts';

/**
 * Reads them as they are typed: whole or half days. They are written as points are.
 *
 * @returns undefined when the text is no such number.
 */
export function parseAwayDays(text: string): number | undefined {
  return parsePoints(text);
}

/** What is wrong with them and how to correct it; undefined: nothing. */
export function whyNotAwayDays(awayDays: number, workingDays: number, members: number): string | undefined {
  if (!(awayDays >= 0 && Number.isInteger(awayDays * 2))) {
    return 'Give the days off and away of all members together as whole or half days, for example 6 or 2.5.';
  }
  const most = workingDays * members;
  if (awayDays <= most) return undefined;
  return `${counted(members, 'member')} × ${counted(workingDays, 'working day')} make ${formatPoints(most)}, so no more than that can be off or away; you gave ${formatPoints(awayDays)}.`;
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
