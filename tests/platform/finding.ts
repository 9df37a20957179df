/** What the check of one sample found; without problems all is as it must be. */
export interface Finding {
  /** The sample. */
  readonly what: string;
  /** What was seen, in a few words. */
  readonly seen: string;
  /** What to mend. */
  readonly problems: readonly string[];
}
