import { type Ratio, ratioOf } from './undefined-value.ts';

/** Daily prompts of a sprint, all members together. */
export interface AnswerCount {
  /** Prompts that there was something to say to. */
  readonly prompts: number;
  /** Those that were met: answered, "nothing changed", or away. */
  readonly met: number;
}

/**
 * The share of the sprint's daily prompts that were met.
 *
 * Formula: prompts met ÷ prompts.
 * Units: none; 0 to 1.
 * Undefined: when nobody was asked.
 * How it misleads: it says how much the other numbers are based on, and nothing about how anybody works. An answer given
 * without a look counts as well as a careful one.
 * Source: ours, no published source.
 *
 * @example answerRate({ prompts: 20, met: 15 }) === 0.75
 */
export function answerRate({ prompts, met }: AnswerCount): Ratio {
  return ratioOf(met, prompts, 'nobody-asked');
}
