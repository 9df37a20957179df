/**
 * Delivers one post. The platform has no idempotency key, so the rule is: write down that an attempt
 * begins, send, write down that it ended. A process that finds an attempt begun and not ended looks for the
 * post's key on the platform before sending again. A doubled post is worse than one that comes late.
 */

import { adviceChart } from '../advice/advice-chart.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { PostImage } from '../ports/messenger.ts';
import { leaveIfGone } from '../team/leave-team.ts';
import { todayOf } from '../team/place.ts';
import { burndownImage } from '../watching/sprint-status.ts';
import { DeliveryFailure, type UndeliveredCause } from './delivery-failure.ts';
import { holdBack } from './hold-back.ts';
import type { ChartWanted } from './kind-declaration.ts';
import { mayStayAsItIs, postWords } from './post-kinds.ts';
import type { Post, PostedAt } from './posts.ts';
import { tellUndelivered } from './tell-undelivered.ts';
import { hasThread, refreshThread } from './thread.ts';

export type DeliveryOutcome =
  /** `refusedWith`: the platform will never take it, and why. */
  { readonly done: true; readonly refusedWith?: string } | { readonly retryAfterMs: number };

const DONE: DeliveryOutcome = { done: true };

/** How long to wait when another process is delivering the same post. */
const HELD_RETRY_MS = 2_000;

/**
 * How far before the first attempt to look for a post that may have got through: the clock may have been an hour ahead
 * then. To read a little more costs less than a doubled post.
 */
const LOOK_BACK_MS = 2 * 3_600_000;

/**
 * After this, an attempt sends no more: others take the post over a minute after it began, and the last call itself
 * may take half of that.
 */
const SENDING_LIMIT_MS = 25_000;

/**
 * Sends the post or updates it in place, as its state requires.
 *
 * @param isLast the queue won't try again
 * @param onDelivered hears of the post once what it says is on the platform
 * @returns done, or when to try again.
 * @throws DeliveryFailure `uncertain` or `not-sent`, for the queue to try again later.
 */
export async function deliverPost(
  deps: AppDependencies,
  postId: string,
  isLast = false,
  onDelivered: (post: Post) => void = () => undefined,
): Promise<DeliveryOutcome> {
  const beganMs = performance.now();
  const maySend = (): boolean => performance.now() - beganMs < SENDING_LIMIT_MS;
  const begun = await beginAttempt(deps, postId);
  if (begun === 'held') return { retryAfterMs: HELD_RETRY_MS };
  if (begun === 'nothing-to-do') return DONE;
  const { post, words } = begun;
  let { postedAt } = post;
  let isSending = false;
  let mayStandUnseen = mayStand(post);
  try {
    const image = words?.chart && (await chartImage(deps, words.chart));
    if (mayStandUnseen) postedAt = await findEarlierAttempt(deps, post);
    mayStandUnseen = false;
    if (!words) return await afterLook(deps, post, postedAt);
    if (await holdBack(deps, post, postedAt ? 'sent' : 'pending')) return DONE;
    const { workspaceId, recipient } = post;
    if (postedAt) {
      // An update may be repeated without harm, so nothing needs to be known about earlier ones.
      await deps.messenger.update(workspaceId, postedAt, words.content, image, maySend);
    } else {
      isSending = true;
      postedAt = await deps.messenger.post(
        workspaceId,
        recipient,
        keyOf(post),
        words.content,
        image,
        maySend,
      );
    }
    await endAttempt(deps, post, postedAt);
    onDelivered(post);
    return DONE;
  } catch (error) {
    if (!(error instanceof DeliveryFailure)) {
      await afterDefect(deps, post.id, postedAt, mayStandUnseen || isSending);
      throw error;
    }
    if (postedAt && isUnchangeable(post, postedAt, error))
      return await afterUnchangeable(deps, post, postedAt);
    // Before the failure is noted: a process that dies in between tries again, and nobody is told twice.
    const hasLeft = await leaveIfGone(deps, post, error);
    const cause = isThreadGone(post, error) ? undefined : undeliveredCause(error, isLast);
    if (cause && !hasLeft) await tellUndelivered(deps, post, cause);
    await noteFailure(deps, post.id, error, postedAt, mayStandUnseen);
    return outcomeOf(error);
  }
}

/** The message that is to be changed was deleted, is too old to be changed, or is another bot user's since a new installation. */
const UNCHANGEABLE = new Set(['message_not_found', 'edit_window_closed', 'cant_update_message']);

/** What was posted in a channel that the team has left is as good as gone once that channel is closed. */
function isUnchangeable(
  { recipient }: Post,
  postedAt: PostedAt,
  { code, because }: DeliveryFailure,
): boolean {
  const hasMoved = 'channelId' in recipient && recipient.channelId !== postedAt.channelId;
  return UNCHANGEABLE.has(code) || (hasMoved && because === 'place-gone');
}

/** What a post's present message is found by. One that was sent in place of another must not be taken for that one. */
function keyOf({ id, replaces }: Post): string {
  return replaces ? `${id} ${replaces.ts}` : id;
}

/** Without words: only to be looked for. */
type Begun = { post: Post; words: Awaited<ReturnType<typeof postWords>> };

/** Whether an attempt of which nobody knows the end may have got through. */
function mayStand({ postedAt, state }: Post): boolean {
  return postedAt === undefined && (state === 'sending' || state === 'uncertain');
}

