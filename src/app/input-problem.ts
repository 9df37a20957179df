/** What may be wrong with what somebody typed, as codes with what their messages need. */
import type { ThresholdsProblem } from '../sprint/thresholds.ts';
import type { DaysOffProblem } from './days-off/read-days-off.ts';
import type { FarDay } from './far-day.ts';
import type { AwayDaysProblem } from './planning/away-days.ts';
import type { BadLine, CardLineProblem } from './planning/card-paste.ts';
import type { NumberProblem } from './read-number.ts';
import type { SettingProblem } from './team/settings.ts';

/** Something wrong with one field of a form, or one part of an event. */
export interface InputProblem {
  /** The field, e.g. `name`, `cards`, or `left:CARD_ID`. */
  readonly field: string;
  readonly problem: Problem;
}

export type Problem =
  | NumberProblem
  | SettingProblem
  | ThresholdsProblem
  | AwayDaysProblem
  | DaysOffProblem
  | CardLineProblem
  | TeamProblem
  | PlanProblem
  | CardProblem
  | AnswerInputProblem
  | QuestionProblem;

type TeamProblem =
  | { readonly code: 'team-name'; readonly most: number }
  | { readonly code: 'no-time-zone' }
  | {
      readonly code: 'prompt-too-late';
      readonly team: string;
      readonly latest: string;
      readonly zone: string;
    }
  | { readonly code: 'no-working-day' }
  | { readonly code: 'not-weekdays' }
  | { readonly code: 'no-members' }
  | { readonly code: 'no-facilitators' }
  | { readonly code: 'is-bot' | 'is-member-already'; readonly person: string }
  | {
      readonly code: 'is-deactivated' | 'is-outsider' | 'is-guest' | 'not-in-channel';
      readonly person: string;
    }
  /** In percent. */
  | { readonly code: 'no-percentage'; readonly most: number; readonly example: number };

type PlanProblem =
  | { readonly code: 'sprint-name'; readonly most: number }
  | { readonly code: 'goal-length'; readonly most: number }
  | { readonly code: 'no-first-day' }
  | { readonly code: 'no-last-day' }
  | { readonly code: 'days-reversed'; readonly first: string; readonly last: string }
  | { readonly code: 'sprint-too-long'; readonly most: number; readonly days: number }
  | { readonly code: 'sprint-over-already'; readonly last: string; readonly time: string }
  | {
      readonly code: 'overlap' | 'overlap-at-end';
      readonly sprint: string;
      readonly first: string;
      readonly last: string;
    }
  | { readonly code: 'bad-lines'; readonly lines: readonly BadLine[] }
  | { readonly code: 'too-many-cards'; readonly most: number; readonly cards: number };

type CardProblem =
  | { readonly code: 'card-title'; readonly most: number }
  | { readonly code: 'not-points'; readonly most: number }
  | { readonly code: 'which-card' }
  | { readonly code: 'one-card' }
  | { readonly code: 'which-people' }
  | { readonly code: 'which-guests' }
  | { readonly code: 'guests-at-once'; readonly most: number }
  | { readonly code: 'no-such-guest'; readonly typed: string }
  | { readonly code: 'first-card' }
  | { readonly code: 'card-key' }
  | { readonly code: 'goal-word' }
  | { readonly code: 'value-beside-file' }
  | { readonly code: 'try-text-missing' }
  | { readonly code: 'try-text-length'; readonly most: number }
  | { readonly code: 'try-already' }
  | { readonly code: 'try-many'; readonly most: number }
  | { readonly code: 'try-ratio' }
  | { readonly code: 'try-direction' }
  | { readonly code: 'drop-reason'; readonly most: number }
  | { readonly code: 'cancel-reason'; readonly most: number }
  | { readonly code: 'blocked-on'; readonly most: number }
  | { readonly code: 'blocked-finished'; readonly card: string };

type AnswerInputProblem =
  | { readonly code: 'note-length'; readonly most: number }
  | { readonly code: 'not-your-card' | 'nobodys-card'; readonly card: string; readonly number: string }
  | { readonly code: 'card-dropped'; readonly card: string; readonly day: string }
  | {
      readonly code: 'counted-before';
      readonly card: string;
      readonly number: string;
      readonly sprint: string;
    }
  | {
      readonly code: 'card-finished';
      readonly card: string;
      readonly number: string;
      readonly day: string;
    }
  | { readonly code: 'card-came-later'; readonly card: string; readonly day: string }
  | { readonly code: 'surprise-of-growth'; readonly growth: number; readonly most: number }
  | { readonly code: 'surprise-without-growth' }
  | { readonly code: 'surprise-without-any' }
  | { readonly code: 'surprise-of-shrinking'; readonly shrunk: number; readonly least: number }
  | { readonly code: 'growth-unexplained'; readonly growth: number }
  | { readonly code: 'answer-day' };

type QuestionProblem =
  | { readonly code: 'no-files' }
  | { readonly code: 'not-a-day'; readonly typed: string; readonly which: 'first' | 'last' }
  | { readonly code: 'sprint-gone-by'; readonly last: string }
  | FarDay
  | { readonly code: 'commitment-points'; readonly most: number }
  | { readonly code: 'backlog-points'; readonly most: number }
  | { readonly code: 'growth-points'; readonly most: number }
  | { readonly code: 'growth-reversed'; readonly least: number; readonly most: number }
  | { readonly code: 'body-name'; readonly most: number }
  | { readonly code: 'body-name-taken' }
  | { readonly code: 'body-new-name' }
  | { readonly code: 'body-turn'; readonly most: number }
  | { readonly code: 'bodies-many'; readonly most: number }
  | { readonly code: 'body-shares'; readonly share: number }
  | { readonly code: 'share-percent' }
  | { readonly code: 'share-twice' }
  | { readonly code: 'by-not-a-day'; readonly typed: string }
  | { readonly code: 'by-day-gone'; readonly startsOn: string }
  | { readonly code: 'by-twice' }
  | { readonly code: 'what-if-away-days'; readonly most: number }
  | { readonly code: 'what-if-points' }
  | { readonly code: 'what-if-nothing' }
  | { readonly code: 'no-colon' }
  | { readonly code: 'away-without-number'; readonly typed: string }
  | { readonly code: 'not-away-days'; readonly typed: string }
  | { readonly code: 'lone-word'; readonly typed: string }
  | { readonly code: 'commitment-twice' }
  | { readonly code: 'too-many-days' }
  | { readonly code: 'growth-twice' }
  | { readonly code: 'no-backlog' }
  | { readonly code: 'no-backlog-or-day' }
  | { readonly code: 'no-growth' };
