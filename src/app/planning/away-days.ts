/**
 * Working days that members will be away or off in a coming sprint, all members together. Whole or half
 * days, written as points are. Who it is, nobody asks.
 */

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
