/** Checks a planning question as it came from outside: typed, in a form, or in a button that anybody may have forged. */
import { type Day, dayPlus, daysBetween } from '../../sprint/calendar.ts';
import { isAmountOfWork, MAX_BACKLOG_POINTS } from '../bodies/body-of-work.ts';
import { growthProblems } from '../bodies/body-problems.ts';
import { whyTooFar } from '../far-day.ts';
import type { InputProblem, Problem } from '../input-problem.ts';
import { whyNotAwayDays } from '../planning/away-days.ts';
import { MAX_SPRINT_DAYS } from '../planning/read-plan.ts';
import { readDay } from '../read-day.ts';
import { refuseIfAny } from '../refusal.ts';
import type { Member, Sprint, Team } from '../team/team.ts';
import type { AdviceQuestion } from './advice.ts';
import { comingSprint } from './range-advice.ts';

/** The sprint that a question about the range turned out to be for. */
interface AskedSprint {
  readonly team: Team;
  readonly members: readonly Member[];
  readonly span: Pick<Sprint, 'startsOn' | 'endsOn'>;
}

type RangeQuestion = Extract<AdviceQuestion, { about: 'range' }>;
type ForecastQuestion = Extract<AdviceQuestion, { about: 'forecast' }>;

/**
 * The question with its days, so far as they are given, read as people type them.
 *
 * @throws Refusal `bad-input`
 */
export function withDaysRead(question: RangeQuestion, today: Day): RangeQuestion {
  const { startsOn: firstTyped, endsOn: lastTyped } = question;
  // A sprint that is running may be named by its first day, but no weekday means one of before.
  const from = firstTyped && /\d/.test(firstTyped) ? dayPlus(today, 1 - MAX_SPRINT_DAYS) : today;
  const startsOn = firstTyped && readDay(firstTyped, today, from);
  const endsOn = lastTyped && readDay(lastTyped, today, startsOn);
  const problems: InputProblem[] = [];
  if (firstTyped !== undefined && !startsOn) {
    problems.push({ field: 'startsOn', problem: { code: 'not-a-day', typed: firstTyped, which: 'first' } });
  }
  if (lastTyped !== undefined && !endsOn) {
    problems.push({ field: 'endsOn', problem: { code: 'not-a-day', typed: lastTyped, which: 'last' } });
  }
  refuseIfAny(problems);
  return { ...question, ...(startsOn && { startsOn }), ...(endsOn && { endsOn }) };
}

/**
 * @param asked its sprint, whose days are days, and the team that will work in it
 * @throws Refusal `bad-input`; the field is named as in the question.
 */
export function checkRange(question: RangeQuestion, asked: AskedSprint, today: Day): void {
  const { points } = question;
  const most = MAX_BACKLOG_POINTS;
  refuseIfAny([
    ...rangeProblems(question.awayDays, asked, today),
    ...(points === undefined || (points > 0 && isAmountOfWork(points))
      ? []
      : [{ field: 'points', problem: { code: 'commitment-points', most } } as const]),
  ]);
}

function rangeProblems(
  awayDays: number | undefined,
  { team, members, span }: AskedSprint,
  today: Day,
): InputProblem[] {
  const { startsOn, endsOn } = span;
  const at = (field: 'startsOn' | 'endsOn' | 'awayDays', problem: Problem): InputProblem[] => [
    { field, problem },
  ];
  const far = whyTooFar(startsOn, today);
  if (far) return at('startsOn', far);
  const lengthDays = daysBetween(startsOn, endsOn) + 1;
  if (lengthDays < 1) {
    return at('endsOn', { code: 'days-reversed', first: startsOn, last: endsOn });
  }
  if (lengthDays > MAX_SPRINT_DAYS) {
    return at('endsOn', { code: 'sprint-too-long', most: MAX_SPRINT_DAYS, days: lengthDays });
  }
  if (endsOn < today) {
    return at('endsOn', { code: 'sprint-gone-by', last: endsOn });
  }
  if (awayDays === undefined) return [];
  const coming = comingSprint(team, members, span, awayDays);
  const problem = whyNotAwayDays(awayDays, coming.workingDays, coming.members);
  return problem === undefined ? [] : at('awayDays', problem);
}

/**
 * @param startsOn the first day of the next sprint
 * @returns the question with its day read
 * @throws Refusal `bad-input` with every problem; fields are named as in the question.
 */
export function checkForecast(question: ForecastQuestion, startsOn: Day, today: Day): ForecastQuestion {
  const { backlogPoints, sharePercent = 100, byDay: typed } = question;
  const problems: InputProblem[] = [];
  if (backlogPoints === undefined) {
    if (typed === undefined)
      problems.push({ field: 'backlogPoints', problem: { code: 'no-backlog-or-day' } });
  } else if (!isAmountOfWork(backlogPoints) || backlogPoints === 0) {
    problems.push({ field: 'backlogPoints', problem: { code: 'backlog-points', most: MAX_BACKLOG_POINTS } });
  }
  problems.push(...growthProblems(question));
  if (!(sharePercent >= 1 && sharePercent <= 100)) {
    problems.push({ field: 'sharePercent', problem: { code: 'share-percent' } });
  }
  const byDay = typed === undefined ? undefined : readDay(typed, today);
  if (typed !== undefined && byDay === undefined) {
    problems.push({ field: 'byDay', problem: { code: 'by-not-a-day', typed } });
  } else if (byDay !== undefined && byDay < startsOn) {
    problems.push({ field: 'byDay', problem: { code: 'by-day-gone', startsOn } });
  }
  refuseIfAny(problems);
  return { ...question, byDay };
}
