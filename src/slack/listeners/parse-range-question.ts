/** Reads the words after `range`: days of the coming sprint, and how many days members are off or away. */
import type { AdviceQuestion } from '../../app/advice/advice.ts';
import type { Problem } from '../../app/input-problem.ts';
import { parseAwayDays } from '../../app/planning/away-days.ts';
import { Refusal } from '../../app/refusal.ts';

type RangeQuestion = Extract<AdviceQuestion, { about: 'range' }>;

/** Words that make a sentence and change nothing. */
const FILLERS = new Set([
  'from',
  'to',
  'until',
  'till',
  'through',
  'and',
  'with',
  '-',
  '–',
  '—',
  'day',
  'days',
  'working',
]);
const AWAY = new Set(['away', 'off', 'absent']);
const DAY_LIKE = /^\d{4}-\d{1,2}-\d{1,2}$/;
const EXAMPLE = '2026-11-30 2026-12-11 6 away';

/**
 * Whether a day exists, and whether the sprint makes sense, is for the use case to say.
 *
 * @example parseRangeQuestion('2026-11-30 to 2026-12-11, 6 days away').awayDays === 6
 * @throws Refusal `bad-argument`
 */
export function parseRangeQuestion(typed: string): RangeQuestion {
  const days: string[] = [];
  let awayDays: number | undefined;
  let amount: string | undefined;
  for (const word of words(typed)) {
    if (AWAY.has(word)) {
      if (amount === undefined) throw unread({ code: 'away-without-number', typed: word });
      awayDays = (awayDays ?? 0) + awayDaysIn(amount);
      amount = undefined;
    } else if (amount !== undefined) {
      throw loneAmount(amount);
    } else if (DAY_LIKE.test(word)) {
      days.push(word);
    } else {
      amount = word;
    }
  }
  if (amount !== undefined) throw loneAmount(amount);
  if (days.length > 2) throw unread({ code: 'too-many-days' });
  const [startsOn, endsOn] = days;
  return {
    about: 'range',
    ...(startsOn === undefined ? {} : { startsOn }),
    ...(endsOn === undefined ? {} : { endsOn }),
    ...(awayDays === undefined ? {} : { awayDays }),
  };
}

function words(typed: string): string[] {
  return typed
    .toLowerCase()
    .split(/\s+/)
    .map((word) => word.replace(/[,;.:]{1,3}$/, ''))
    .filter((word) => word !== '' && !FILLERS.has(word));
}

function awayDaysIn(amount: string): number {
  const days = parseAwayDays(amount);
  if (days === undefined) throw unread({ code: 'not-away-days', typed: amount });
  return days;
}

/** A word that is neither a day nor followed by “away”. */
function loneAmount(word: string): Refusal {
  return parseAwayDays(word) === undefined
    ? unread({ code: 'lone-word', typed: word })
    : unread({ code: 'lone-number', typed: word });
}

function unread(problem: Problem): Refusal {
  return new Refusal('bad-argument', { command: 'range', problem, example: EXAMPLE });
}
