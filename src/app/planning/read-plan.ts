/** Reads a plan as it was typed, or says everything that is wrong with it. */

import { daysBetween, isDay } from '../../sprint/calendar.ts';
import { instantOf, isTimeOfDay } from '../clock/local-time.ts';
import { sprintDays } from '../clock/sprint-clock.ts';
import type { InputProblem, Problem } from '../input-problem.ts';
import type { Reading } from '../ports/store.ts';
import { refuseIfAny } from '../refusal.ts';
import type { Membership } from '../team/place.ts';
import { activeMembers } from '../team/team.ts';
import { parseAwayDays, whyNotAwayDays } from './away-days.ts';
import { MAX_CARDS, type PastedCard, parseCards } from './card-paste.ts';
import type { PlanInput } from './plan-input.ts';

/** A sprint longer than this is surely a typing error. */
export const MAX_SPRINT_DAYS = 92;
const MAX_NAME_LENGTH = 80;
const MAX_GOAL_LENGTH = 500;

export interface ReadPlan {
  readonly input: PlanInput;
  readonly cards: readonly PastedCard[];
  /** Undefined: not known. */
  readonly awayDays: number | undefined;
  readonly closesAtInstant: Date;
}

/** Reads the plan or refuses with every problem at once. */
export async function readPlan(
  read: Reading,
  membership: Membership,
  raw: PlanInput,
  now: Date,
): Promise<ReadPlan> {
  const { team, members } = membership;
  const input = {
    ...raw,
    name: raw.name.trim().replace(/\s+/g, ' '),
    goal: raw.goal.trim(),
    awayDays: raw.awayDays.trim(),
  };
  const problems: InputProblem[] = [];
  const check = (fine: boolean, field: keyof PlanInput, problem: Problem): void => {
    if (!fine) problems.push({ field, problem });
  };
  const nameIsFine = input.name.length > 0 && input.name.length <= MAX_NAME_LENGTH;
  check(nameIsFine, 'name', { code: 'sprint-name', most: MAX_NAME_LENGTH });
  check(input.goal.length <= MAX_GOAL_LENGTH, 'goal', {
    code: 'goal-length',
    most: MAX_GOAL_LENGTH,
  });
  check(isDay(input.startsOn), 'startsOn', { code: 'no-first-day' });
  check(isDay(input.endsOn), 'endsOn', { code: 'no-last-day' });
  check(isTimeOfDay(input.closesAt), 'closesAt', { code: 'no-time', example: '17:00' });
  const datesAreRead = isDay(input.startsOn) && isDay(input.endsOn) && isTimeOfDay(input.closesAt);
  const closesAtInstant = datesAreRead ? instantOf(input.endsOn, input.closesAt, team.timeZone) : now;
  // While the days are not known, so many may be off or away as one likes.
  let workingDays = Number.POSITIVE_INFINITY;
  if (datesAreRead) {
    const lengthDays = daysBetween(input.startsOn, input.endsOn) + 1;
    check(lengthDays >= 1, 'endsOn', {
      code: 'days-reversed',
      first: input.startsOn,
      last: input.endsOn,
    });
    check(lengthDays <= MAX_SPRINT_DAYS, 'endsOn', {
      code: 'sprint-too-long',
      most: MAX_SPRINT_DAYS,
      days: lengthDays,
    });
    if (lengthDays >= 1 && lengthDays <= MAX_SPRINT_DAYS) workingDays = sprintDays(team, input).length;
    const isPast = lengthDays >= 1 && closesAtInstant <= now;
    check(!isPast, 'endsOn', {
      code: 'sprint-over-already',
      last: input.endsOn,
      time: input.closesAt,
    });
    const overlap = (await read.openSprintsOf(team.id)).find(
      (other) => other.startsOn <= input.endsOn && input.startsOn <= other.endsOn,
    );
    if (overlap) {
      const { name: sprint, startsOn: first, endsOn: last } = overlap;
      check(false, 'startsOn', { code: 'overlap', sprint, first, last });
    }
  }
  const active = activeMembers(members);
  const awayDays = input.awayDays === '' ? undefined : (parseAwayDays(input.awayDays) ?? Number.NaN);
  if (awayDays !== undefined) {
    const problem = whyNotAwayDays(awayDays, workingDays, active.length);
    if (problem !== undefined) problems.push({ field: 'awayDays', problem });
  }
  const { cards, bad } = parseCards(input.cards, active);
  check(bad.length === 0, 'cards', { code: 'bad-lines', lines: bad });
  check(cards.length <= MAX_CARDS, 'cards', {
    code: 'too-many-cards',
    most: MAX_CARDS,
    cards: cards.length,
  });
  refuseIfAny(problems);
  return { input, cards, awayDays, closesAtInstant };
}
