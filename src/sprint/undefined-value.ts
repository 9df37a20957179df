/**
 * A number that may not exist, told apart by type: a ratio over nothing is not 0, NaN or Infinity but
 * a reason in words.
 */

/** A value that does not exist, with the reason for a reader. */
export interface UndefinedValue {
  readonly undefined: string;
}

/** A share or ratio, where 1 means 100%, or the reason why there is none. */
export type Ratio = number | UndefinedValue;

/** Makes the typed "does not exist". */
export function undefinedBecause(reason: string): UndefinedValue {
  return { undefined: reason };
}

/** Whether the ratio is a number. */
export function isDefined(ratio: Ratio): ratio is number {
  return typeof ratio === 'number';
}

/** `numerator / denominator`, or the reason when the denominator is 0. */
export function ratioOf(numerator: number, denominator: number, reasonWhenZero: string): Ratio {
  return denominator === 0 ? undefinedBecause(reasonWhenZero) : numerator / denominator;
}
