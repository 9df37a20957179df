/** Writes a number in digits only, as a spreadsheet in any country reads it when the point is the decimal mark. */

/**
 * The shortest decimal that reads back as the same number, without an exponent.
 *
 * @throws RangeError for what is no finite number.
 * @example plainDecimal(2.5) === '2.5'
 * @example plainDecimal(1e-7) === '0.0000001'
 */
export function plainDecimal(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} has no decimal form`);
  const text = String(value === 0 ? 0 : value);
  const [, sign = '', digits = '', decimals = '', exponent] =
    /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]\d+))?$/.exec(text) ?? [];
  if (exponent === undefined) return text;
  const point = digits.length + Number(exponent);
  const all = `${digits}${decimals}`;
  if (point <= 0) return `${sign}0.${'0'.repeat(-point)}${all}`;
  if (point >= all.length) return `${sign}${all}${'0'.repeat(point - all.length)}`;
  return `${sign}${all.slice(0, point)}.${all.slice(point)}`;
}
