/**
 * Coaching notes: a short, specific suggestion tied to something that was crossed. They are about the team's way of
 * working, never about a person. What each says is in the messages `note-<id>-…`.
 */
import type { CoachingNote } from './coaching-note.ts';
import type { SprintHabits } from './habit-notes.ts';
import { habitNotes, NO_HABITS_KNOWN } from './habit-notes.ts';
import type { SprintRatios } from './sprint-ratios.ts';
import { thresholdNotes } from './threshold-notes.ts';
import type { Thresholds } from './thresholds.ts';

/** All notes that a sprint calls for, in a fixed order. */
export function coachingNotes(
  ratios: SprintRatios,
  thresholds: Thresholds,
  habits: SprintHabits = NO_HABITS_KNOWN,
): CoachingNote[] {
  return [...thresholdNotes(ratios, thresholds), ...habitNotes(habits)];
}
