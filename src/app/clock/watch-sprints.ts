/**
 * What the clock does for facilitators who want to hear of their sprints by themselves: the morning digest, and a word when
 * the load signal turns or a ratio crosses its ceiling.
 */
import { dayPlus } from '../../sprint/calendar.ts';
import { teamShareOf } from '../../sprint/work-calendar.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { DueWatch } from '../ports/locks.ts';
import type { Transaction } from '../ports/store.ts';
import { directPost } from '../posting/post-kinds.ts';
import type { NewPost } from '../posting/posts.ts';
import { todayOf } from '../team/place.ts';
import { type Member, wantsDigest } from '../team/team.ts';
import { statusContent } from '../watching/status-content.ts';
import { newWords } from '../watching/watch.ts';
import { instantOf, type TimeOfDay } from './local-time.ts';

/** Each makes a projection; a small batch keeps its transaction short. */
const BATCH = 20;
/** How long after one look the next one comes, unless a digest is due before. */
const LOOK_AFTER_MS = 60 * 60_000;

/** Returns how many sprints were looked at. */
export async function watchDueSprints({
  store,
  clock,
}: Pick<AppDependencies, 'store' | 'clock'>): Promise<number> {
  return store.transaction(async (tx) => {
    const now = clock.now();
    const due = await tx.claim.watchesDue(now, BATCH);
    const people = await tx.read.peopleOf(due.map(({ team }) => team.id));
    for (const found of due) await lookAt(tx, found, people.get(found.team.id) ?? [], now);
    return due.length;
  });
}

async function lookAt(tx: Transaction, due: DueWatch, people: readonly Member[], now: Date): Promise<void> {
  const { team, sprint, watch } = due;
  const watchers = people.filter(wantsDigest);
  // A reopened sprint takes corrections; there is nothing to steer any more.
  if (watchers.length === 0 || sprint.reopenedAt !== undefined) return tx.write.watches.end(sprint.id);
  const today = todayOf(team, now);
  const digestAt = ({ digestAt: time }: { readonly digestAt: TimeOfDay }): Date =>
    instantOf(today, time, team.timeZone);
  const ahead = watchers.map(digestAt).filter((at) => at > now);
  const times = {
    lastAt: now,
    nextAt: new Date(Math.min(now.getTime() + LOOK_AFTER_MS, ...ahead.map((at) => at.getTime()))),
  };
  const isRunning = today >= sprint.startsOn && today <= sprint.endsOn && teamShareOf(team, today) > 0;
  if (!isRunning) {
    const nextAt = instantOf(dayPlus(today, 1), '00:00', team.timeZone);
    return tx.write.watches.save({ ...watch, lastAt: now, nextAt });
  }
  const status = await statusContent(tx, { team, members: [...people] }, sprint, today);
  const found = newWords(watch, today, status.load, status.summary, team.thresholds);
  const posts = watchers.flatMap((watcher): NewPost[] => {
    const at = digestAt(watcher);
    const about = { sprintId: sprint.id, on: today };
    // The digest says what a word would.
    if (watch.lastAt < at && at <= now)
      return [directPost(team, watcher.userId, { kind: 'digest', ...about })];
    return found.words.map((word) =>
      directPost(team, watcher.userId, { kind: 'watch-word', ...about, reason: word }),
    );
  });
  if (posts.length > 0) await tx.write.posts.add(posts);
  await tx.write.watches.save({ ...found.watch, ...times });
}
