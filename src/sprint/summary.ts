/** Everything that a sprint's cards say about the sprint, in one value. */
import type { AnswerCount } from './answer-rate.ts';
import type { CoachingNote } from './coaching-note.ts';
import { habitNotes, NO_HABITS_KNOWN, type SprintHabits } from './habit-notes.ts';
import type { CardState } from './ledger.ts';
import type { Scale } from './scale.ts';
import { type SprintRatios, sprintRatios } from './sprint-ratios.ts';
import { thresholdNotes } from './threshold-notes.ts';
import type { Thresholds } from './thresholds.ts';
import { type SprintTotals, sprintTotals } from './totals.ts';
import { type VerdictResult, verdictOf } from './verdict.ts';

export interface SprintSummary {
  readonly totals: SprintTotals;
  readonly ratios: SprintRatios;
  /** What the verdict would be if the sprint ended now. */
  readonly verdict: VerdictResult;
  readonly notes: readonly CoachingNote[];
  /** The daily prompts; missing while the sprint runs, and where they were not counted yet. */
  readonly answers?: AnswerCount;
}

/** How a team measures itself. */
export interface Yardstick {
  readonly scale: Scale;
  readonly thresholds: Thresholds;
  /**
   * Velocity of the team's baseline sprint; undefined when this sprint may become the baseline itself.
   */
  readonly baselineVelocityPoints: number | undefined;
}

/**
 * Sums, ratios, verdict and notes for a sprint that is over. A first sprint is its own baseline.
 *
 * @param habits what the notes beyond the ratios are made from; without it there are none of them.
 */
export function closingSummary(
  states: readonly CardState[],
  yardstick: Yardstick,
  habits?: SprintHabits,
): SprintSummary {
  const { velocityPoints } = sprintTotals(states, yardstick.scale);
  const baselineVelocityPoints =
    yardstick.baselineVelocityPoints ?? (velocityPoints > 0 ? velocityPoints : undefined);
  const summary = runningSummary(states, { ...yardstick, baselineVelocityPoints });
  if (!habits) return summary;
  const notes = coachingNotes(summary.ratios, yardstick.thresholds, habits);
  return { ...summary, notes, answers: habits.answers };
}

/** The same for a sprint that is still running: velocity growth needs an earlier baseline. */
export function runningSummary(states: readonly CardState[], yardstick: Yardstick): SprintSummary {
  const totals = sprintTotals(states, yardstick.scale);
  const ratios = sprintRatios(totals, yardstick.baselineVelocityPoints);
  const verdict = verdictOf(ratios, yardstick.thresholds);
  return { totals, ratios, verdict, notes: coachingNotes(ratios, yardstick.thresholds) };
}

/**
 * Coaching notes: a short, specific suggestion tied to something that was crossed. They are about the team's way of
 * working, never about a person. What each says is in the messages `note-<id>-…`.
 *
 * All notes that a sprint calls for, in a fixed order.
 */
export function coachingNotes(
  ratios: SprintRatios,
  thresholds: Thresholds,
  habits: SprintHabits = NO_HABITS_KNOWN,
): CoachingNote[] {
  return [...thresholdNotes(ratios, thresholds), ...habitNotes(habits)];
}
