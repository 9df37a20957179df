/** What people did and what they were told about it: their memory, which the auditor compares with the database. */

type ActKind = 'answer' | 'unchanged' | 'away' | 'pull' | 'drop' | 'plan' | 'close' | 'reopen';

/** `acknowledged`: they were shown that it is recorded. `denied`: they were last told that it is not. */
type ActState = 'open' | 'acknowledged' | 'denied';

export interface Act {
  readonly id: number;
  readonly kind: ActKind;
  readonly userId: string;
  readonly channelId: string;
  /** The team's local day. */
  readonly day: string;
  readonly sprintId?: string;
  /** For an answer: what was said of which card. */
  readonly cardId?: string;
  readonly leftPoints?: number;
  readonly workedPoints?: number;
  /** Title of a card that was pulled, reason of one that was dropped, name of a sprint that was planned. */
  readonly words?: string;
  state: ActState;
  /** How often they tried. */
  tries: number;
  /** What they were last shown. */
  lastWords: string;
}

export class ActBook {
  readonly acts: Act[] = [];

  begin(act: Omit<Act, 'id' | 'state' | 'tries' | 'lastWords'>): Act {
    const begun: Act = { ...act, id: this.acts.length + 1, state: 'open', tries: 0, lastWords: '' };
    this.acts.push(begun);
    return begun;
  }
}
