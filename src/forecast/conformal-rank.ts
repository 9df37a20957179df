/** Against rounding: (9 + 1)·(1 − 0.7) is a hair above 3 in binary, and still means the third. */
const SLACK = 1e-9;

/**
 * Which of n past scores, counted from the smallest, a new one does not exceed with the wanted chance, if all of
 * them come in no particular order.
 *
 * Formula: ⌈(n + 1)·chance⌉. Units: a rank from 1. Above n it says that n scores are too few for such a promise.
 * How it misleads: sprints of a team that changes do come in a particular order.
 * Source: split conformal prediction; Vovk, Gammerman and Shafer, "Algorithmic learning in a random world", 2005.
 *
 * @example conformalRank(19, 0.9) === 18
 */
export function conformalRank(scores: number, chance: number): number {
  return Math.ceil((scores + 1) * chance - SLACK);
}
