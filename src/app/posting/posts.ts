/**
 * Posts that the bot owes somebody. A post is recorded in the transaction that causes it and delivered
 * afterwards; what it says is made from the state at the time of delivery, so a post that is refreshed
 * is the same post updated in place.
 */
import type { Day } from '../../sprint/calendar.ts';
import type { AdviceQuestion } from '../advice/advice.ts';

/** What a post is about. */
export type PostSubject =
  | { readonly kind: 'daily-prompt'; readonly sprintId: string; readonly userId: string; readonly day: Day }
  | { readonly kind: 'reminder'; readonly sprintId: string; readonly userId: string; readonly day: Day }
  | { readonly kind: 'last-call'; readonly sprintId: string; readonly userId: string; readonly day: Day }
  | { readonly kind: 'team-set-up'; readonly teamId: string; readonly byUserId: string }
  | { readonly kind: 'plan'; readonly sprintId: string; readonly byUserId: string }
  | { readonly kind: 'verdict'; readonly sprintId: string }
  | { readonly kind: 'owner-needed'; readonly sprintId: string }
  | { readonly kind: 'shared-status'; readonly sprintId: string; readonly byUserId: string; readonly on: Day }
  | {
      readonly kind: 'shared-advice';
      readonly teamId: string;
      readonly byUserId: string;
      readonly on: Day;
      readonly question: AdviceQuestion;
    }
  | {
      readonly kind: 'cancelled';
      readonly sprintId: string;
      readonly byUserId: string;
      readonly reason: string;
    };

/** Where a post goes: a channel, or a person's direct messages. */
export type Recipient = { readonly channelId: string } | { readonly userId: string };

/** Where a delivered post stands. */
export interface PostedAt {
  readonly channelId: string;
  readonly ts: string;
}

/**
 * `pending` → `sending` (an attempt is under way, or its process died) → `sent`; `uncertain` when an
 * attempt ended without an answer, `skipped` when there was nothing to say any more, `dead` when the
 * platform will never take it.
 */
export type PostState = 'pending' | 'sending' | 'uncertain' | 'sent' | 'skipped' | 'dead';

export interface Post {
  /** Opaque; also the key by which a post is found again after an uncertain send. */
  readonly id: string;
  readonly workspaceId: string;
  readonly recipient: Recipient;
  readonly subject: PostSubject;
  readonly state: PostState;
  readonly postedAt: PostedAt | undefined;
  /** Rises whenever the post should be made anew. */
  readonly wantedVersion: number;
  /** The version that stands on the platform; 0 before the first delivery. */
  readonly sentVersion: number;
  /** When the first attempt began; where to look from after an uncertain send. */
  readonly firstAttemptAt: Date | undefined;
}

/** A post to be recorded and queued. */
export type NewPost = Pick<Post, 'id' | 'workspaceId' | 'recipient' | 'subject'>;
