/**
 * Amounts of points as a person writes them: at most one decimal, no trailing zero, a true minus sign.
 * Points are multiples of a half, but an ideal line passes through thirds.
 */
export function pointsNumber(points: number): string {
  const rounded = Math.round(Math.abs(points) * 10) / 10;
  return points < 0 && rounded > 0 ? `-${rounded}` : `${rounded}`;
}

/** `1 point`, `3.5 points`, `0 points`. */
export function pointsText(points: number): string {
  const number = pointsNumber(points);
  return number === '1' ? '1 point' : `${number} points`;
}
