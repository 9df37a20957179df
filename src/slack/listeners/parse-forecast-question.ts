/** Reads the points of a body of work, and by how many it grows with each sprint: from words or from a form. */
import type { AdviceQuestion } from '../../app/advice/advice.ts';
import type { InputProblem, Problem } from '../../app/input-problem.ts';
import { readNumber } from '../../app/read-number.ts';
import { Refusal, refuseIfAny } from '../../app/refusal.ts';
import { FORECAST_FIELDS } from '../views/forecast-form-view.ts';

type ForecastQuestion = Extract<AdviceQuestion, { about: 'forecast' }>;

/** Reads `spaced` text only, as the next one does: where spaces could be many, so could be the ways to share them out. */
const GROWING = /(?:^| )(?:and )?(?:growing|grows|growth|grow|\+) ?(?:of|by)?(?: |(?=\d)|$)/i;
/** What may follow an amount: `points left`, `a sprint`. */
const UNIT = / ?(?:points?)? ?(?:left|of work)? ?(?:(?:a|an|per|each|every|with each) sprint)? ?[,;.]? ?$/i;
const EXAMPLE = '120 growing 5';

/**
 * @example parseForecastQuestion('120 points, growing by 5 a sprint').growthPoints === 5
 * @throws Refusal `bad-argument`
 */
export function parseForecastQuestion(typed: string): ForecastQuestion {
  const [work = '', growth, ...more] = spaced(typed).split(GROWING);
  if (more.length > 0) throw unread({ code: 'growth-twice' });
  return {
    about: 'forecast',
    backlogPoints: amountIn(work, { code: 'no-backlog' }),
    growthPoints: growth === undefined ? 0 : amountIn(growth, { code: 'no-growth' }),
  };
}

/** With one space between words. */
function spaced(text: string): string {
  return text.replace(/\s+/g, ' ');
}

function amountIn(words: string, whenEmpty: Problem): number {
  const bare = words.replace(UNIT, '').trim();
  if (bare === '') throw unread(whenEmpty);
  const read = readNumber(bare);
  if ('problem' in read) throw unread(read.problem);
  return read.value;
}

function unread(problem: Problem): Refusal {
  return new Refusal('bad-argument', { command: 'forecast', problem, example: EXAMPLE });
}

/**
 * The same from the form's two fields; growth that is left empty is none.
 *
 * @throws Refusal `bad-input`
 */
export function readForecastFields(backlogText: string, growthText: string): ForecastQuestion {
  const backlog = readNumber(spaced(backlogText).replace(UNIT, ''));
  const growth = growthText.trim() === '' ? { value: 0 } : readNumber(spaced(growthText).replace(UNIT, ''));
  const problems: InputProblem[] = [];
  if ('problem' in backlog) problems.push({ field: FORECAST_FIELDS.backlogPoints, problem: backlog.problem });
  if ('problem' in growth) problems.push({ field: FORECAST_FIELDS.growthPoints, problem: growth.problem });
  refuseIfAny(problems);
  const amount = (read: typeof backlog): number => ('value' in read ? read.value : Number.NaN);
  return { about: 'forecast', backlogPoints: amount(backlog), growthPoints: amount(growth) };
}
