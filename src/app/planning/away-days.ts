/** Working days that members will be away or off in a coming sprint, all members together. Who it is, nobody asks. */
import { parsePoints } from '../../sprint/points.ts';

/**
 * Reads them as they are typed: whole or half days. They are written as points are.
 *
 * @returns undefined when the text is no such number.
 */
export function parseAwayDays(text: string): number | undefined {
  return parsePoints(text);
}

export type AwayDaysProblem =
  | { readonly code: 'no-away-days' }
  | {
      readonly code: 'too-many-away-days';
      readonly members: number;
      readonly workingDays: number;
      readonly most: number;
      readonly given: number;
    };

/** What is wrong with them; undefined: nothing. */
export function whyNotAwayDays(
  awayDays: number,
  workingDays: number,
  members: number,
): AwayDaysProblem | undefined {
  if (!(awayDays >= 0 && Number.isInteger(awayDays * 2))) {
    return { code: 'no-away-days' };
  }
  const most = workingDays * members;
  if (awayDays <= most) return undefined;
  return { code: 'too-many-away-days', members, workingDays, most, given: awayDays };
}
