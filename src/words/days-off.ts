/** Days off and weekdays in words. */
import { joined, type SpanOff } from '../app/days-off/days-ahead.ts';
import type { CalendarDayOff, LeftOutEvent } from '../app/days-off/days-from-calendar.ts';
import type { DaysOffSaved } from '../app/days-off/days-off-form.ts';
import type { DaysOffPreview } from '../app/days-off/import-days-off.ts';
import type { DaySpan } from '../app/days-off/read-days-off.ts';
import type { DaysOffSaid } from '../app/days-off/say-days-off.ts';
import type { WeekdaysSaid } from '../app/days-off/say-weekdays.ts';
import type { PlanTime } from '../app/planning/plan-time.ts';
import { daysBetween } from '../sprint/calendar.ts';
import type { DayShare } from '../sprint/work-calendar.ts';
import { person } from './people.ts';
import { mrkdwn, say } from './say.ts';
import { weekdayWords } from './team.ts';

function spanWords({ from, to }: DaySpan): string {
  return from === to ? say('days-off-day', { first: from }) : say('days-off-span', { first: from, last: to });
}

const SHARES = { 0: 'none', 0.5: 'half', 1: 'all' } as const satisfies Record<DayShare, string>;

/** From so many days ahead on, the year is said: somebody may have meant a day that has gone by. */
const YEAR_SAID_FROM_DAYS = 180;

/** What was taken, to the person who said it. */
export function daysOffSaidSentence({ whose, teams, spans, share, today }: DaysOffSaid): string {
  const days = spans.map((span) => {
    if (daysBetween(today, span.from) < YEAR_SAID_FROM_DAYS) return spanWords(span);
    const { from: first, to: last } = span;
    return first === last ? say('days-off-far-day', { first }) : say('days-off-far-span', { first, last });
  });
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

/** The first ones, and how many more there are. */
function listedSpans(spans: readonly SpanOff[]): string[] {
  const listed = spans.slice(0, SPANS_LISTED).map(spanOffWords);
  const more = spans.length - listed.length;
  return more === 0 ? listed : [...listed, say('days-off-more', { count: more })];
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
export function planTimeLines({ memberDays, namedDays, onlyNamedDays, teamOff, people }: PlanTime): {
  lead: string;
  lines: string[];
} {
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
  const lead =
    namedDays > 0
      ? mrkdwn('plan-time-named', {
          days: memberDays,
          named: namedDays,
          others: onlyNamedDays,
        })
      : mrkdwn('plan-time', { days: memberDays });
  return { lead, lines: [...ofTeam, ...ofPeople] };
}

export function daysOffPreviewLead({ whose, team, name: file, days, from, to }: DaysOffPreview): string {
  const about = { file, first: from, last: to };
  return days.length === 0
    ? mrkdwn('days-off-preview-none', about)
    : mrkdwn('days-off-preview-lead', { ...about, whose, team: team.name, count: days.length });
}

/** Days after each other that are off for the same reason share a line. */
export function daysOffPreviewLines(days: readonly CalendarDayOff[]): string[] {
  const alike = Map.groupBy(days, ({ isHalf, titles }) => JSON.stringify([isHalf, titles]));
  return [...alike.values()]
    .flatMap((group) =>
      joined(group.map(({ day }) => day)).map((span) => ({ ...span, ...(group[0] as CalendarDayOff) })),
    )
    .sort((a, b) => (a.from < b.from ? -1 : 1))
    .map(({ titles, ...span }) => {
      const said = spanOffWords(span);
      return titles.length === 0
        ? mrkdwn('days-off-preview-untitled', { days: said })
        : mrkdwn('days-off-preview-titled', { days: said, titles: titles.slice(0, TITLES_LISTED) });
    });
}

/** Most titles that a day lists. */
const TITLES_LISTED = 3;

export function leftOutLines(leftOut: readonly LeftOutEvent[], outside: number): string[] {
  const lines = leftOut.map(({ why, title, days }) => {
    const [span] = joined(days);
    const listed = span ? spanWords(span) : '';
    const rest = span ? days.length - daysBetween(span.from, span.to) - 1 : 0;
    return mrkdwn('days-off-left-out', {
      why,
      title: title === '' ? say('days-off-untitled') : title,
      days: rest === 0 ? listed : say('days-off-and-more', { days: listed, count: rest }),
    });
  });
  return outside === 0 ? lines : [...lines, mrkdwn('days-off-left-out-outside', { count: outside })];
}

/** Most regions that the note lists; the rest can be named as well. */
const REGIONS_LISTED = 60;

/** @param regions parts of the country that may have further holidays */
export function holidaysSentence(regions: readonly string[]): string {
  if (regions.length === 0) return mrkdwn('days-off-preview-holidays');
  return mrkdwn('days-off-preview-regions', { regions: regions.slice(0, REGIONS_LISTED).join(', ') });
}
