/** A sprint's days and times in words. */
import { dayAt, timeAt } from '../app/clock/local-time.ts';
import type { SprintHeading } from '../app/posting/message-content.ts';
import { Markup, say } from './say.ts';

/** `Mon 2 Nov to Fri 13 Nov` */
export function sprintSpan({
  startsOn,
  endsOn,
}: Pick<SprintHeading['sprint'], 'startsOn' | 'endsOn'>): string {
  return say('sprint-span', { days: startsOn === endsOn ? 'single' : 'several', from: startsOn, to: endsOn });
}

/** When the sprint closes by itself, in the team's zone: `Fri 13 Nov at 17:00`. Moves when it is reopened. */
export function closingTime({ sprint, team }: SprintHeading): string {
  return say('sprint-closing-time', at(sprint.closesAtInstant, team.timeZone));
}

/** An instant that each reader sees in their own zone, and in the team's zone where that can't be. */
export function momentOf(instant: Date, timeZone: string): Markup {
  const there = say('sprint-moment', { ...at(instant, timeZone), timeZone });
  const seconds = Math.floor(instant.getTime() / 1000);
  return new Markup(`<!date^${seconds}^${say('sprint-moment-pattern')}|${there}>`);
}

function at(instant: Date, timeZone: string): { day: string; time: string } {
  return { day: dayAt(instant, timeZone), time: timeAt(instant, timeZone) };
}
