import { type RatioId, ratioOfSums } from '../../sprint/sprint-ratios.ts';
import { type Ratio, undefinedBecause } from '../../sprint/undefined-value.ts';
import type { PastSprint } from './past-sprint.ts';

/** One ratio over the closed sprints, in their order. Velocity growth is measured by the baseline sprint of today. */
export function ratioValues(
  ratio: RatioId,
  past: readonly PastSprint[],
  baselineVelocityPoints: number | undefined,
): Ratio[] {
  if (ratio !== 'velocityGrowth') return past.map(({ ratios }) => ratios[ratio]);
  return past.map(({ velocityPoints }) =>
    velocityPoints === undefined
      ? undefinedBecause('velocity-unknown')
      : ratioOfSums('velocityGrowth', {
          velocityPoints,
          baselineVelocityPoints: baselineVelocityPoints ?? 0,
        }),
  );
}
