/** Reads a plan as it was typed, or says everything that is wrong with it. */

import { daysBetween, isDay } from '../../sprint/calendar.ts';
import { parsePoints } from '../../sprint/points.ts';
import { instantOf, isTimeOfDay } from '../clock/local-time.ts';
import { sprintDays } from '../clock/sprint-clock.ts';
import { whyTooFar } from '../far-day.ts';
import type { InputProblem, Problem } from '../input-problem.ts';
import type { Reading } from '../ports/store.ts';
import { refuseIfAny } from '../refusal.ts';
import { type Candidate, guestProblems, plannedGuests } from '../team/guests.ts';
import { type Membership, todayOf } from '../team/place.ts';
import { activeMembers, type Member, type Team } from '../team/team.ts';
import { whyNotAwayDays } from './away-days.ts';
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
  /** Who will work in the sprint: the members and its guests. */
  readonly workers: readonly Member[];
}

/** The ids of the guests in a plan as it was typed. */
export function guestIdsIn({ guests = '' }: Pick<PlanInput, 'guests'>): string[] {
  // Words in lower case take the place of an id that was erased.
  return guests.split(' ').filter((word) => /^[A-Z0-9]+$/.test(word));
}

/** Reads the plan or refuses with every problem at once. @param guests what the platform says of the sprint's guests */
export async function readPlan(
  read: Reading,
  membership: Membership,
  raw: PlanInput,
  now: Date,
  guests: readonly Candidate[],
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
  problems.push(...goalProblems(input.goal));
  const span = await readSpan(read, team, input, now);
  problems.push(...span.problems);
  problems.push(...guestProblems(guests, members).map((problem) => ({ field: 'guests', problem })));
  const workers = [...activeMembers(members), ...plannedGuests(guests, members)];
  const { awayDays, problems: ofAwayDays } = readAwayDays(input.awayDays, span.workingDays, workers.length);
  problems.push(...ofAwayDays);
  const { cards, bad } = parseCards(input.cards, workers);
  check(bad.length === 0, 'cards', { code: 'bad-lines', lines: bad });
  check(cards.length <= MAX_CARDS, 'cards', {
    code: 'too-many-cards',
    most: MAX_CARDS,
    cards: cards.length,
  });
  refuseIfAny(problems);
  return { input, cards, awayDays, closesAtInstant: span.closesAtInstant, workers };
}

/** Days off and away of all members together, as typed; undefined: nobody names any. */
export function readAwayDays(
  typed: string,
  workingDays: number,
  members: number,
): { readonly awayDays: number | undefined; readonly problems: InputProblem[] } {
  if (typed.trim() === '') return { awayDays: undefined, problems: [] };
  const awayDays = parsePoints(typed) ?? Number.NaN;
  const problem = whyNotAwayDays(awayDays, workingDays, members);
  return { awayDays, problems: problem === undefined ? [] : [{ field: 'awayDays', problem }] };
}

export function goalProblems(goal: string): InputProblem[] {
  if (goal.length <= MAX_GOAL_LENGTH) return [];
  return [{ field: 'goal', problem: { code: 'goal-length', most: MAX_GOAL_LENGTH } }];
}

/**
 * The days and the closing time of a sprint, as typed.
 *
 * @param sprintId of the sprint whose days these are, when it is there already
 */
export async function readSpan(
  read: Reading,
  team: Team,
  { startsOn, endsOn, closesAt }: Pick<PlanInput, 'startsOn' | 'endsOn' | 'closesAt'>,
  now: Date,
  sprintId?: string,
): Promise<{
  readonly problems: InputProblem[];
  /** While the days are not known, so many may be off or away as one likes. */
  readonly workingDays: number;
  readonly closesAtInstant: Date;
}> {
  const problems: InputProblem[] = [];
  const check = (fine: boolean, field: keyof PlanInput, problem: Problem): void => {
    if (!fine) problems.push({ field, problem });
  };
  check(isDay(startsOn), 'startsOn', { code: 'no-first-day' });
  check(isDay(endsOn), 'endsOn', { code: 'no-last-day' });
  check(isTimeOfDay(closesAt), 'closesAt', { code: 'no-time', example: '17:00' });
  if (problems.length > 0) return { problems, workingDays: Number.POSITIVE_INFINITY, closesAtInstant: now };
  const far = whyTooFar(startsOn, todayOf(team, now));
  if (far) problems.push({ field: 'startsOn', problem: far });
  const closesAtInstant = instantOf(endsOn, closesAt, team.timeZone);
  const days = daysBetween(startsOn, endsOn) + 1;
  check(days >= 1, 'endsOn', { code: 'days-reversed', first: startsOn, last: endsOn });
  check(days <= MAX_SPRINT_DAYS, 'endsOn', { code: 'sprint-too-long', most: MAX_SPRINT_DAYS, days });
  const isSpan = problems.length === 0;
  const isPast = days >= 1 && closesAtInstant <= now;
  check(!isPast, 'endsOn', { code: 'sprint-over-already', last: endsOn, time: closesAt });
  const overlap = (await read.openSprintsOf(team.id)).find(
    (other) => other.id !== sprintId && other.startsOn <= endsOn && startsOn <= other.endsOn,
  );
  if (overlap) {
    const { name: sprint, startsOn: first, endsOn: last } = overlap;
    // Whose first day is given already is at odds with the other at its end.
    const field = sprintId === undefined ? 'startsOn' : 'endsOn';
    check(false, field, { code: sprintId === undefined ? 'overlap' : 'overlap-at-end', sprint, first, last });
  }
  const workingDays = isSpan ? sprintDays(team, { startsOn, endsOn }).length : Number.POSITIVE_INFINITY;
  return { problems, workingDays, closesAtInstant };
}
