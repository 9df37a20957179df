/** How long what nobody uses any more is kept. docs/privacy.md says the same. Common practice, no published source. */
import { addMonths } from 'date-fns/addMonths';
import type { Day } from '../../sprint/calendar.ts';
import { dayAt } from '../clock/local-time.ts';
import type { Team } from '../team/team.ts';

/** How long a team that keeps details without end is kept after it was ended: the usual time of a new team. */
export const MONTHS_KEPT_AFTER_END = 13;

/**
 * How long after its end, or after its workspace removed the bot, a team's open sprints wait: a team that is taken back by
 * then goes on as if nothing had happened.
 */
export const DAYS_UNTIL_FINAL = 30;

/** How long a team's channel may be closed to the bot before the team counts as ended. */
export const DAYS_WITHOUT_CHANNEL = 30;

/** After how many months without a sprint a team counts as ended. */
export const MONTHS_IDLE = 24;

/** The day on which everything of a team is erased that ended then. */
export function erasedOn(
  { retentionMonths, timeZone }: Pick<Team, 'retentionMonths' | 'timeZone'>,
  endedAt: Date,
): Day {
  return dayAt(addMonths(endedAt, retentionMonths ?? MONTHS_KEPT_AFTER_END), timeZone);
}
