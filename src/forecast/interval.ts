/** A lower and an upper end. What it holds, and how surely, is for the function that returns it to say. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}
