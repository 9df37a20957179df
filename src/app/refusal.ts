/**
 * A refusal: the bot will not do what was asked, and says why and what to do. Its code is stable;
 * `src/words/refusals.ts` maps it to sentences.
 */
import type { Unclear } from './answering/understand-part.ts';
import type { InputProblem, Problem } from './input-problem.ts';
import type { UnreadableCalendar } from './ports/calendars.ts';

/** Commands whose example is in words. */
type CommandWithSpokenExample = 'drop' | 'blocked' | 'off' | 'cancel' | 'goal';

/** A card of the person, for an answer that they can send. */
export interface AnswerExample {
  /** How many cards they may be asked about. */
  readonly cardCount: number;
  readonly reference: string;
  readonly title: string;
  readonly leftPoints: number;
}

/** Every code with the details that its sentence needs. */
export interface RefusalDetails {
  'no-team-here': Record<never, never>;
  'set-up-in-channel': Record<never, never>;
  /** The bot can't see the channel: it is private, and the bot was not invited. */
  'channel-not-seen': Record<never, never>;
  'channel-archived': Record<never, never>;
  /** With another organisation, and nobody has said that the team's posts may go there. */
  'channel-shared': { readonly act: 'set-up' } | { readonly act: 'move'; readonly teamName: string };
  'no-team-of-yours': Record<never, never>;
  'several-teams': { readonly teamNames: readonly string[] };
  'not-a-member': {
    readonly teamName: string;
    /** Whether the person is the team's product owner, who may read its numbers without being a member. */
    readonly isProductOwner?: boolean;
    /** Everybody has left it. */
    readonly isDeserted?: true;
  };
  'not-a-facilitator': {
    readonly teamName: string;
    readonly facilitatorIds: readonly string[];
    readonly act: FacilitatorAct;
  };
  'not-a-value-keeper': {
    readonly teamName: string;
    readonly productOwnerId: string | undefined;
    readonly facilitatorIds: readonly string[];
  };
  'not-a-goal-keeper': {
    readonly teamName: string;
    readonly productOwnerId: string | undefined;
    readonly facilitatorIds: readonly string[];
  };
  'not-a-body-keeper': {
    readonly teamName: string;
    readonly productOwnerId: string | undefined;
    readonly facilitatorIds: readonly string[];
  };
  /** No other team that the person may read keeps work of that name. */
  'no-other-part': { readonly body: string };
  /** Names of the bodies of work that the team keeps. */
  'no-such-body': { readonly known: readonly string[] };
  /** Texts of those that the team is trying. */
  'no-such-experiment': { readonly open: readonly string[] };
  'experiment-over': { readonly text: string };
  /** The person belongs to another workspace. */
  outsider: Record<never, never>;
  'guest-set-up': Record<never, never>;
  'set-up-from-outside': Record<never, never>;
  /** The operator has named who may. `admins`: whoever administers the workspace is among them. */
  'set-up-left-to-others': { readonly admins: boolean };
  /** The person works on no team's cards: they may look after one. */
  'no-work-to-be-off': Record<never, never>;
  'nothing-stored': Record<never, never>;
  /** A team is moved to where it is asked, so not from direct messages. */
  'move-in-channel': Record<never, never>;
  'team-ended': { readonly teamName: string; readonly erasedOn: string };
  'team-not-ended': { readonly teamName: string };
  'team-is-here': { readonly teamName: string };
  /** The teams that the person facilitates. */
  'which-team-moves': { readonly teamNames: readonly string[] };
  /** The teams that the person is on, or is the product owner of. */
  'which-team-is-left': { readonly teamNames: readonly string[] };
  'channel-has-a-team': { readonly teamName: string };
  'bad-input': { readonly problems: readonly InputProblem[] };
  'no-sprint-running': Record<never, never>;
  'sprint-not-begun': { readonly sprintName: string; readonly startsOn: string };
  'sprint-over': { readonly sprintName: string; readonly state: 'closed' | 'cancelled' };
  'day-outside-sprint': {
    readonly sprintName: string;
    readonly day: string;
    readonly startsOn: string;
    readonly endsOn: string;
  };
  'day-not-come': { readonly day: string };
  'no-such-card': { readonly reference: string; readonly known: readonly string[] };
  'card-dropped': { readonly card: string };
  'card-not-finished': { readonly card: string };
  /** It can't be blocked. */
  'card-finished': { readonly card: string };
  'card-not-blocked': { readonly card: string };
  'already-owner': { readonly card: string };
  /** They facilitate and have no part in the team's work, so they are asked about no card. */
  'takes-no-cards': { readonly teamName: string };
  'card-not-dropped': { readonly card: string };
  'not-card-owner': { readonly card: string; readonly act: 'reopen' | 'block' | 'give' | 'release' };
  'too-many-cards': { readonly limit: number };
  'no-cards-of-yours': { readonly sprintName: string };
  'unclear-words': {
    readonly problems: readonly Unclear[];
    readonly example: AnswerExample;
  };
  'not-about-cards': {
    readonly example: AnswerExample | undefined;
    /** A command that was perhaps meant. */
    readonly near?: string;
  };
  'no-sprint-to-reopen': Record<never, never>;
  'nothing-to-export': { readonly teamName: string };
  'no-closed-sprint': { readonly teamName: string; readonly withVelocity: boolean };
  'no-such-sprint': { readonly reference: string; readonly known: readonly string[] };
  'sprint-not-closed': { readonly sprintName: string; readonly state: 'open' | 'cancelled' };
  'no-velocity': { readonly sprintName: string; readonly finishedPoints: number | undefined };
  /** Why a sprint can't be taken out of the history. */
  'sprint-stays': { readonly sprintName: string; readonly why: 'run-here' | 'named-baseline' };
  'days-taken': { readonly sprintName: string; readonly otherName: string };
  'reopen-too-late': { readonly sprintName: string; readonly until: string };
  'unknown-command': { readonly word: string; readonly near: string | undefined };
  'bad-argument': { readonly problem: Problem } & (
    | { readonly command: CommandWithSpokenExample; readonly example: undefined }
    /** What may follow the command word. */
    | { readonly command: string; readonly example: string }
  );
  'key-taken': { readonly key: string; readonly sprintName: string };
  /** The estimate of a card counts as committed and can't be corrected any more. */
  'estimate-is-fixed': {
    readonly card: string;
    readonly number: string;
    readonly why: 'answered' | 'first-day-over';
  };
  /** A sprint that was reopened closes again when it does. */
  'sprint-was-closed': { readonly sprintName: string };
  'no-draft': Record<never, never>;
  /** Since its preview was shown. */
  'plan-changed': Record<never, never>;
  'too-much-at-once': { readonly waitSeconds: number };
  /** Others are recording, and whoever is at it does not come to an end. */
  'held-up': Record<never, never>;
  /** The person's files of before. */
  'reading-yours': Record<never, never>;
  /** Files of so many others that no more may wait. */
  'reading-others': Record<never, never>;
  'sprint-changed': Record<never, never>;
  'answered-since': { readonly card: string };
  'file-unreadable': {
    /** Of the form, so that the refusal can be shown there. */
    readonly field: string;
    readonly fileName: string;
    readonly why: UnreadableFile;
  };
}

