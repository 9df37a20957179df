/** A sprint made up by chance, worked through card by card, whose true capacity is known. */

import type { LaterPart } from '../../src/forecast/paced-velocity.ts';
import type { SprintSoFar } from '../../src/forecast/sprint-so-far.ts';
import type { SeededRandom } from './seeded-random.ts';

interface WorkHabit {
  /** What the team can finish in a sprint, on average. */
  readonly meanPoints: number;
  /** Spread of it, as a share. */
  readonly spread: number;
  /** What it commits to, as a share of the mean. */
  readonly boldness: number;
  /** How likely it is, having finished everything, to pull a card in. */
  readonly pullsIn: number;
}

interface WorkedSprint {
  readonly soFar: SprintSoFar;
  readonly velocityPoints: number;
  readonly later: LaterPart;
  readonly openPoints: number;
  /** Of which so much had been committed to. */
  readonly plannedOpenPoints: number;
  /** Work done by the end that no finished card holds at the moment: what open work and a new card have to fit into. */
  readonly roomPoints: number;
  /** Work that is done after the moment: what a card done first has to fit into. */
  readonly afterPoints: number;
}

const SIZES = [1, 2, 3, 5, 8];
const SMALL_SIZES = 3;
/** How much the pace of either part strays from the sprint's. */
const PART_SPREAD = 0.2;

/** @param elapsedShare when it is looked at, from 0 to 1 */
export function workedSprint(
  { uniform, normal }: SeededRandom,
  { meanPoints, spread, boldness, pullsIn }: WorkHabit,
  elapsedShare: number,
): WorkedSprint {
  const pick = (sizes: number): number => SIZES[Math.floor(uniform() * sizes)] as number;
  const capacity = meanPoints * Math.exp(spread * normal() - spread ** 2 / 2);
  const part = (share: number): number => capacity * share * Math.exp(PART_SPREAD * normal());
  const [before, after] = [part(elapsedShare), part(1 - elapsedShare)];

  const cards: number[] = [];
  let missing = Math.max(3, Math.round(meanPoints * boldness * (0.9 + 0.2 * uniform())));
  while (missing > 0) {
    const size = Math.min(pick(SIZES.length), missing);
    cards.push(size);
    missing -= size;
  }
  const committed = total(cards);
  const pullInWhatFits = (worked: number): void => {
    let room = worked - total(cards);
    while (room >= 1 && uniform() < pullsIn) {
      const size = pick(SMALL_SIZES);
      cards.push(size);
      room -= size;
    }
  };
  pullInWhatFits(before);
  const cardPoints = total(cards);
  const then = finished(cards, before);
  const soFar = { cardPoints, finishedPoints: then.points, underwayPoints: then.underwayPoints };
  pullInWhatFits(before + after);
  const end = finished(cards, before + after);
  const velocityPoints = end.points;
  return {
    soFar,
    velocityPoints,
    later: {
      workedPoints: velocityPoints + end.underwayPoints - then.points - then.underwayPoints,
      evenPoints: velocityPoints * (1 - elapsedShare),
      openPoints: cardPoints - then.points - then.underwayPoints,
      hadTimeToSpare: velocityPoints === cardPoints && total(cards) === cardPoints,
      isWatched: true,
    },
    openPoints: cardPoints - then.points,
    plannedOpenPoints: Math.max(0, committed - then.points),
    roomPoints: before + after - then.points,
    afterPoints: after,
  };
}

/** Cards one after the other, as far as the work reaches. */
function finished(
  cards: readonly number[],
  workedPoints: number,
): { points: number; underwayPoints: number } {
  let left = workedPoints;
  let points = 0;
  for (const size of cards) {
    if (size > left) return { points, underwayPoints: left };
    left -= size;
    points += size;
  }
  return { points, underwayPoints: 0 };
}

function total(points: readonly number[]): number {
  return points.reduce((sum, one) => sum + one, 0);
}
