/** What a team tries, in words. */

import type { VerdictContent } from '../app/closing/verdict-content.ts';
import type { Experiment } from '../app/experiments/experiment.ts';
import type { ExperimentResult } from '../app/experiments/experiment-results.ts';
import type { CoachingNote } from '../sprint/coaching-note.ts';
import type { Cause } from '../sprint/evidence.ts';
import { RATIO_IDS, RATIOS } from '../sprint/sprint-ratios.ts';
import { isDefined, type Ratio } from '../sprint/undefined-value.ts';
import { percent } from './amounts.ts';
import { noteWords } from './notes.ts';
import { say } from './say.ts';

/** `Nothing is pulled in early (pull-in ratio down)`, as plain text. */
export function experimentWords({
  text,
  ratio,
  direction,
}: Pick<Experiment, 'text' | 'ratio' | 'direction'>): string {
  return say('experiment', { text, ratio, direction });
}

/** What the number was before and is now, as plain text. That the one led to the other is not said: nobody knows. */
export function experimentResultWords({ experiment, before, now, beyondOrdinary }: ExperimentResult): string {
  const reading = beyondOrdinary === undefined ? 'early' : beyondOrdinary ? 'beyond' : 'ordinary';
  const about = { experiment: experimentWords(experiment), now: numberText(now), reading } as const;
  return before === undefined
    ? say('experiment-result-first', about)
    : say('experiment-result', { ...about, before: numberText(before) });
}

function numberText(ratio: Ratio): string {
  return isDefined(ratio) ? percent(ratio) : say('experiment-no-number');
}

/** What to try after a note, as plain text. Where the ledger knows what happened, it goes by that. */
export function tryAfterNote(note: CoachingNote, causes: readonly Cause[]): string {
  const [first] = causes;
  return first ? say(`evidence-${first.code}-try`) : noteWords(note).tryNext;
}

/** What a form to try something begins with. */
export interface Suggestion {
  readonly text: string;
  readonly ratio?: Experiment['ratio'];
  readonly direction?: Experiment['direction'];
}

/** The one thing to try of a verdict, with the number of its leading note. */
export function suggestionOf({ leadingNoteId, notes, causes }: VerdictContent): Suggestion {
  if (leadingNoteId === 'no-plan') return { text: say('evidence-no-plan-try') };
  const note = notes.find(({ id }) => id === leadingNoteId);
  if (!note) return { text: say('evidence-went-well-try') };
  const text = tryAfterNote(note, causes.get(note.id) ?? []);
  for (const ratio of RATIO_IDS) {
    const line = RATIOS[ratio].lines.find((one) => one.note === note.id);
    if (line) return { text, ratio, direction: line.side === 'ceiling' ? 'down' : 'up' };
  }
  return { text };
}
