/** How often, in everyday words. It is an estimate, so tenths are fine enough. */

const TENTHS = 10;

/** `about 8 in 10`; near the ends `fewer than 1 in 10` and `more than 9 in 10`. @param chance from 0 to 1 */
export function inTen(chance: number): string {
  const tenths = Math.round(chance * TENTHS);
  if (tenths <= 0) return 'fewer than 1 in 10';
  if (tenths >= TENTHS) return 'more than 9 in 10';
  return `about ${tenths} in 10`;
}

/** To complete “they hold surprise work …”. @param share from 0 to 1 */
export function howOften(share: number): string {
  const tenths = Math.round(share * TENTHS);
  if (tenths === 0) return 'hardly ever';
  if (tenths === TENTHS) return 'nearly every time';
  return `about ${tenths} ${tenths === 1 ? 'time' : 'times'} in 10`;
}
