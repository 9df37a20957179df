/** How much time a planned sprint really holds, and who is off when: for the facilitator who plans, not for the channel. */
import type { Weekday } from '../../sprint/calendar.ts';
import { daysOnlyNamed, memberDaysIn } from '../clock/member-days.ts';
import { sprintDays } from '../clock/sprint-clock.ts';
import { type SpanOff, spansOff } from '../days-off/days-ahead.ts';
import { activeMembers, type Member, type Sprint, type Team } from '../team/team.ts';

export interface PlanTime {
  /** Working days of all members together, less days off and days away. */
  readonly memberDays: number;
  /** Days off and away of all members together that the plan names, and those of them that nobody recorded. */
  readonly namedDays: number;
  readonly onlyNamedDays: number;
  readonly teamOff: readonly SpanOff[];
  /** Those who are off or work part-time in the sprint. */
  readonly people: readonly {
    readonly userId: string;
    readonly off: readonly SpanOff[];
    /** Undefined: all of the team's. */
    readonly worksOn: readonly Weekday[] | undefined;
  }[];
}

export function planTime(
  team: Team,
  members: readonly Member[],
  span: Pick<Sprint, 'startsOn' | 'endsOn' | 'awayDays'>,
): PlanTime {
  const working = activeMembers(members);
  const { startsOn, endsOn } = span;
  const people = working.map(({ userId, daysOff, worksOn }) => ({
    userId,
    off: spansOff(daysOff, startsOn, endsOn),
    worksOn,
  }));
  return {
    memberDays: memberDaysIn(team, span, working, sprintDays(team, span)),
    namedDays: span.awayDays ?? 0,
    onlyNamedDays: daysOnlyNamed(team, span, working),
    teamOff: spansOff(team.daysOff, startsOn, endsOn),
    people: people.filter(({ off, worksOn }) => off.length > 0 || worksOn !== undefined),
  };
}
