/** What the home page says of a person's day and of their team's sprint. Markup of the chat platform. */
import { dayAt, timeAt } from '../app/clock/local-time.ts';
import type { SprintHeading } from '../app/team/team.ts';
import type { HomeProgress, HomeTeam, NextStep } from '../app/watching/home-page.ts';
import { loadSentence } from './load.ts';
import { mrkdwn } from './say.ts';
import { closingTime, teamTime } from './sprint.ts';

/** Whether the person was asked today, how they met it, and when the next question comes. */
export function todaySentences({
  team,
  nextQuestionAt: nextAt,
  promptState,
  today,
  isPromptDay,
}: HomeTeam): string[] {
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

/** Goal, days, burndown and load signal: sums of the team. */
export function progressSentences(
  heading: SprintHeading,
  { workingDays, workingDaysLeft, commitmentPoints, leftPoints, idealPoints, load }: HomeProgress,
): string[] {
  const goal = heading.sprint.goal.trim();
  return [
    ...(goal === '' ? [] : [mrkdwn('home-goal', { goal })]),
    mrkdwn('home-days', { left: workingDaysLeft, of: workingDays, closing: closingTime(heading) }),
    commitmentPoints === 0
      ? mrkdwn('home-burndown-no-plan', { left: leftPoints })
      : mrkdwn('home-burndown', {
          left: leftPoints,
          committed: commitmentPoints,
          ideal: Math.round(idealPoints * 2) / 2,
        }),
    loadSentence(load),
  ];
}

export function nextStepSentence(step: NextStep): string {
  switch (step.code) {
    case 'say-who-reads':
      return mrkdwn('home-next-say-who-reads', { posts: step.posts });
    case 'find-owners':
      return mrkdwn('home-next-find-owners', { cards: step.cards });
    case 'finish-corrections':
      return mrkdwn('home-next-finish-corrections');
    case 'finish-draft':
      return mrkdwn('home-next-finish-draft', { sprint: step.sprint });
    case 'plan':
      return mrkdwn('home-next-plan', { when: step.when });
  }
}
