/** Everything that a sprint's cards say about the sprint, in one value. */
import type { AnswerCount } from './answer-rate.ts';
import { type Baseline, growthPerMemberDay, type WorkingTime } from './baseline.ts';
import type { CoachingNote } from './coaching-note.ts';
import { habitNotes, NO_HABITS_KNOWN, type SprintHabits } from './habit-notes.ts';
import type { CardState } from './ledger.ts';
import type { Scale } from './scale.ts';
import { type SprintRatios, sprintRatios } from './sprint-ratios.ts';
import { thresholdNotes } from './threshold-notes.ts';
import type { Thresholds } from './thresholds.ts';
import { type SprintTotals, sprintTotals } from './totals.ts';
import { type VerdictResult, type VerdictRules, verdictOf } from './verdict.ts';

export interface SprintSummary {
  readonly totals: SprintTotals;
  readonly ratios: SprintRatios;
  /** What the verdict would be if the sprint ended now. */
  readonly verdict: VerdictResult;
  readonly notes: readonly CoachingNote[];
  /** What velocity growth compares with; missing where it wasn't noted yet, and where there is no baseline. */
  readonly baseline?: 'itself' | 'first-three' | { readonly name: string };
  /** Velocity growth for each member-day; missing where length and size are about the baseline's, or aren't known. */
  readonly growthPerMemberDay?: number;
  /** The daily prompts; missing while the sprint runs, and where they were not counted yet. */
  readonly answers?: AnswerCount;
  /** On how many evenings cards were blocked, all cards together; missing where it was not counted yet. */
  readonly blockedCardDays?: number;
}

/** How a team measures itself. */
interface Yardstick extends VerdictRules {
  readonly scale: Scale;
  readonly thresholds: Thresholds;
  /** Undefined when this sprint may become the baseline itself; `not-yet` when there is none for now. */
  readonly baseline: Baseline | 'not-yet' | undefined;
  /** The sprint's own; missing while it runs. */
  readonly time?: WorkingTime | undefined;
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
  const summary: SprintSummary =
    yardstick.baseline || velocityPoints === 0
      ? runningSummary(states, yardstick)
      : { ...summaryAgainst(states, yardstick, velocityPoints), baseline: 'itself' };
  if (!habits) return summary;
  const notes = coachingNotes(summary.ratios, yardstick.thresholds, habits);
  return { ...summary, notes, answers: habits.answers };
}

/** The same for a sprint that is still running: velocity growth needs an earlier baseline. */
export function runningSummary(states: readonly CardState[], yardstick: Yardstick): SprintSummary {
  const { baseline, time } = yardstick;
  if (baseline === undefined || baseline === 'not-yet') return summaryAgainst(states, yardstick, undefined);
  const summary = summaryAgainst(states, yardstick, baseline.velocityPoints);
  const growth = growthPerMemberDay(summary.totals.velocityPoints, time, baseline);
  return {
    ...summary,
    baseline: baseline.name === undefined ? 'first-three' : { name: baseline.name },
    ...(growth === undefined ? {} : { growthPerMemberDay: growth }),
  };
}

function summaryAgainst(
  states: readonly CardState[],
  yardstick: VerdictRules & Pick<Yardstick, 'scale' | 'thresholds'>,
  baselineVelocityPoints: number | undefined,
): SprintSummary {
  const totals = sprintTotals(states, yardstick.scale);
  const ratios = sprintRatios(totals, baselineVelocityPoints);
  const verdict = verdictOf(ratios, yardstick);
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
