/**
 * What the clock says of a running sprint by itself: to facilitators who want it the morning digest, and a word when the
 * load signal turns or a ratio crosses its ceiling; to a channel that wants it a line at the end of the week.
 */
import { type Day, dayPlus } from '../../sprint/calendar.ts';
import { isLastOfWeek, memberShareOf, teamShareOf } from '../../sprint/work-calendar.ts';
import type { Claiming } from '../in-portions.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { DueWatch } from '../ports/locks.ts';
import type { Transaction } from '../ports/store.ts';
import { channelPost, directPost } from '../posting/post-kinds.ts';
import type { NewPost } from '../posting/posts.ts';
import { todayOf } from '../team/place.ts';
import { isWatched, type Member, wantsDigest } from '../team/team.ts';
import { statusContent } from '../watching/status-content.ts';
import { newWords } from '../watching/watch.ts';
import { instantOf, type TimeOfDay } from './local-time.ts';

/** Each makes a projection; a small batch keeps its transaction short. */
export const WATCHING_BATCH = 20;
/** How long after one look the next one comes, unless a digest is due before. */
const LOOK_AFTER_MS = 60 * 60_000;

/** Returns how many sprints were looked at. */
export async function watchDueSprints(
  { store, clock }: Pick<AppDependencies, 'store' | 'clock'>,
  { portion, claimed }: Claiming,
): Promise<number> {
  return store.transaction(async (tx) => {
    const now = clock.now();
    const due = await tx.claim.watchesDue(now, portion);
    claimed(due.map(({ sprint }) => sprint.id));
    const people = await tx.read.peopleOf(due.map(({ team }) => team.id));
    for (const found of due) await lookAt(tx, found, people.get(found.team.id) ?? [], now);
    return due.length;
  });
}

async function lookAt(tx: Transaction, due: DueWatch, people: readonly Member[], now: Date): Promise<void> {
  const { team, sprint, watch } = due;
  // A reopened sprint takes corrections; there is nothing to steer any more.
  if (!isWatched(team, people) || sprint.reopenedAt !== undefined) return tx.write.watches.end(sprint.id);
  const today = todayOf(team, now);
  const isRunning = today >= sprint.startsOn && today <= sprint.endsOn && teamShareOf(team, today) > 0;
  if (!isRunning) {
    const nextAt = instantOf(dayPlus(today, 1), '00:00', team.timeZone);
    return tx.write.watches.save({ ...watch, lastAt: now, nextAt });
  }
  const at = (time: TimeOfDay): Date => instantOf(today, time, team.timeZone);
  const isDue = (time: TimeOfDay): boolean => watch.lastAt < at(time) && at(time) <= now;
  const watchers = people.filter(wantsDigest).filter((person) => memberShareOf(team, person, today) > 0);
  // The verdict comes on the last day.
  const hasLine = team.weeklyLine && isLastOfWeek(team, today) && today < sprint.endsOn;
  const times = [...watchers.map(({ digestAt }) => digestAt), ...(hasLine ? [sprint.closesAt] : [])];
  const ahead = times.map((time) => at(time).getTime()).filter((instant) => instant > now.getTime());
  const nextAt = new Date(Math.min(now.getTime() + LOOK_AFTER_MS, ...ahead));
  const about = { sprintId: sprint.id, on: today };
  const line = channelPost(team, { kind: 'weekly-line', ...about });
  const found = await wordsOf(tx, due, people, watchers, today);
  const posts = [
    ...(hasLine && isDue(sprint.closesAt) ? [line] : []),
    ...watchers.flatMap(({ userId, digestAt }): NewPost[] => {
      // The digest says what a word would.
      if (isDue(digestAt)) return [directPost(team, userId, { kind: 'digest', ...about })];
      return found.words.map((word) =>
        directPost(team, userId, { kind: 'watch-word', ...about, reason: word }),
      );
    }),
  ];
  if (posts.length > 0) await tx.write.posts.add(posts);
  await tx.write.watches.save({ ...found.watch, lastAt: now, nextAt });
}

/** What is new for the watchers; without any at work, nothing is taken as said. */
async function wordsOf(
  tx: Transaction,
  { team, sprint, watch }: DueWatch,
  people: readonly Member[],
  watchers: readonly Member[],
  today: Day,
): Promise<ReturnType<typeof newWords>> {
  if (watchers.length === 0) return { words: [], watch };
  const status = await statusContent(tx, { team, members: people }, sprint, today);
  return newWords(watch, today, status.load, status.summary, team.thresholds);
}
