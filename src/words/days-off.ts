/** Days off and weekdays in words. */
import type { DaySpan } from '../app/days-off/read-days-off.ts';
import type { DaysOffSaid } from '../app/days-off/say-days-off.ts';
import type { WeekdaysSaid } from '../app/days-off/say-weekdays.ts';
import type { DayShare } from '../sprint/work-calendar.ts';
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
