/** What a coaching note is. Which notes a sprint gets is decided in `coaching.ts`. */

export type CoachingNoteId =
  | 'kept-share-low'
  | 'surprise-ratio-high'
  | 'pull-in-ratio-high'
  | 'plan-share-low'
  | 'estimate-accuracy-low'
  | 'estimate-accuracy-high'
  | 'velocity-growth-first-mark'
  | 'velocity-growth-long-range-mark'
  | 'carry-over-repeated'
  | 'answer-rate-low';

export interface CoachingNote {
  readonly id: CoachingNoteId;
  /** What was crossed, with the number and its distance. */
  readonly crossed: string;
  /** What it may mean; never a finding of fault. */
  readonly mayMean: string;
  /** One thing to try next sprint. */
  readonly tryNext: string;
  /** The cards that it is about, for a note about cards. By id, so that no title is kept with the numbers. */
  readonly cards?: readonly CarriedOverCard[];
}

/** A card that was still open when its sprint ended, as it had been when earlier ones did. */
export interface CarriedOverCard {
  readonly cardId: string;
  /** Sprints in a row at whose end it was open, this one included: 2 or more. */
  readonly sprints: number;
}
