/** Random numbers that a seed decides, so that a run can be repeated. */
export interface SeededRandom {
  /** From 0 to below 1. */
  next(): number;
  /** A whole number of the range, both ends included. */
  whole(from: number, to: number): number;
  pick<T>(from: readonly T[]): T;
  chance(share: number): boolean;
}

/** Marsaglia's xorshift with 32 bits (Journal of Statistical Software 8, 2003), shifts 13, 17, 5. */
export function seededRandom(seed: number): SeededRandom {
  // Spread, so that neighbouring seeds differ at once; xorshift must not start from 0.
  let state = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) >>> 0 || 1;
  const next = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 2 ** 32;
  };
  for (let i = 0; i < 8; i += 1) next();
  const whole = (from: number, to: number): number => from + Math.floor(next() * (to - from + 1));
  return {
    next,
    whole,
    pick: (from) => {
      if (from.length === 0) throw new Error('there is nothing to pick from');
      return from[whole(0, from.length - 1)] as (typeof from)[number];
    },
    chance: (share) => next() < share,
  };
}
