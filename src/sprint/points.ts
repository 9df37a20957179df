/**
 * Points: multiples of 0.5 from 0 to 999.5. Such numbers are exact in binary, so sums of them are exact
 * and equality may be tested with `===`.
 */

/** The largest amount of points that an estimate, or a member's worked or left, may have. */
export const MAX_POINTS = 999.5;

/** Whether `value` is a legal amount of points. */
export function isPoints(value: number): boolean {
  return value >= 0 && value <= MAX_POINTS && Number.isInteger(value * 2);
}

/** Whether `value` may be a change of points: a multiple of 0.5 within ±999.5. */
export function isPointsChange(value: number): boolean {
  return isPoints(Math.abs(value));
}

const POINTS_PATTERN = /^(?:(\d{1,3})(?:[.,]([05])0?)?|(\d{1,3})? ?½|\.50?)$/;

/**
 * Reads an amount of points as people type it: `3`, `0.5`, `.5`, `0,5`, `2.0`, `½`, `1½`.
 *
 * @returns the points, or undefined when the text is not a multiple of 0.5 from 0 to 999.5.
 * @example parsePoints('1½') === 1.5
 */
export function parsePoints(text: string): number | undefined {
  const match = POINTS_PATTERN.exec(text.trim());
  if (!match) return undefined;
  const [, whole, tenths, wholeBeforeHalf] = match;
  if (whole !== undefined) return Number(whole) + (tenths === '5' ? 0.5 : 0);
  return Number(wholeBeforeHalf ?? 0) + 0.5;
}

/** Points as people read them: `3`, `2.5`. */
export function formatPoints(points: number): string {
  return String(points);
}
