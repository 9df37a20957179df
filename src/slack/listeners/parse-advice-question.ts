/** Reads the planning questions that come with a command's words, or from the forecast's form. */
import type { AdviceQuestion } from '../../app/advice/advice.ts';
import type { InputProblem, Problem } from '../../app/input-problem.ts';
import { DAY_WORDS, withMonthTwice } from '../../app/read-day.ts';
import { readNumber } from '../../app/read-number.ts';
import { Refusal, refuseIfAny } from '../../app/refusal.ts';
import { parsePoints } from '../../sprint/points.ts';
import { FORECAST_FIELDS } from '../views/advice-forms.ts';

type ForecastQuestion = Extract<AdviceQuestion, { about: 'forecast' }>;

/** Reads `spaced` text only, as the next one does: where spaces could be many, so could be the ways to share them out. */
const GROWING = /(?:^| )(?:and )?(?:growing|grows|growth|grow|\+) ?(?:of|by)?(?: |(?=\d)|$)/i;
/** What may follow an amount: `points left`, `a sprint`. */
const UNIT =
  / ?(?:points?|pts?)? ?(?:left|of work)? ?(?:(?:a|an|per|each|every|with each) sprint)? ?[,;.]? ?$/i;
const BY = '(?:^| )(?<!(?:grow(?:ing|s|th)?|[+]) ?)(?:by|until|till|before)';
/** The day by which it is wanted. Elsewhere `15/1` may be points; here it is a day. */
const BY_DAY = new RegExp(`${BY} (${DAY_WORDS}|\\d{1,2}/\\d{1,2}(?:/\\d{4})?)[,;.]?(?= |$)`, 'gi');
/** What somebody asks who names a day alone. */
const HOW_MUCH = /^ ?how (?:much|many(?: points)?) ?$/i;
/** What stands there and is no day. */
const BY_NO_DAY = new RegExp(`${BY} (.*?)[,;.]?$`, 'i');
/** How much of the sprints goes to it. */
const SHARE =
  /(?:^| )(?:using|with|at) (\d{1,3}(?:\.\d)?) ?%(?: of (?:the|our) (?:velocity|time|sprints))?[,;.]?(?= |$)/gi;
/** Between the two ends of a growth. */
const GROWTH_TO = /(?<=\d) ?(?:-|–|to) ?(?=\d)/;
const FORECAST_EXAMPLE = '120 growing 5';
const BY_DAY_EXAMPLE = '120 by 31 March';
/** A name before points: they want to keep it, or to say what is left of it now. */
const NAME_AND_POINTS = /^\p{L}.* \d+$/u;

/**
 * @example parseForecastQuestion('120 points, growing by 5 a sprint').growthPoints === 5
 * @example parseForecastQuestion('120 by 31 March').byDay === '31 March'
 * @example parseForecastQuestion('120 using 60%').sharePercent === 60
 * @example parseForecastQuestion('by 31 March').backlogPoints === undefined
 * @throws Refusal `bad-argument`
 */
export function parseForecastQuestion(typed: string): ForecastQuestion {
  const days = [...spaced(typed).matchAll(BY_DAY)].map(([, day]) => day);
  if (days.length > 1) throw unreadForecast({ code: 'by-twice' });
  const [byDay] = days;
  const shares = [...spaced(typed).matchAll(SHARE)].map(([, percent]) => Number(percent));
  if (shares.length > 1) throw unreadForecast({ code: 'share-twice' });
  const [sharePercent] = shares;
  const [work = '', growth, ...more] = spaced(typed).replace(BY_DAY, '').replace(SHARE, '').split(GROWING);
  if (more.length > 0) throw unreadForecast({ code: 'growth-twice' });
  const noDay = BY_NO_DAY.exec(work)?.[1];
  if (noDay !== undefined) throw unreadForecast({ code: 'by-not-a-day', typed: noDay }, BY_DAY_EXAMPLE);
  const asksHowMuch = byDay !== undefined && (work.trim() === '' || HOW_MUCH.test(work));
  return {
    about: 'forecast',
    ...(asksHowMuch ? {} : { backlogPoints: amountIn(work, { code: 'no-backlog-or-day' }) }),
    ...(growth === undefined ? {} : growthIn(growth)),
    ...(sharePercent === undefined ? {} : { sharePercent }),
    ...(byDay === undefined ? {} : { byDay }),
  };
}

/** With one space between words. */
function spaced(text: string): string {
  return text.replace(/\s+/g, ' ');
}

/** `5`, `2 to 8` or `2-8` */
function growthIn(words: string): Pick<ForecastQuestion, 'growthPoints' | 'growthMostPoints'> {
  const [least = '', most, ...more] = words.split(GROWTH_TO);
  const growthPoints = amountIn(least, { code: 'no-growth' });
  if (most === undefined || more.length > 0) return { growthPoints: amountIn(words, { code: 'no-growth' }) };
  return { growthPoints, growthMostPoints: amountIn(most, { code: 'no-growth' }) };
}