async function beginAttempt(
  deps: AppDependencies,
  postId: string,
): Promise<Begun | 'held' | 'nothing-to-do'> {
  return deps.store.transaction(async (tx) => {
    const now = deps.clock.now();
    const post = await tx.claim.post(postId, now);
    if (!post) return whyNotClaimed(await tx.read.postById(postId));
    const words = await postWords(tx, post, now);
    if (words || mayStand(post)) return { post, words };
    // What is skipped must not stay posted: nobody would bring it up to date any more.
    await tx.write.posts.update(postId, { state: 'skipped' });
    return 'nothing-to-do';
  });
}

function whyNotClaimed(post: Post | undefined): 'held' | 'nothing-to-do' {
  const isOwed = post && post.sentVersion < post.wantedVersion && !['dead', 'skipped'].includes(post.state);
  return isOwed ? 'held' : 'nothing-to-do';
}

/**
 * Draws the chart outside of any transaction: it takes longer than a lock should. Undefined: there is nothing to draw.
 */
async function chartImage(deps: AppDependencies, wanted: ChartWanted): Promise<PostImage | undefined> {
  if ('advice' in wanted) return adviceChart(deps, wanted.advice);
  return burndownImage(deps, wanted, todayOf(wanted.team, deps.clock.now()));
}

async function findEarlierAttempt(deps: AppDependencies, post: Post): Promise<PostedAt | undefined> {
  if (post.firstAttemptAt === undefined) return undefined;
  const since = new Date(post.firstAttemptAt.getTime() - LOOK_BACK_MS);
  return deps.messenger.find(post.workspaceId, post.recipient, keyOf(post), since);
}

/** There is nothing to say any more. What was posted anyway is brought up to date next; else the post is skipped. */
async function afterLook(
  deps: AppDependencies,
  post: Post,
  postedAt: PostedAt | undefined,
): Promise<DeliveryOutcome> {
  await deps.store.single.updatePost(post.id, postedAt ? { state: 'sent', postedAt } : { state: 'skipped' });
  return postedAt ? { retryAfterMs: HELD_RETRY_MS } : DONE;
}

async function endAttempt(deps: AppDependencies, post: Post, postedAt: PostedAt): Promise<void> {
  const { wantedVersion: sentVersion } = post;
  const change = { state: 'sent', postedAt, sentVersion } as const;
  // Its replies are owed from the moment when there is something to reply to.
  const isNew = post.postedAt === undefined && hasThread(post.subject);
  if (!isNew) return deps.store.single.updatePost(post.id, change);
  await deps.store.transaction(async (tx) => {
    await tx.write.posts.update(post.id, change);
    await refreshThread(tx, { ...post, postedAt });
  });
}

/** A correction goes out as a new message, which is the place for further ones. Where nothing is wrong, the message stays. */
async function afterUnchangeable(
  deps: AppDependencies,
  post: Post,
  postedAt: PostedAt,
): Promise<DeliveryOutcome> {
  const isCorrection = post.wantedVersion > 1 && !mayStayAsItIs(post);
  if (!isCorrection) {
    await endAttempt(deps, post, postedAt);
    return DONE;
  }
  await deps.store.single.updatePost(post.id, { state: 'pending', replaces: postedAt });
  return { retryAfterMs: 0 };
}

/** @param mayStandUnseen an earlier attempt's post was not looked for yet, so the next attempt must. */
async function noteFailure(
  deps: AppDependencies,
  postId: string,
  failure: DeliveryFailure,
  postedAt: PostedAt | undefined,
  mayStandUnseen: boolean,
): Promise<void> {
  const asBefore = postedAt ? 'sent' : mayStandUnseen ? 'uncertain' : 'pending';
  const stateAfter = {
    'rate-limited': asBefore,
    'not-sent': asBefore,
    uncertain: 'uncertain',
    refused: 'dead',
    // Installing the bot again queues it again.
    'not-installed': asBefore,
  } as const;
  const state = stateAfter[failure.kind];
  await deps.store.single.updatePost(postId, {
    state,
    lastError: failure.code,
    ...(postedAt && { postedAt }),
  });
}

/** A reply goes with the message that it was below: where that is gone, nobody misses it. */
function isThreadGone({ recipient }: Post, { because }: DeliveryFailure): boolean {
  return recipient.threadTs !== undefined && because === 'place-gone';
}

/** Undefined while there is hope. */
function undeliveredCause({ kind, because }: DeliveryFailure, isLast: boolean): UndeliveredCause | undefined {
  if (kind === 'refused') return because;
  return isLast && (kind === 'uncertain' || kind === 'not-sent') ? 'tries-failed' : undefined;
}

/** @throws DeliveryFailure the failure, for the queue to try again later */
function outcomeOf(failure: DeliveryFailure): DeliveryOutcome {
  if (failure.kind === 'rate-limited') return { retryAfterMs: failure.retryAfterMs ?? 30_000 };
  if (failure.kind === 'refused') return { done: true, refusedWith: failure.code };
  if (failure.kind === 'not-installed') return DONE;
  throw failure;
}

/** What nobody foresaw must not look like an attempt under way: the next one need not wait until a minute is over. */
async function afterDefect(
  deps: AppDependencies,
  postId: string,
  postedAt: PostedAt | undefined,
  mayStandUnseen: boolean,
): Promise<void> {
  const state = postedAt ? 'sent' : mayStandUnseen ? 'uncertain' : 'pending';
  await deps.store.single
    .updatePost(postId, { state, lastError: 'defect', ...(postedAt && { postedAt }) })
    // Perhaps it is the database that fails. What is thrown is the defect itself.
    .catch(() => undefined);
}
