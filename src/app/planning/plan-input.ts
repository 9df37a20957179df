/** A sprint's plan as it was typed. */
export interface PlanInput {
  readonly teamId: string;
  readonly name: string;
  readonly goal: string;
  /** ISO date. */
  readonly startsOn: string;
  readonly endsOn: string;
  /** `HH:MM`. */
  readonly closesAt: string;
  /** Working days that members will be off or away, all members together; empty: not known. */
  readonly awayDays: string;
  /** Ids of the sprint's guests, a space between two; left out: none. */
  readonly guests?: string;
  /** Pasted cards, one a line. */
  readonly cards: string;
}
