/** What is wrong with what was said of a body of work. Pure; `import/body-lines.ts` asks the same of a file. */
import type { InputProblem } from '../input-problem.ts';
import {
  areSharesTooLarge,
  BODY_NAME_MAX_LENGTH,
  type BodyOfWork,
  isAmountOfWork,
  isSameName,
  MAX_BACKLOG_POINTS,
  MOST_BODIES,
  sharesOf,
} from './body-of-work.ts';

/** @param turn its place among those still to do, from 1 */
export function turnProblems(turn: number | undefined): InputProblem[] {
  const isTurn = turn === undefined || (Number.isInteger(turn) && turn >= 1 && turn <= MOST_BODIES);
  return isTurn ? [] : [{ field: 'turn', problem: { code: 'body-turn', most: MOST_BODIES } }];
}

/** @param others of the team, still to do */
export function bodyProblems(body: BodyOfWork, others: readonly BodyOfWork[]): InputProblem[] {
  const { name, leftPoints, sharePercent } = body;
  const problems: InputProblem[] = [];
  if (!/\p{L}/u.test(name) || name.length > BODY_NAME_MAX_LENGTH) {
    problems.push({ field: 'name', problem: { code: 'body-name', most: BODY_NAME_MAX_LENGTH } });
  } else if (others.some((other) => isSameName(other.name, name))) {
    problems.push({ field: 'name', problem: { code: 'body-name-taken' } });
  } else if (others.length >= MOST_BODIES) {
    problems.push({ field: 'name', problem: { code: 'bodies-many', most: MOST_BODIES } });
  }
  if (!isAmountOfWork(leftPoints) || leftPoints === 0) {
    problems.push({ field: 'backlogPoints', problem: { code: 'backlog-points', most: MAX_BACKLOG_POINTS } });
  }
  problems.push(...growthProblems(body));
  if (sharePercent !== undefined && !(sharePercent >= 1 && sharePercent < 100)) {
    problems.push({ field: 'sharePercent', problem: { code: 'share-percent' } });
  } else if (areSharesTooLarge([...others, body])) {
    const share = sharesOf([...others, body]) / 100;
    problems.push({ field: 'sharePercent', problem: { code: 'body-shares', share } });
  }
  return problems;
}

/** What is wrong with how much a sprint adds to the work, at the least and at the most. */
export function growthProblems({
  growthPoints: least = 0,
  growthMostPoints: largest = least,
}: Partial<Pick<BodyOfWork, 'growthPoints' | 'growthMostPoints'>>): InputProblem[] {
  const field = 'growthPoints';
  if (!isAmountOfWork(least) || !isAmountOfWork(largest)) {
    return [{ field, problem: { code: 'growth-points', most: MAX_BACKLOG_POINTS } }];
  }
  if (largest >= least) return [];
  return [{ field, problem: { code: 'growth-reversed', least: largest, most: least } }];
}
