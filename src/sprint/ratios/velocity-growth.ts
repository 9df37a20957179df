import type { Ratio } from '../undefined-value.ts';
import { undefinedBecause } from '../undefined-value.ts';

/**
 * Velocity growth: this sprint's velocity, measured by the team's own baseline sprint.
 *
 * Formula: velocity ÷ velocity of the baseline sprint (the team's first closed sprint with a velocity,
 * or one that the facilitator names). 0 or more; 1 in the baseline sprint itself.
 * Undefined before there is a baseline.
 * How it misleads: points stretch with time, so the same work may be called more points; people joining
 * or leaving change it as well. Never compare it between teams.
 * Source: common practice, no published source.
 *
 * @param baselineVelocityPoints undefined when no sprint with a velocity has been closed.
 * @example velocityGrowth(24, 10) === 2.4
 */
export function velocityGrowth(velocityPoints: number, baselineVelocityPoints: number | undefined): Ratio {
  if (baselineVelocityPoints === undefined || baselineVelocityPoints <= 0) {
    return undefinedBecause('no-baseline');
  }
  return velocityPoints / baselineVelocityPoints;
}
