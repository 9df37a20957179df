/** Chooses the one note that a verdict leads with, and finds what the ledger shows about each. */
import type { Day } from '../../sprint/calendar.ts';
import type { CoachingNote, CoachingNoteId } from '../../sprint/coaching-note.ts';
import {
  type Cause,
  type WorkTime,
  whenPulledIn,
  whereEstimatesWereOff,
  whereSurpriseCame,
  whyUnfinished,
} from '../../sprint/evidence.ts';
import { ANSWERED_MOSTLY } from '../../sprint/habit-notes.ts';
import type { CardState } from '../../sprint/ledger.ts';
import type { Scale } from '../../sprint/scale.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import type { FailedTest, VerdictResult } from '../../sprint/verdict.ts';
import type { NoteHistory, NotesHistory } from './note-history.ts';

/** `went-well`: the commitment was kept and nothing calls for a note; `no-plan`: there was none. */
export type LeadingNoteId = CoachingNoteId | 'went-well' | 'no-plan';

const NOTE_OF: Readonly<Record<FailedTest['id'], CoachingNoteId>> = {
  keptShare: 'kept-share-low',
  surpriseRatio: 'surprise-ratio-high',
};

const HABITS: readonly CoachingNoteId[] = ['carry-over-repeated', 'answer-rate-low'];

/**
 * Without a commitment, that is the note. Otherwise the first of these that there is:
 *
 * 1. most prompts went unanswered, so that the rest isn't known;
 * 2. of the failed tests the one furthest from its threshold; both are shares of the commitment;
 * 3. a signal;
 * 4. a habit;
 * 5. another crossed threshold;
 * 6. what went well.
 */
export function leadingNote(
  { verdict, failedTests }: VerdictResult,
  notes: readonly CoachingNote[],
  history: NotesHistory,
): LeadingNoteId {
  if (verdict === 'no plan') return 'no-plan';
  const isMostlySilent = notes.some((note) => note.id === 'answer-rate-low' && note.value < ANSWERED_MOSTLY);
  if (isMostlySilent) return 'answer-rate-low';
  const [furthest] = [...failedTests].sort((a, b) => b.distance - a.distance);
  if (furthest) return NOTE_OF[furthest.id];
  const ids = notes.map(({ id }) => id);
  const signal = ids.find((id) => isSignal(history.notes.find((one) => one.id === id)));
  return signal ?? ids.find((id) => HABITS.includes(id)) ?? ids[0] ?? 'went-well';
}

/** Whether the note's number is beyond what is usual for the team. */
function isSignal(known: NoteHistory | undefined): boolean {
  return known !== undefined && !('undefined' in known.chart) && known.chart.latest.reading === 'signal';
}

/**
 * The notes that this sprint and the team's history support. Estimates that were near may have been lucky: only over several
 * kept sprints do they tell of too much care. Without a plan, nobody missed a share of it.
 */
export function supportedNotes(
  { notes, verdict: { verdict } }: Pick<SprintSummary, 'notes' | 'verdict'>,
  history: NotesHistory,
): readonly CoachingNote[] {
  return notes.filter(({ id }) => {
    if (id === 'plan-share-low') return verdict !== 'no plan';
    if (id !== 'estimate-accuracy-high') return true;
    return verdict === 'kept' && isSignal(history.notes.find((known) => known.id === id));
  });
}

/** What there is to see of how a sprint went. */
export interface SprintSeen {
  readonly states: readonly CardState[];
  /** The sprint's working days, ascending. */
  readonly days: readonly Day[];
  readonly scale: Scale;
  /** Undefined: not known. */
  readonly time: WorkTime | undefined;
}

/** What the ledger shows about a note, the most telling first; empty where it shows nothing. */
export function causesOf(id: CoachingNoteId, { states, days, scale, time }: SprintSeen): Cause[] {
  switch (id) {
    case 'kept-share-low':
      return whyUnfinished(states, days, time);
    case 'surprise-ratio-high':
      return whereSurpriseCame(states);
    case 'pull-in-ratio-high':
      return whenPulledIn(states, days);
    case 'plan-share-low':
      return [...whenPulledIn(states, days), ...whereSurpriseCame(states)];
    case 'estimate-accuracy-low':
      return whereEstimatesWereOff(states, scale);
    default:
      return [];
  }
}
