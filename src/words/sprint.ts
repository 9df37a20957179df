/** A sprint's days and times in words, and closed sprints in a list of choices. */
import { dayAt, timeAt } from '../app/clock/local-time.ts';
import type { SprintHeading } from '../app/team/team.ts';
import { Markup, say } from './say.ts';
import { shortened } from './typed-text.ts';

/** `Mon 2 Nov to Fri 13 Nov` */
export function sprintSpan({
  startsOn,
  endsOn,
}: Pick<SprintHeading['sprint'], 'startsOn' | 'endsOn'>): string {
  return say('sprint-span', { days: startsOn === endsOn ? 'single' : 'several', from: startsOn, to: endsOn });
}

/** When the sprint closes by itself, in the team's zone: `Fri 13 Nov at 17:00`. Moves when it is reopened. */
export function closingTime({ sprint, team }: SprintHeading): string {
  return teamTime(sprint.closesAtInstant, team.timeZone);
}

/** An instant in the team's zone: `Fri 13 Nov at 17:00`. */
export function teamTime(instant: Date, timeZone: string): string {
  return say('sprint-closing-time', at(instant, timeZone));
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

/** The platform's limit for the text of an option (docs.slack.dev/reference/block-kit/composition-objects/option-object). */
const OPTION_MAX_LENGTH = 75;

/**
 * A closed sprint in a list of choices, its name cut so that what is said of it can always be seen.
 *
 * @param said at most 30 characters
 */
export function pastSprintChoice(
  { name, endsOn }: { readonly name: string; readonly endsOn: string },
  said: string,
  id: 'past-sprint-choice' | 'past-sprint-first-choice' = 'past-sprint-choice',
): string {
  const room = OPTION_MAX_LENGTH - say(id, { sprint: '', endsOn, said }).length;
  return say(id, { sprint: shortened(name, room), endsOn, said });
}
