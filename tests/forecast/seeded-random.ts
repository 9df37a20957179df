/** Random numbers for simulations that must give the same on every run. */

export interface SeededRandom {
  /** From 0 to below 1. */
  readonly uniform: () => number;
  /** Standard normal. */
  readonly normal: () => number;
}

/** A linear congruential generator modulo 2^48 (the constants are those of POSIX drand48). */
export function seededRandom(seed: number): SeededRandom {
  const modulus = 2n ** 48n;
  let state = (BigInt(seed) << 16n) + 0x330en;
  const uniform = (): number => {
    state = (state * 0x5deece66dn + 0xbn) % modulus;
    return Number(state) / 2 ** 48;
  };
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}
