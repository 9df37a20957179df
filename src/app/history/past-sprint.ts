/** What a finished sprint leaves behind for the statistics, whether Loadline ran it or it was imported. */
import type { CardEvenings } from '../../forecast/card-evenings.ts';
import type { SprintSoFar } from '../../forecast/sprint-so-far.ts';
import type { Day } from '../../sprint/calendar.ts';
import type { SprintRatios } from '../../sprint/sprint-ratios.ts';
import { isDefined } from '../../sprint/undefined-value.ts';
import { type Verdict, type VerdictRules, verdictOf } from '../../sprint/verdict.ts';
import type { GoalMet, Sprint } from '../team/team.ts';

/** The state of the sprint on one of its evenings. */
export type TracePoint = SprintSoFar;

/** A card that was not dropped. Points. */
export interface PastCard {
  readonly estimatePoints: number;
  readonly surprisePoints: number;
  /** How much of its work was done at the sprint's end: 1 when finished, 0 when never begun. Undefined: not kept then. */
  readonly doneShare?: number | undefined;
  /** Set for a card that was pulled in. */
  readonly pulledIn?: {
    /** Working days left when it came in, the day itself included. */
    readonly workingDaysLeft: number;
    readonly finished: boolean;
  };
}

/** Velocity growth is not among them: it changes with the baseline sprint, so it is made when it is read. */
export type PastRatios = Omit<SprintRatios, 'velocityGrowth'>;

/** Amounts are points; undefined where an import did not say. */
export interface PastSprint extends Pick<Sprint, 'teamId' | 'name' | 'startsOn' | 'endsOn' | 'importedAt'> {
  readonly sprintId: string;
  readonly workingDays: number;
  /** Working days of all members together, without those away. */
  readonly memberDays: number | undefined;
  /** Where member-days aren't known: how many whole members the team had on the day of the import. */
  readonly membersThen?: number | undefined;
  readonly commitmentPoints: number;
  readonly pulledInPoints: number | undefined;
  readonly surprisePoints: number | undefined;
  readonly velocityPoints: number | undefined;
  readonly workedPoints: number | undefined;
  readonly committedFinishedPoints: number | undefined;
  readonly ratios: PastRatios;
  /** Its state after 0, 1, 2 … of its working days; empty when nobody watched (an import). */
  readonly trace: readonly TracePoint[];
  /** Empty when its cards are not known (an import). */
  readonly cards: readonly PastCard[];
  /** What the product owner recorded for it; undefined when nothing. */
  readonly recordedValue: number | undefined;
  /** Whether its goal was met; undefined when nobody said. */
  readonly goalMet?: GoalMet | undefined;
}

/** The part that is read together with the name of the sprint, for it may change after the sprint was closed. */
export type PastHeading = Pick<
  PastSprint,
  'sprintId' | 'name' | 'startsOn' | 'importedAt' | 'recordedValue' | 'goalMet'
>;

/** The part that changes only when a sprint closes or is reopened. */
export type PastNumbers = Omit<PastSprint, Exclude<keyof PastHeading, 'sprintId'> | 'membersThen'>;

/** In the order of the headings. Sprints of which one part is missing are left out. */
export function wholePast(headings: readonly PastHeading[], numbers: readonly PastNumbers[]): PastSprint[] {
  const numbersOf = new Map(numbers.map((of) => [of.sprintId, of]));
  return headings.flatMap((heading) => {
    const of = numbersOf.get(heading.sprintId);
    return of ? [{ ...of, ...heading }] : [];
  });
}

/** The part that projections read. */
export type PastTrace = Pick<
  PastSprint,
  'teamId' | 'endsOn' | 'commitmentPoints' | 'velocityPoints' | 'trace'
>;

/** The part that release forecasts of other teams learn from. */
export type PastTime = Pick<PastSprint, 'teamId' | 'velocityPoints' | 'workingDays' | 'memberDays'>;

/** As it is written. Name and days are the sprint's own. */
export type NewPastSprint = Omit<
  PastSprint,
  'name' | 'startsOn' | 'importedAt' | 'recordedValue' | 'goalMet' | 'membersThen'
> & {
  readonly workspaceId: string;
  readonly endsOn: Day;
  readonly recordedAt: Date;
  /** How each card went that was not dropped. Undefined: not known (an import). Goes with the details of the sprint. */
  readonly cardEvenings?: readonly CardEvenings[] | undefined;
};

/** The one number that the product owner records for a sprint, in any unit. */
export interface RecordedValue {
  readonly sprintId: string;
  readonly value: number;
  readonly byUserId: string;
  readonly at: Date;
}

type PastVerdict = Verdict | 'not-known';

/**
 * By today's rules. An import may leave out how much of the commitment was finished (then it is `not-known`), or
 * the surprise work (then the kept share alone decides).
 */
export function pastVerdict(
  { commitmentPoints, ratios }: Pick<PastSprint, 'commitmentPoints' | 'ratios'>,
  rules: VerdictRules,
): PastVerdict {
  if (commitmentPoints === 0) return 'no plan';
  const { keptShare, surpriseRatio } = ratios;
  if (!isDefined(keptShare)) return 'not-known';
  return verdictOf({ keptShare, surpriseRatio: isDefined(surpriseRatio) ? surpriseRatio : 0 }, rules).verdict;
}

/** A closed sprint with what was recorded for it. */
export type ValuedSprint = Pick<PastSprint, 'sprintId' | 'name' | 'startsOn' | 'endsOn' | 'recordedValue'>;
