/** Reads what was typed into an answer, and says in words what is wrong with it. */
import { formatDay } from '../../sprint/calendar.ts';
import type { AnswerInput, AnswerProblem } from '../../sprint/check-answer.ts';
import { formatPoints, formatPointsWithUnit, MAX_POINTS, parsePoints } from '../../sprint/points.ts';
import { cardName } from '../cards/card-line.ts';
import type { InputProblem } from '../refusal.ts';
import { Refusal } from '../refusal.ts';
import type { SprintCard, SprintRecords } from '../team/team.ts';

const MAX_NOTE_LENGTH = 500;

const AMOUNT = `Write points in halves from 0 to ${MAX_POINTS}, for example 3 or 0.5.`;

/** What was typed about one card; `''` is "not given". A card with nothing given is left as it is. */
export interface TypedAnswer {
  readonly cardId: string;
  readonly worked: string;
  readonly left: string;
  readonly surprise: string;
  readonly note: string;
}

/** An answer that could be read. */
export interface ReadAnswer {
  readonly card: SprintCard;
  readonly typed: TypedAnswer;
  readonly input: AnswerInput;
}

function readChange(text: string): number | undefined {
  const match = /^([-−+]?)\s*(\S+)$/.exec(text.trim());
  const points = match ? parsePoints(match[2] as string) : undefined;
  return points === undefined ? undefined : match?.[1] === '-' || match?.[1] === '−' ? 0 - points : points;
}

/** Reads the typed numbers; every slip becomes a problem of its field. */
export function readAnswers(
  records: SprintRecords,
  answers: readonly TypedAnswer[],
): { read: ReadAnswer[]; problems: InputProblem[] } {
  const problems: InputProblem[] = [];
  const read: ReadAnswer[] = [];
  for (const typed of answers) {
    const card = records.cards.find(({ id }) => id === typed.cardId);
    if (!card) throw new Refusal('sprint-changed', {});
    const leftPoints = parsePoints(typed.left);
    const workedPoints = typed.worked.trim() === '' ? undefined : parsePoints(typed.worked);
    const surprisePoints = typed.surprise.trim() === '' ? undefined : readChange(typed.surprise);
    const before = problems.length;
    if (leftPoints === undefined) problems.push({ field: `left:${card.id}`, message: AMOUNT });
    if (typed.worked.trim() !== '' && workedPoints === undefined)
      problems.push({ field: `worked:${card.id}`, message: AMOUNT });
    if (typed.surprise.trim() !== '' && surprisePoints === undefined)
      problems.push({ field: `surprise:${card.id}`, message: AMOUNT });
    if (typed.note.length > MAX_NOTE_LENGTH) {
      problems.push({
        field: `note:${card.id}`,
        message: `Keep the note within ${MAX_NOTE_LENGTH} characters.`,
      });
    }
    if (problems.length === before && leftPoints !== undefined) {
      read.push({ card, typed, input: { leftPoints, workedPoints, surprisePoints } });
    }
  }
  return { read, problems };
}

/** What is wrong with an answer, beside the field that it is about. */
export function problemInWords(problem: AnswerProblem, card: SprintCard): InputProblem {
  const name = cardName(card);
  switch (problem.code) {
    case 'not-an-owner':
      return {
        field: `left:${card.id}`,
        message: `${name} is not one of your cards. Its owners answer for it; take a share in it with “take ${card.number}” if you work on it too.`,
      };
    case 'card-dropped':
      return {
        field: `left:${card.id}`,
        message: `${name} was dropped on ${formatDay(problem.on)}, so nothing can be left on it.`,
      };
    case 'card-finished':
      return {
        field: `left:${card.id}`,
        message: `${name} was finished on ${formatDay(problem.on)}. If it is not done after all, reopen it first with “reopen ${card.number}”.`,
      };
    case 'surprise-out-of-range':
      return { field: `surprise:${card.id}`, message: surpriseProblem(problem) };
    case 'growth-unexplained':
      return {
        field: `surprise:${card.id}`,
        message: `The card grew by ${formatPointsWithUnit(problem.growthPoints)}: say how many of them were surprise work.`,
      };
    default:
      return {
        field: `${problem.code.replace('bad-', '')}:${card.id}`,
        message: AMOUNT,
      };
  }
}

function surpriseProblem(problem: { growthPoints: number; leastPoints: number; mostPoints: number }): string {
  const { growthPoints, leastPoints, mostPoints } = problem;
  if (growthPoints > 0) {
    return `The card grew by ${formatPointsWithUnit(growthPoints)}, so surprise work is from 0 to ${formatPoints(mostPoints)}.`;
  }
  if (growthPoints === 0) return 'The card did not grow, so no surprise work came up: leave this at 0.';
  return leastPoints === 0
    ? 'The card shrank and holds no surprise work that could have fallen away: leave this at 0.'
    : `The card shrank by ${formatPointsWithUnit(-growthPoints)}, so surprise work that was not needed is from ${formatPoints(leastPoints)} to 0.`;
}
