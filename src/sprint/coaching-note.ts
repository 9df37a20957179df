/** What a coaching note is: what was crossed, with its numbers. Which notes a sprint gets is decided in `coaching.ts`. */
import type { AnswerCount } from './answer-rate.ts';

/** A note on a ratio that crossed a threshold of the team. 1 means 100%. */
export interface ThresholdNote {
  readonly id:
    | 'kept-share-low'
    | 'surprise-ratio-high'
    | 'pull-in-ratio-high'
    | 'plan-share-low'
    | 'estimate-accuracy-low'
    | 'estimate-accuracy-high'
    | 'velocity-growth-first-mark'
    | 'velocity-growth-long-range-mark';
  readonly value: number;
  readonly threshold: number;
}

/** A note on prompts left unanswered. */
interface AnswerRateNote {
  readonly id: 'answer-rate-low';
  readonly value: number;
  readonly threshold: number;
  readonly answers: AnswerCount;
}

/** A note on cards carried from sprint to sprint. By id, so that no title is kept with the numbers. */
interface CarryOverNote {
  readonly id: 'carry-over-repeated';
  readonly cards: readonly CarriedOverCard[];
}

/** A note of a version that kept sentences, where its numbers aren't all known. */
export interface PostedNote {
  readonly id: 'as-posted';
  readonly postedId: string;
  readonly crossed: string;
  readonly mayMean: string;
  readonly tryNext: string;
}

export type CoachingNote = ThresholdNote | AnswerRateNote | CarryOverNote | PostedNote;

export type CoachingNoteId = CoachingNote['id'];

/** A card that was still open when its sprint ended, as it had been when earlier ones did. */
export interface CarriedOverCard {
  readonly cardId: string;
  /** Sprints in a row at whose end it was open, this one included: 2 or more. */
  readonly sprints: number;
}
