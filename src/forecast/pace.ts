/**
 * A plain reading of the sprint's pace so far: what will be left at its end if the team goes on as it did.
 * It knows nothing of the team's history.
 */
import { type Reason, reason } from '../sprint/undefined-value.ts';

export type LoadSignal = 'light' | 'on the line' | 'heavy';

export interface PaceInput {
  /** Left on the cards still in the sprint. */
  readonly openLeftPoints: number;
  readonly workedPoints: number;
  readonly loadPoints: number;
  /** Working days that are over or have been answered for. */
  readonly workingDaysGone: number;
  /** As many as the days to come hold of the team's time: a day on which half of it is off is half a day. */
  readonly workingDaysLeft: number;
}

export type Pace =
  | {
      readonly signal: LoadSignal;
      readonly projectedLeftPoints: number;
      readonly daysGone: number;
      /** Whether less than half of the time is gone: then the direction may be told, and no amount. */
      readonly isEarly: boolean;
    }
  | { readonly signal: undefined; readonly because: Reason };

/** How far from an even finish, as a share of the load, still counts as on the line. Common practice. */
export const EVEN_FINISH_TOLERANCE = 0.1;

/** Days of answers without which a pace says nothing. */
export const LEAST_DAYS = 2;

/**
 * Projected left = left − worked ÷ days gone × days left, in points; below 0 there is room for as many
 * more. `heavy` when more than a tenth of the load would be left, `light` when there would be room for
 * more than a tenth of it. No signal before two working days or without work.
 * How it misleads: a few days carried on to many say little of the amount; it treats every day of work the same and counts no growth that is still to come.
 *
 * @example paceOf({ openLeftPoints: 12, workedPoints: 8, loadPoints: 20, workingDaysGone: 4, workingDaysLeft: 6 }).signal === 'on the line'
 */
export function paceOf(input: PaceInput): Pace {
  if (input.loadPoints === 0) return { signal: undefined, because: reason('no-work-yet') };
  if (input.workingDaysGone < LEAST_DAYS) {
    return { signal: undefined, because: reason('few-days', { needed: LEAST_DAYS }) };
  }
  const perDay = input.workedPoints / input.workingDaysGone;
  const projectedLeftPoints = input.openLeftPoints - perDay * input.workingDaysLeft;
  const tolerance = EVEN_FINISH_TOLERANCE * input.loadPoints;
  return {
    signal: signalOf(projectedLeftPoints, tolerance),
    projectedLeftPoints,
    daysGone: input.workingDaysGone,
    isEarly: input.workingDaysGone < input.workingDaysLeft,
  };
}

function signalOf(projectedLeftPoints: number, tolerance: number): LoadSignal {
  if (projectedLeftPoints > tolerance) return 'heavy';
  return projectedLeftPoints < -tolerance ? 'light' : 'on the line';
}
