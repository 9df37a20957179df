/** What a coaching note says. It is about the team's way of working and about nobody in it. */
import type { CoachingNote, PostedNote } from '../sprint/coaching-note.ts';
import { against } from './amounts.ts';
import { say } from './say.ts';

interface NoteWords {
  /** What was crossed, with its numbers. */
  readonly crossed: string;
  readonly mayMean: string;
  /** One thing to try in the next sprint. */
  readonly tryNext: string;
}

export function noteWords(note: CoachingNote): NoteWords {
  if (note.id === 'as-posted') return note;
  return {
    crossed: crossedWords(note),
    mayMean: say(`note-${note.id}-may-mean`),
    tryNext: say(`note-${note.id}-try`),
  };
}

function crossedWords(note: Exclude<CoachingNote, PostedNote>): string {
  switch (note.id) {
    case 'carry-over-repeated':
      return say(`note-${note.id}-crossed`, {
        cards: note.cards.length,
        sprints: note.cards[0]?.sprints ?? 0,
      });
    case 'answer-rate-low':
      return say(`note-${note.id}-crossed`, { ...against(note.value, note.threshold), ...note.answers });
    case 'velocity-growth-first-mark':
    case 'velocity-growth-long-range-mark':
      return say(`note-${note.id}-crossed`, {
        ...against(note.value, note.threshold),
        place: note.value === note.threshold ? 'right' : 'past',
      });
    default:
      return say(`note-${note.id}-crossed`, { ...against(note.value, note.threshold) });
  }
}
