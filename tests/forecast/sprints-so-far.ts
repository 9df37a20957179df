/** Short ways to make sprints for the tests of the projection. Checks nothing. */
import fc from 'fast-check';
import type { SprintSoFar } from '../../src/forecast/sprint-so-far.ts';

export function soFar(cardPoints: number, finishedPoints: number, underwayPoints = 0): SprintSoFar {
  return { cardPoints, finishedPoints, underwayPoints };
}

/** Any sprint of up to 50 points in halves, with parts of it finished and underway. */
export const anySoFar = fc
  .tuple(
    fc.integer({ min: 0, max: 100 }),
    fc.double({ min: 0, max: 1, noNaN: true }),
    fc.double({ min: 0, max: 1, noNaN: true }),
  )
  .map(([halves, finished, underway]) => {
    const finishedHalves = Math.round(halves * finished);
    return soFar(halves / 2, finishedHalves / 2, Math.round((halves - finishedHalves) * underway) / 2);
  });
