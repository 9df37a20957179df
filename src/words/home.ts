/** What the home page says of a person's day. Markup of the chat platform. */
import { dayAt, timeAt } from '../app/clock/local-time.ts';
import type { HomeTeam } from '../app/watching/home-page.ts';
import { mrkdwn } from './say.ts';
import { teamTime } from './sprint.ts';

/** Whether the person was asked today, how they met it, and when the next question comes. */
export function todaySentences({ team, sprint, promptState, today, isPromptDay }: HomeTeam): string[] {
  const nextAt = sprint?.nextPromptAt;
  const comesToday = nextAt !== undefined && dayAt(nextAt, team.timeZone) === today;
  if (promptState === undefined && isPromptDay && comesToday) {
    return [mrkdwn('home-not-asked', { when: 'today', time: timeAt(nextAt, team.timeZone) })];
  }
  const now = promptState === undefined ? notAsked(isPromptDay) : [mrkdwn(`overview-${promptState}`)];
  if (promptState === 'asked' || nextAt === undefined) return now;
  return [...now, mrkdwn('home-next-question', { at: teamTime(nextAt, team.timeZone) })];
}

/** On a day of the sprint nobody says why: cards may have come after the question. */
function notAsked(isPromptDay: boolean): string[] {
  return isPromptDay ? [] : [mrkdwn('home-not-asked', { when: 'later', time: '' })];
}
