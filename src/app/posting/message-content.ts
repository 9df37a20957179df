/** What posts and forms say, as data; the chat adapter turns it into words and blocks. */
import type { Day } from '../../sprint/calendar.ts';
import type { SprintSummary } from '../../sprint/summary.ts';
import type { Advice } from '../advice/advice.ts';
import type { CardLine } from '../cards/card-line.ts';
import type { NotesHistory } from '../closing/note-history.ts';
import type { Sprint, Team } from '../team/team.ts';
import type { LoadOutlook } from '../watching/load-outlook.ts';
import type { PostKind } from './posts.ts';

/** What a member said about one card on the day. */
export interface AnsweredLine {
  readonly card: CardLine;
  readonly workedPoints: number;
  readonly leftPoints: number;
  readonly growthPoints: number;
  readonly surprisePoints: number;
  readonly driftPoints: number;
  readonly note: string;
}

export interface SprintHeading {
  readonly team: Pick<Team, 'id' | 'name' | 'timeZone'>;
  readonly sprint: Pick<
    Sprint,
    'id' | 'name' | 'goal' | 'startsOn' | 'endsOn' | 'closesAt' | 'closesAtInstant' | 'state'
  >;
}

/** The member's day: what is asked, or how it was met. */
export interface PromptContent extends SprintHeading {
  readonly userId: string;
  readonly day: Day;
  /** When it is the team's time to ask on that day. */
  readonly dueAt?: Date;
  readonly state: 'asked' | 'answered' | 'unchanged' | 'away' | 'over';
  /** The member's cards that were open that morning, in the order in which an answer in words counts them: 1, 2, 3, … */
  readonly cards: readonly CardLine[];
  readonly answered: readonly AnsweredLine[];
}

export interface VerdictContent extends SprintHeading {
  readonly summary: SprintSummary;
  /** What the team's history says about the notes. */
  readonly history: NotesHistory;
  readonly cards: readonly CardLine[];
  /** Reasons given for dropped cards, by card id. */
  readonly dropReasons: ReadonlyMap<string, string>;
  readonly cancelled: boolean;
  readonly reopened: 'never' | 'open' | 'closed-again';
  /** Until when the facilitator may reopen it; undefined when that is past or impossible. */
  readonly reopenUntil: Date | undefined;
  /** How many versions of the numbers have been posted. */
  readonly version: number;
}

/** The state of the sprint now. */
export interface StatusContent extends SprintHeading {
  readonly on: Day;
  readonly begun: boolean;
  readonly workingDaysLeft: number;
  readonly workingDays: number;
  readonly summary: SprintSummary;
  readonly cards: readonly CardLine[];
  /** Answers with growth other than 0, latest first, without who said it. */
  readonly growth: readonly {
    readonly card: CardLine;
    readonly day: Day;
    readonly surprisePoints: number;
    readonly driftPoints: number;
    readonly note: string;
  }[];
  /** Members with open cards today and how many of them have met today's prompt. */
  readonly asked: number;
  readonly answered: number;
  readonly load: LoadOutlook;
}

export interface PlanContent extends SprintHeading {
  readonly commitmentPoints: number;
  readonly cards: readonly CardLine[];
  readonly byUserId: string;
}

/** What a post says, by its kind. */
interface PostContents {
  readonly 'daily-prompt': { readonly prompt: PromptContent };
  readonly reminder: { readonly prompt: PromptContent };
  readonly 'last-call': { readonly prompt: PromptContent };
  readonly 'team-set-up': {
    readonly team: Team;
    readonly memberIds: readonly string[];
    readonly facilitatorIds: readonly string[];
  };
  readonly plan: { readonly plan: PlanContent };
  readonly verdict: { readonly verdict: VerdictContent };
  readonly 'owner-needed': { readonly heading: SprintHeading; readonly cards: readonly CardLine[] };
  readonly 'shared-status': { readonly status: StatusContent; readonly byUserId: string };
  readonly 'shared-advice': { readonly advice: Advice; readonly byUserId: string };
  readonly cancelled: {
    readonly verdict: VerdictContent;
    readonly byUserId: string;
    readonly reason: string;
  };
}

/** What a post of the kind says. */
export type ContentOf<Kind extends PostKind> = Kind extends PostKind
  ? { readonly kind: Kind } & PostContents[Kind]
  : never;
export type MessageContent = ContentOf<PostKind>;
