/** How much to commit to in a coming sprint, and what a given commitment means beside it. */

import type { ComingTime } from '../../forecast/availability.ts';
import { RECENT_SPRINTS } from '../../forecast/commitment-model.ts';
import {
  type CommitmentChances,
  commitmentChances,
  commitmentRange,
} from '../../forecast/commitment-range.ts';
import { memberDaysOf } from '../../sprint/work-calendar.ts';
import { daysOnlyNamed } from '../clock/member-days.ts';
import { sprintDays } from '../clock/sprint-clock.ts';
import type { PastSprint } from '../history/past-sprint.ts';
import { commitmentPast } from '../history/team-history.ts';
import { activeMembers, type Member, type Sprint, type Team } from '../team/team.ts';
import type { ComingSprint, RangeAdvice } from './advice.ts';

/**
 * The sprint with its working time, as far as it is known.
 *
 * @param awayDays days off and away that somebody names, recorded ones among them
 */
export function comingSprint(
  team: Pick<Team, 'timeZone' | 'workingDays' | 'daysOff'>,
  people: readonly Member[],
  { startsOn, endsOn }: Pick<Sprint, 'startsOn' | 'endsOn'>,
  awayDays: number | undefined,
): ComingSprint {
  const members = activeMembers(people);
  const days = sprintDays(team, { startsOn, endsOn });
  return {
    startsOn,
    endsOn,
    workingDays: days.length,
    members: members.length,
    memberDays: memberDaysOf(team, members, days),
    awayDays:
      awayDays === undefined ? undefined : daysOnlyNamed(team, { startsOn, endsOn, awayDays }, members),
  };
}

/** As the statistics want it. */
export function comingTime({ workingDays, members, memberDays, awayDays = 0 }: ComingSprint): ComingTime {
  return {
    workingDays,
    // A team may have shrunk since somebody said who would be away.
    memberDays: Math.max(0, memberDays - awayDays),
    memberDaysWhenAllThere: workingDays * members,
  };
}

/** What a team judges by. */
type RangeRules = Pick<RangeAdvice, 'thresholds' | 'surpriseInVerdict'>;

/** @param past oldest first */
export function rangeOf(
  { thresholds, surpriseInVerdict }: RangeRules,
  past: readonly PastSprint[],
  coming: ComingSprint,
): Pick<RangeAdvice, 'coming' | 'range' | 'past'> & RangeRules {
  const commitments = commitmentPast(past);
  const range = commitmentRange(commitments, comingTime(coming), thresholds);
  const used =
    'undefined' in range
      ? past.filter(({ commitmentPoints }) => commitmentPoints > 0).slice(-RECENT_SPRINTS)
      : past.filter((_, i) => range.model.used.some((sprint) => sprint === commitments[i]));
  return { coming, range, past: used, thresholds, surpriseInVerdict };
}

/** What committing to so much would mean. */
export function readCommitment(
  commitmentPoints: number,
  { range, thresholds }: Pick<RangeAdvice, 'range' | 'thresholds'>,
): CommitmentChances {
  if ('undefined' in range) return { kept: range, finishedWhole: range, ranOut: range };
  return commitmentChances(range.model, commitmentPoints, thresholds);
}
