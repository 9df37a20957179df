/**
 * Posts that the bot owes somebody. A post is recorded in the transaction that causes it and delivered
 * afterwards; what it says is made from the state at the time of delivery, so a post that is refreshed
 * is the same post updated in place.
 */
import type { Day } from '../../sprint/calendar.ts';
import type { AdviceQuestion } from '../advice/advice.ts';

/** Everything that a post may be about. */
export interface SubjectFields {
  readonly sprintId: string;
  readonly teamId: string;
  /** The member whose day it is. */
  readonly userId: string;
  readonly day: Day;
  /** The person who caused it. */
  readonly byUserId: string;
  /** The day as of which it was shared. */
  readonly on: Day;
  /** Or the name of a sprint that is no more, what somebody was made on the team, or what was changed about it. */
  readonly reason: string;
  readonly question: AdviceQuestion;
  readonly cardIds: readonly string[];
}

/** What a post is about: its kind, and the fields that the kind needs. `post-kinds.ts` declares the kinds. */
export type PostSubject = { readonly kind: string } & Partial<SubjectFields>;

/** Where a post goes: a channel or a person's direct messages, there perhaps into the thread of a message. */
export type Recipient = ({ readonly channelId: string } | { readonly userId: string }) & {
  readonly threadTs?: string;
};

/** Where a delivered post is. */
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
  /** The message that this one is sent in place of, since that one can't be changed any more. */
  readonly replaces: PostedAt | undefined;
  /** Rises whenever the post should be made again. */
  readonly wantedVersion: number;
  /** The version that is on the platform; 0 before the first delivery. */
  readonly sentVersion: number;
  /** When the first attempt began; where to look from after an uncertain send. */
  readonly firstAttemptAt: Date | undefined;
}

/** A post to be recorded and queued; `channelPost` and `directPost` make it. */
export type NewPost = Pick<Post, 'id' | 'workspaceId' | 'recipient' | 'subject'>;
