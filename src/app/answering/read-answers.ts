/** Reads what was typed into an answer, and says what is wrong with it. */
import type { AnswerInput, AnswerProblem } from '../../sprint/check-answer.ts';
import { MAX_POINTS, parsePoints } from '../../sprint/points.ts';
import { cardName } from '../cards/card-line.ts';
import type { InputProblem, Problem } from '../input-problem.ts';
import { Refusal } from '../refusal.ts';
import type { SprintCard, SprintRecords } from '../team/team.ts';

const MAX_NOTE_LENGTH = 500;

const NOT_POINTS = { code: 'not-points', most: MAX_POINTS } as const;

/** What was typed about one card; `''` is "not given". A card with nothing given is left as it is. */
export interface TypedAnswer {
  readonly cardId: string;
  readonly worked: string;
  readonly left: string;
  readonly surprise: string;
  readonly note: string;
  /** On what the card is blocked. */
  readonly blocked?: string;
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
    if (leftPoints === undefined) problems.push({ field: `left:${card.id}`, problem: NOT_POINTS });
    if (typed.worked.trim() !== '' && workedPoints === undefined)
      problems.push({ field: `worked:${card.id}`, problem: NOT_POINTS });
    if (typed.surprise.trim() !== '' && surprisePoints === undefined)
      problems.push({ field: `surprise:${card.id}`, problem: NOT_POINTS });
    if (typed.note.length > MAX_NOTE_LENGTH) {
      problems.push({
        field: `note:${card.id}`,
        problem: { code: 'note-length', most: MAX_NOTE_LENGTH },
      });
    }
    if (problems.length === before && leftPoints !== undefined) {
      read.push({ card, typed, input: { leftPoints, workedPoints, surprisePoints } });
    }
  }
  return { read, problems };
}

/** What is wrong with an answer, beside the field that it is about. */
export function inputProblem(problem: AnswerProblem, card: SprintCard): InputProblem {
  const of = { card: cardName(card), number: String(card.number) };
  switch (problem.code) {
    case 'not-an-owner':
      return {
        field: `left:${card.id}`,
        problem: { code: card.ownerIds.length === 0 ? 'nobodys-card' : 'not-your-card', ...of },
      };
    case 'card-dropped':
      return {
        field: `left:${card.id}`,
        problem: { code: 'card-dropped', card: of.card, day: problem.on },
      };
    case 'card-finished':
      return { field: `left:${card.id}`, problem: { code: 'card-finished', ...of, day: problem.on } };
    case 'surprise-out-of-range':
      return { field: `surprise:${card.id}`, problem: surpriseProblem(problem) };
    case 'growth-unexplained':
      return {
        field: `surprise:${card.id}`,
        problem: { code: 'growth-unexplained', growth: problem.growthPoints },
      };
    default:
      return { field: `${problem.code.replace('bad-', '')}:${card.id}`, problem: NOT_POINTS };
  }
}

function surpriseProblem(problem: {
  growthPoints: number;
  leastPoints: number;
  mostPoints: number;
}): Problem {
  const { growthPoints, leastPoints, mostPoints } = problem;
  if (growthPoints > 0) return { code: 'surprise-of-growth', growth: growthPoints, most: mostPoints };
  if (growthPoints === 0) return { code: 'surprise-without-growth' };
  if (leastPoints === 0) return { code: 'surprise-without-any' };
  return { code: 'surprise-of-shrinking', shrunk: -growthPoints, least: leastPoints };
}
