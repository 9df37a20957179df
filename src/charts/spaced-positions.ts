/**
 * Picks which labels along an axis can be shown without touching each other. Pure.
 *
 * `wanted` are positions in order of importance; each is kept when it stands at least `leastGap` from every
 * one kept before it, in the same unit as the positions.
 */
export function spacedPositions(wanted: readonly number[], leastGap: number): Set<number> {
  const kept = new Set<number>();
  for (const position of wanted) {
    if ([...kept].every((other) => Math.abs(other - position) >= leastGap)) kept.add(position);
  }
  return kept;
}
