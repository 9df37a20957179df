/** Reads a plan as it was typed, or says everything that is wrong with it. */
import { daysBetween, formatDay, isDay } from '../../sprint/calendar.ts';
import { instantOf, isTimeOfDay } from '../clock/local-time.ts';
import { promptDays } from '../clock/sprint-clock.ts';
import type { Reading } from '../ports/store.ts';
import type { InputProblem } from '../refusal.ts';
import { refuseIfAny } from '../refusal.ts';
import type { Membership } from '../team/place.ts';
import { parseAwayDays, whyNotAwayDays } from './away-days.ts';
import type { PastedCard } from './card-paste.ts';
import { MAX_CARDS, parseCards } from './card-paste.ts';
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
  const check = (fine: boolean, field: keyof PlanInput, message: string): void => {
    if (!fine) problems.push({ field, message });
  };
  const nameIsFine = input.name.length > 0 && input.name.length <= MAX_NAME_LENGTH;
  check(nameIsFine, 'name', `Give the sprint a name of 1 to ${MAX_NAME_LENGTH} characters.`);
  check(input.goal.length <= MAX_GOAL_LENGTH, 'goal', `Keep the goal within ${MAX_GOAL_LENGTH} characters.`);
  check(isDay(input.startsOn), 'startsOn', 'Choose a first day.');
  check(isDay(input.endsOn), 'endsOn', 'Choose a last day.');
  check(isTimeOfDay(input.closesAt), 'closesAt', 'Write the time as hours and minutes, for example 17:00.');
  const datesAreRead = isDay(input.startsOn) && isDay(input.endsOn) && isTimeOfDay(input.closesAt);
  const closesAtInstant = datesAreRead ? instantOf(input.endsOn, input.closesAt, team.timeZone) : now;
  // While the days are not known, so many may be off or away as one likes.
  let workingDays = Number.POSITIVE_INFINITY;
  if (datesAreRead) {
    const lengthDays = daysBetween(input.startsOn, input.endsOn) + 1;
    check(lengthDays >= 1, 'endsOn', 'The last day comes before the first day.');
    check(
      lengthDays <= MAX_SPRINT_DAYS,
      'endsOn',
      `A sprint may last ${MAX_SPRINT_DAYS} days at most; this one lasts ${lengthDays}.`,
    );
    if (lengthDays >= 1 && lengthDays <= MAX_SPRINT_DAYS) workingDays = promptDays(team, input).length;
    const isPast = lengthDays >= 1 && closesAtInstant <= now;
    check(
      !isPast,
      'endsOn',
      `The sprint would be over already: it closes on ${formatDay(input.endsOn)} at ${input.closesAt}.`,
    );
    const overlap = (await read.openSprintsOf(team.id)).find(
      (other) => other.startsOn <= input.endsOn && input.startsOn <= other.endsOn,
    );
    if (overlap) {
      const span = `${formatDay(overlap.startsOn)} to ${formatDay(overlap.endsOn)}`;
      check(
        false,
        'startsOn',
        `${overlap.name} runs from ${span}. Begin after it, or close or cancel it first.`,
      );
    }
  }
  const active = members.filter(({ isActive }) => isActive);
  const awayDays = input.awayDays === '' ? undefined : (parseAwayDays(input.awayDays) ?? Number.NaN);
  if (awayDays !== undefined) {
    const problem = whyNotAwayDays(awayDays, workingDays, active.length);
    if (problem !== undefined) problems.push({ field: 'awayDays', message: problem });
  }
  const { cards, bad } = parseCards(input.cards, active);
  if (bad.length > 0) problems.push({ field: 'cards', message: badLinesMessage(bad) });
  check(
    cards.length <= MAX_CARDS,
    'cards',
    `A sprint holds ${MAX_CARDS} cards at most; these are ${cards.length}.`,
  );
  refuseIfAny(problems);
  return { input, cards, awayDays, closesAtInstant };
}

function badLinesMessage(bad: readonly { lineNumber: number; problem: string }[]): string {
  const shown = bad.slice(0, 8).map(({ lineNumber, problem }) => `Line ${lineNumber}: ${problem}`);
  const more = bad.length - shown.length;
  if (more > 0)
    shown.push(
      `And ${more} more ${more === 1 ? 'line' : 'lines'}: ${bad
        .slice(8)
        .map(({ lineNumber }) => lineNumber)
        .join(', ')}.`,
    );
  return shown.join(' ');
}