function amountIn(words: string, whenEmpty: Problem): number {
  const bare = words.replace(UNIT, '').trim();
  if (bare === '') throw unreadForecast(whenEmpty);
  const read = readNumber(bare);
  if ('problem' in read) {
    throw unreadForecast(read.problem, NAME_AND_POINTS.test(bare) ? `keep ${bare}` : FORECAST_EXAMPLE);
  }
  return read.value;
}

function unreadForecast(problem: Problem, example = FORECAST_EXAMPLE): Refusal {
  return new Refusal('bad-argument', { command: 'forecast', problem, example });
}

/**
 * The same from the form's fields; growth that is left empty is to be measured. What is left empty of the work and the day isn't
 * asked about.
 *
 * @throws Refusal `bad-input`
 */
export function readForecastFields(
  backlogText: string,
  growthText: string,
  shareText: string,
  byDay: string,
): ForecastQuestion {
  const backlog = backlogText.trim() === '' ? undefined : readNumber(spaced(backlogText).replace(UNIT, ''));
  const growths = growthText.trim() === '' ? [] : spaced(growthText).split(GROWTH_TO).slice(0, 2);
  const [growth, growthMost] = growths.map((text) => readNumber(text.replace(UNIT, '').trim()));
  const problems: InputProblem[] = [];
  if (backlog && 'problem' in backlog) {
    problems.push({ field: FORECAST_FIELDS.backlogPoints, problem: backlog.problem });
  }
  for (const read of [growth, growthMost]) {
    if (read && 'problem' in read) {
      problems.push({ field: FORECAST_FIELDS.growthPoints, problem: read.problem });
      break;
    }
  }
  const share = shareText.trim() === '' ? undefined : readNumber(shareText.replace('%', '').trim());
  if (share && 'problem' in share) {
    problems.push({ field: FORECAST_FIELDS.sharePercent, problem: share.problem });
  }
  refuseIfAny(problems);
  const amount = (read: ReturnType<typeof readNumber>): number => ('value' in read ? read.value : Number.NaN);
  return {
    about: 'forecast',
    ...(backlog ? { backlogPoints: amount(backlog) } : {}),
    ...(growth ? { growthPoints: amount(growth) } : {}),
    ...(growthMost ? { growthMostPoints: amount(growthMost) } : {}),
    ...(share ? { sharePercent: amount(share) } : {}),
    ...(byDay === '' ? {} : { byDay }),
  };
}

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
  'at',
  'for',
  'of',
  'point',
  'points',
  'pt',
  'pts',
]);
const AWAY = new Set(['away', 'off', 'absent']);
const DAYS = new RegExp(`(?<= |^)(?:${DAY_WORDS})(?=[ ,;.:]|$)`, 'g');
const RANGE_EXAMPLE = '30 Nov - 11 Dec, 6 away';

/**
 * A number that isn't followed by “away” is a commitment. Days stay as they were typed: whether one exists, and whether the sprint makes sense, is for the use case to say.
 *
 * @example parseRangeQuestion('30 Nov to 11 Dec, 6 days away').endsOn === '11 dec'
 * @example parseRangeQuestion('20 points, 6 away').points === 20
 * @throws Refusal `bad-argument`
 */
export function parseRangeQuestion(typed: string): RangeQuestion {
  const lower = withMonthTwice(spaced(typed.toLowerCase()));
  const days = lower.match(DAYS) ?? [];
  let awayDays: number | undefined;
  let points: number | undefined;
  let amount: string | undefined;
  const takePoints = (typed: string) => {
    if (points !== undefined) throw unreadRange({ code: 'commitment-twice' });
    points = parsePoints(typed);
    if (points === undefined) throw unreadRange({ code: 'lone-word', typed });
  };
  for (const word of words(lower.replace(DAYS, ' '))) {
    if (AWAY.has(word)) {
      if (amount === undefined) throw unreadRange({ code: 'away-without-number', typed: word });
      awayDays = (awayDays ?? 0) + awayDaysIn(amount);
      amount = undefined;
    } else {
      if (amount !== undefined) takePoints(amount);
      amount = word;
    }
  }
  if (amount !== undefined) takePoints(amount);
  if (days.length > 2) throw unreadRange({ code: 'too-many-days' });
  const [startsOn, endsOn] = days;
  return {
    about: 'range',
    ...(startsOn === undefined ? {} : { startsOn }),
    ...(endsOn === undefined ? {} : { endsOn }),
    ...(awayDays === undefined ? {} : { awayDays }),
    ...(points === undefined ? {} : { points }),
  };
}

function words(typed: string): string[] {
  return typed
    .split(/\s+/)
    .map((word) => word.replace(/[,;.:]{1,3}$/, ''))
    .filter((word) => word !== '' && !FILLERS.has(word));
}

function awayDaysIn(amount: string): number {
  const days = parsePoints(amount);
  if (days === undefined) throw unreadRange({ code: 'not-away-days', typed: amount });
  return days;
}

function unreadRange(problem: Problem): Refusal {
  return new Refusal('bad-argument', { command: 'range', problem, example: RANGE_EXAMPLE });
}
