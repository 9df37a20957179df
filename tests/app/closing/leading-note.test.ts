import { describe, expect, it } from 'vitest';
import { leadingNote } from '../../../src/app/closing/leading-note.ts';
import type { NoteHistory, NotesHistory } from '../../../src/app/closing/note-history.ts';
import { controlChart } from '../../../src/forecast/control-chart.ts';
import type { CoachingNote } from '../../../src/sprint/coaching-note.ts';
import type { VerdictResult } from '../../../src/sprint/verdict.ts';

const KEPT: VerdictResult = { verdict: 'kept', failedTests: [] };
const surprise: CoachingNote = { id: 'surprise-ratio-high', value: 0.3, threshold: 0.2 };
const kept: CoachingNote = { id: 'kept-share-low', value: 0.75, threshold: 0.8 };
const pullIn: CoachingNote = { id: 'pull-in-ratio-high', value: 0.4, threshold: 0.2 };
const planShare: CoachingNote = { id: 'plan-share-low', value: 0.7, threshold: 0.8 };
const answers: CoachingNote = {
  id: 'answer-rate-low',
  value: 0.5,
  threshold: 0.8,
  answers: { prompts: 2, met: 1 },
};

/** Eight sprints that were alike, and this one: far from them, or like them. */
function historyOf(id: NoteHistory['id'], latest: number): NotesHistory {
  const chart = controlChart([0.9, 0.88, 0.91, 0.9, 0.89, 0.9, 0.92, 0.9, latest], { low: 0 });
  return { notes: [{ id, chart, crossed: { sprints: 1, of: 8 } }], rangeToTry: undefined };
}

const NO_HISTORY: NotesHistory = { notes: [], rangeToTry: undefined };

describe('the note that leads', () => {
  it('is the one on the failed test that is furthest from its threshold', () => {
    const failedTests = [
      { id: 'keptShare', value: 0.75, threshold: 0.8, distance: 0.05 },
      { id: 'surpriseRatio', value: 0.3, threshold: 0.2, distance: 0.1 },
    ] as const;
    expect(leadingNote({ verdict: 'missed', failedTests }, [kept, surprise, answers], NO_HISTORY)).toBe(
      'surprise-ratio-high',
    );
    const [first] = failedTests;
    expect(leadingNote({ verdict: 'missed', failedTests: [first] }, [kept, answers], NO_HISTORY)).toBe(
      'kept-share-low',
    );
  });

  it('is that most prompts went unanswered, before a failed test', () => {
    const failedTests = [{ id: 'keptShare', value: 0.1, threshold: 0.8, distance: 0.7 }] as const;
    const silence: CoachingNote = { ...answers, value: 0.45, answers: { prompts: 20, met: 9 } };
    expect(leadingNote({ verdict: 'missed', failedTests }, [kept, silence], NO_HISTORY)).toBe(
      'answer-rate-low',
    );
    expect(leadingNote({ verdict: 'missed', failedTests }, [kept, answers], NO_HISTORY)).toBe(
      'kept-share-low',
    );
  });

  it('is a signal, when no test failed', () => {
    expect(leadingNote(KEPT, [pullIn, planShare, answers], historyOf('plan-share-low', 0.1))).toBe(
      'plan-share-low',
    );
  });

  it('is a habit, when the numbers are no signal', () => {
    expect(leadingNote(KEPT, [pullIn, answers], historyOf('pull-in-ratio-high', 0.9))).toBe(
      'answer-rate-low',
    );
  });

  it('is another crossed threshold, when there is no habit', () => {
    expect(leadingNote(KEPT, [pullIn, planShare], NO_HISTORY)).toBe('pull-in-ratio-high');
  });

  it('is what went well, when nothing was crossed', () => {
    expect(leadingNote(KEPT, [], NO_HISTORY)).toBe('went-well');
  });

  it('is that there was no plan, whatever else was crossed', () => {
    expect(leadingNote({ verdict: 'no plan', failedTests: [] }, [planShare], NO_HISTORY)).toBe('no-plan');
  });
});
