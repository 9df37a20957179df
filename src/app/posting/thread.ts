/** Replies that belong below a post. Each is a post of its own, owed from the moment when there is something to reply to. */
import { randomUUID } from 'node:crypto';
import type { Transaction } from '../ports/store.ts';
import type { PostKind } from './post-kinds.ts';
import type { Post, PostSubject, Recipient } from './posts.ts';

/** What goes into the thread of a post, by its kind. */
const THREADS = {
  verdict: ['verdict-numbers', 'verdict-cards', 'verdict-notes'],
} as const satisfies { readonly [Kind in PostKind]?: readonly PostKind[] };

type WithThread = { readonly kind: keyof typeof THREADS; readonly sprintId: string };

export function hasThread(subject: PostSubject): subject is WithThread {
  return subject.kind in THREADS;
}

/** Brings the sprint's verdict with its thread up to date in place; false when none is owed. */
export async function refreshVerdict(tx: Transaction, sprintId: string): Promise<boolean> {
  const verdict = await tx.read.postAbout(sprintId, 'verdict');
  if (!verdict) return false;
  await tx.write.posts.refresh(verdict.id);
  await refreshThread(tx, verdict);
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
  { subject, workspaceId, postedAt }: Post,
): Promise<void> {
  if (!postedAt || !hasThread(subject)) return;
  const { kind: first, sprintId } = subject;
  const recipient = { channelId: postedAt.channelId, threadTs: postedAt.ts };
  for (const kind of THREADS[first]) {
    const part = await tx.read.postAbout(sprintId, kind);
    const isThere = part && part.state !== 'skipped' && isIn(part.recipient, recipient);
    if (isThere) await tx.write.posts.refresh(part.id);
    else
      await tx.write.posts.add([{ id: randomUUID(), workspaceId, recipient, subject: { kind, sprintId } }]);
  }
}

function isIn(recipient: Recipient, thread: { readonly threadTs: string }): boolean {
  return 'channelId' in recipient && recipient.threadTs === thread.threadTs;
}
