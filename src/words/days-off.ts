/** Days off and weekdays in words. */
import type { SpanOff } from '../app/days-off/days-ahead.ts';
import type { DaysOffSaved } from '../app/days-off/days-off-form.ts';
import type { DaySpan } from '../app/days-off/read-days-off.ts';
import type { DaysOffSaid } from '../app/days-off/say-days-off.ts';
import type { WeekdaysSaid } from '../app/days-off/say-weekdays.ts';
import type { PlanTime } from '../app/planning/plan-time.ts';
import type { DayShare } from '../sprint/work-calendar.ts';
import { person } from './people.ts';
import { mrkdwn, say } from './say.ts';
import { weekdayWords } from './team.ts';

export function spanWords({ from, to }: DaySpan): string {
  return from === to ? say('days-off-day', { first: from }) : say('days-off-span', { first: from, last: to });
}

const SHARES = { 0: 'none', 0.5: 'half', 1: 'all' } as const satisfies Record<DayShare, string>;

/** What was taken, to the person who said it. */
export function daysOffSaidSentence({ whose, teams, spans, share }: DaysOffSaid): string {
  const days = spans.map(spanWords);
  if (whose === 'team') {
    return mrkdwn('days-off-team', { share: SHARES[share], days, team: teams[0]?.name ?? '' });
  }
  const said = mrkdwn('days-off-own', { share: SHARES[share], days });
  if (teams.length < 2) return said;
  return `${said} ${mrkdwn('days-off-several-teams', { teams: teams.map(({ name }) => name) })}`;
}

export function weekdaysSaidSentence({ team, worksOn }: WeekdaysSaid): string {
  const days = weekdayWords(worksOn ?? team.workingDays);
  const id = worksOn === undefined ? 'weekdays-own-all' : 'weekdays-own';
  return mrkdwn(id, { team: team.name, days });
}

/** `Thu 24 Dec to Sat 2 Jan`, `Mon 4 Jan (half)` */
export function spanOffWords({ from, to, isHalf }: SpanOff): string {
  if (!isHalf) return spanWords({ from, to });
  return from === to
    ? say('days-off-half-day', { first: from })
    : say('days-off-half-span', { first: from, last: to });
}

/** Most spans that a sentence lists. */
const SPANS_LISTED = 6;

function listedSpans(spans: readonly SpanOff[]): string[] {
  return spans.slice(0, SPANS_LISTED).map(spanOffWords);
}

export function daysOffSavedSentence({ own, ofTeam }: DaysOffSaved): string {
  const mine =
    own.length === 0 ? mrkdwn('days-off-saved-none') : mrkdwn('days-off-saved', { days: listedSpans(own) });
  if (ofTeam.length === 0) return mine;
  return `${mine} ${mrkdwn('days-off-saved-team', { days: listedSpans(ofTeam) })}`;
}

export function daysOffOnHome(spans: readonly SpanOff[]): string {
  return spans.length === 0
    ? mrkdwn('days-off-home-none')
    : mrkdwn('days-off-home', { days: listedSpans(spans) });
}

/** How much time the sprint holds, and a line for each who is off or works part-time. */
export function planTimeLines({ memberDays, teamOff, people }: PlanTime): { lead: string; lines: string[] } {
  const ofTeam = teamOff.length === 0 ? [] : [mrkdwn('plan-time-team-off', { days: listedSpans(teamOff) })];
  const ofPeople = people.map(({ userId, off, worksOn }) => {
    const who = { person: person(userId) };
    const days = listedSpans(off);
    if (worksOn === undefined) return mrkdwn('plan-time-person-off', { ...who, days });
    const part = { ...who, weekdays: weekdayWords(worksOn) };
    return off.length === 0
      ? mrkdwn('plan-time-person-part', part)
      : mrkdwn('plan-time-person-both', { ...part, days });
  });
  return { lead: mrkdwn('plan-time', { days: memberDays }), lines: [...ofTeam, ...ofPeople] };
}
