/** What is said in answer to a planning question, before it is put into blocks. */

/** Lines below a title. */
export interface TitledLines {
  readonly title: string;
  /** mrkdwn */
  readonly lines: readonly string[];
}

export interface AdviceWords {
  /** The sentence that matters, as plain text. */
  readonly lead: string;
  /** Paragraphs in mrkdwn: as much as fits on the screen of a phone. */
  readonly evidence: readonly (string | TitledLines)[];
  /** How the answer was made, for the people who ask for it. */
  readonly details: readonly (string | TitledLines)[];
  /** False where too little is known to answer; the evidence then says what is missing and how to get it. */
  readonly isAnswered: boolean;
  /** What the answer doesn't know, in sentences of mrkdwn. */
  readonly unknown: readonly string[];
}