/** What only a facilitator may do. */
export type FacilitatorAct =
  | 'plan'
  | 'edit'
  | 'close'
  | 'cancel'
  | 'reopen'
  | 'undrop'
  | 'assign'
  | 'guests'
  | 'change-settings'
  | 'move'
  | 'end-team'
  | 'change-measures'
  | 'choose-baseline'
  | 'days-off'
  | 'watch'
  | 'try'
  | 'end-experiment'
  | 'import'
  | 'export';

/**
 * Why a file that somebody gave was not read. `not handed over`: the chat platform answered with something else;
 * `no answer`: it did not answer, or not in time; `too long`: reading it took longer, or more memory, than it may.
 */
export type UnreadableFile = 'too large' | 'too long' | 'not handed over' | 'no answer' | UnreadableCalendar;

export type RefusalCode = keyof RefusalDetails;

export class Refusal<Code extends RefusalCode = RefusalCode> extends Error {
  override readonly name = 'Refusal';
  readonly code: Code;
  readonly details: RefusalDetails[Code];

  constructor(code: Code, details: RefusalDetails[Code]) {
    super(code);
    this.code = code;
    this.details = details;
  }
}

/** Throws `bad-input` when there are problems. */
export function refuseIfAny(problems: readonly InputProblem[]): void {
  if (problems.length > 0) throw new Refusal('bad-input', { problems });
}
