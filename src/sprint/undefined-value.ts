/**
 * A number that may not exist, kept apart by type: a ratio over nothing is not 0, NaN or Infinity but a reason. The
 * reason is a code with its details; its sentence is the message `undefined-<code>`.
 */

type Nothing = Record<never, never>;

/** Every reason why a number doesn't exist, with its details. */
interface ReasonDetails {
  'no-commitment': Nothing;
  'no-load': Nothing;
  'no-card-finished': Nothing;
  'no-work-reported': Nothing;
  'no-baseline': Nothing;
  'nobody-asked': Nothing;

  'no-values': Nothing;
  'nothing-to-count': Nothing;
  'few-values': { readonly needed: number; readonly known: number };
  /** Too few sprints that have what the number is made from. */
  'few-sprints': {
    readonly needed: number;
    readonly known: number;
    readonly having: 'closed' | 'commitment' | 'number' | 'finished-points' | 'pulled-in-points';
  };
  /** The same for reading whether a number is a signal. */
  'no-signal-yet': { readonly needed: number; readonly known: number };

  'nobody-there': Nothing;
  'nothing-committed': Nothing;
  'too-little-finished': Nothing;
  'pulled-in-before-finishing': { readonly sprints: number; readonly of: number };
  'varies-too-much': Nothing;

  'no-closed-card': Nothing;
  'no-card-of-size': { readonly estimatePoints: number };
  'no-surprise-of-size': { readonly estimatePoints: number };
  'few-pulled-in': { readonly needed: number; readonly known: number };
  'no-day-for-card': { readonly estimatePoints: number };

  'no-backlog': Nothing;
  'no-velocity': { readonly sprints: number };
  'too-far-off': { readonly sprints: number; readonly chance: number };

  'no-valued-sprint': Nothing;
  'before-valued-sprint': Nothing;
  'no-value': Nothing;
  'nothing-finished': Nothing;
  'velocity-unknown': Nothing;

  'cards-not-imported': Nothing;
  'finished-commitment-not-imported': Nothing;
  'pulled-in-work-not-imported': Nothing;
  'surprise-work-not-imported': Nothing;
  'load-not-imported': Nothing;
  'work-not-imported': Nothing;
  /** The sprint ended before Loadline had this ratio. */
  'ended-before-ratio': Nothing;
  /** Kept by a version that had sentences in place of codes. */
  'as-posted': { readonly sentence: string };

  'not-begun': Nothing;
  'corrections-only': Nothing;
  'no-working-day': Nothing;
  'last-day-over': Nothing;
  'no-points': Nothing;
  'nobody-answered': Nothing;
  'no-work-yet': Nothing;
  'few-days': { readonly needed: number };
}

export type ReasonCode = keyof ReasonDetails;

export type Reason = { [Code in ReasonCode]: { readonly code: Code } & ReasonDetails[Code] }[ReasonCode];

/** A value that does not exist, and why. */
export interface UndefinedValue {
  readonly undefined: Reason;
}

/** A share or ratio, where 1 means 100%, or the reason why there is none. */
export type Ratio = number | UndefinedValue;

type Details<Code extends ReasonCode> = keyof ReasonDetails[Code] extends never
  ? readonly []
  : readonly [details: ReasonDetails[Code]];

export function reason<Code extends ReasonCode>(code: Code, ...[details]: Details<Code>): Reason {
  return { code, ...details } as unknown as Reason;
}

/** Makes the typed "does not exist". */
export function undefinedBecause<Code extends ReasonCode>(
  code: Code,
  ...details: Details<Code>
): UndefinedValue {
  return { undefined: reason(code, ...details) };
}

/** Whether the ratio is a number. */
export function isDefined(ratio: Ratio): ratio is number {
  return typeof ratio === 'number';
}

/** `numerator / denominator`, or why there is none when the denominator is 0. */
export function ratioOf<Code extends ReasonCode>(
  numerator: number,
  denominator: number,
  ...whenZero: readonly [code: Code, ...details: Details<Code>]
): Ratio {
  return denominator === 0 ? undefinedBecause(...whenZero) : numerator / denominator;
}
