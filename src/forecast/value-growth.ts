/** Whether the value that the work brings grows with the team's output. It knows no currency and no unit. */
import { isDefined, type Ratio, ratioOf, undefinedBecause } from '../sprint/undefined-value.ts';

/** A closed sprint, in order. */
export interface ValuedSprint {
  readonly velocityPoints: number;
  /** The one number that the product owner recorded for it, in any unit; undefined when there is none. */
  readonly recordedValue: number | undefined;
}

/** A sprint measured by the baseline sprint; 1 there. */
export interface Growth {
  readonly valueGrowth: Ratio;
  readonly velocityGrowth: Ratio;
  /** Value growth ÷ velocity growth: above 1, a point brings more value than it did in the baseline sprint. */
  readonly valuePerPointGrowth: Ratio;
}

export interface GrowthHistory {
  /** Place in the list of the sprint that both growths are measured by; undefined when there is none. */
  readonly baselineIndex: number | undefined;
  /** One for each sprint given. */
  readonly sprints: readonly Growth[];
}

/**
 * The growth of the recorded value beside that of the velocity, both measured by the same sprint, so that they
 * can be compared.
 *
 * Formula: recorded value ÷ recorded value of the baseline sprint; velocity in the same way. The baseline is the first
 * sprint, from the team's velocity baseline on, with a velocity and a recorded value above 0.
 * Units: none, 1 means 100%. A value below 0 gives a growth below 0.
 * Undefined before there is a baseline sprint, for sprints before it, where no value was recorded, and, for the
 * value by point, where nothing was finished.
 * How it misleads: value comes late, often sprints after the work, and depends on more than the team's work; that
 * both grow doesn't say that one made the other grow.
 * Source: common practice, no published source.
 *
 * @param firstIndex place of the team's velocity baseline sprint.
 * @example valueGrowth([{ velocityPoints: 10, recordedValue: 200 }, { velocityPoints: 20, recordedValue: 500 }]).sprints[1].valuePerPointGrowth === 1.25
 */
export function valueGrowth(sprints: readonly ValuedSprint[], firstIndex = 0): GrowthHistory {
  const found = sprints.findIndex(
    ({ velocityPoints, recordedValue }, i) =>
      i >= firstIndex && velocityPoints > 0 && (recordedValue ?? 0) > 0,
  );
  const baseline = sprints[found];
  if (baseline?.recordedValue === undefined) {
    const none = undefinedBecause('no-valued-sprint');
    const growth: Growth = { valueGrowth: none, velocityGrowth: none, valuePerPointGrowth: none };
    return { baselineIndex: undefined, sprints: sprints.map(() => growth) };
  }
  const { recordedValue: baselineValue, velocityPoints: baselineVelocity } = baseline;
  const growths = sprints.map(({ velocityPoints, recordedValue }, i): Growth => {
    if (i < found) {
      const before = undefinedBecause('before-valued-sprint');
      return { valueGrowth: before, velocityGrowth: before, valuePerPointGrowth: before };
    }
    const ofVelocity = velocityPoints / baselineVelocity;
    const ofValue: Ratio =
      recordedValue === undefined ? undefinedBecause('no-value') : recordedValue / baselineValue;
    return {
      valueGrowth: ofValue,
      velocityGrowth: ofVelocity,
      valuePerPointGrowth: isDefined(ofValue) ? ratioOf(ofValue, ofVelocity, 'nothing-finished') : ofValue,
    };
  });
  return { baselineIndex: found, sprints: growths };
}
