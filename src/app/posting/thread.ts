/** Replies that belong below a post. Each is a post of its own, owed from the moment when there is something to reply to. */
import { randomUUID } from 'node:crypto';
import type { Transaction } from '../ports/store.ts';
import type { PostKind } from './post-kinds.ts';
import type { Post, PostSubject, Recipient } from './posts.ts';

/** What goes into the thread of a post, by its kind. */
const BELOW_VERDICT = ['verdict-numbers', 'verdict-cards', 'verdict-notes'] as const;
const THREADS = {
  verdict: BELOW_VERDICT,
  'direct-verdict': BELOW_VERDICT,
} as const satisfies { readonly [Kind in PostKind]?: readonly PostKind[] };

type WithThread = { readonly kind: keyof typeof THREADS; readonly sprintId: string };

export function hasThread(subject: PostSubject): subject is WithThread {
  return subject.kind in THREADS;
}

/** Brings the sprint's verdict with its thread up to date in place, wherever it is; false when none is owed. */
export async function refreshVerdict(tx: Transaction, sprintId: string): Promise<boolean> {
  const verdict = await tx.read.postAbout(sprintId, 'verdict');
  if (!verdict) return false;
  for (const post of [verdict, ...(await tx.read.postsAbout(sprintId, 'direct-verdict'))]) {
    await tx.write.posts.refresh(post.id);
    await refreshThread(tx, post);
  }
  return true;
}

/**
 * Owes the thread of a message that is out what belongs there, and brings up to date what is there already. Parts that
 * had nothing to say may have now.
 *
 * @param post its words may be on their way; only what is out has a thread
 */
export async function refreshThread(
  tx: Transaction,
  { subject, workspaceId, postedAt, recipient: first }: Post,
): Promise<void> {
  if (!postedAt || !hasThread(subject)) return;
  const { sprintId } = subject;
  const place = 'userId' in first ? { userId: first.userId } : { channelId: postedAt.channelId };
  const recipient = { ...place, threadTs: postedAt.ts };
  for (const kind of THREADS[subject.kind]) {
    const parts = await tx.read.postsAbout(sprintId, kind);
    const part = parts.find((one) => one.state !== 'skipped' && isIn(one.recipient, recipient));
    if (part) await tx.write.posts.refresh(part.id);
    else
      await tx.write.posts.add([{ id: randomUUID(), workspaceId, recipient, subject: { kind, sprintId } }]);
  }
}

/** Timestamps are a conversation's own. */
function isIn(recipient: Recipient, thread: Recipient): boolean {
  const isSamePerson = 'userId' in recipient && 'userId' in thread && recipient.userId === thread.userId;
  const isSameKind = isSamePerson || ('channelId' in recipient && 'channelId' in thread);
  return isSameKind && recipient.threadTs === thread.threadTs;
}
