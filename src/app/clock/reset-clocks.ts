/** After a change of zone, prompt time or working days: what the clock does next with the open sprints. */
import { dayPlus } from '../../sprint/calendar.ts';
import type { Transaction } from '../ports/store.ts';
import type { Team } from '../team/team.ts';
import { dayAt, instantOf } from './local-time.ts';
import { firstPromptAt, lastCallAt } from './sprint-clock.ts';

export async function resetClocks(tx: Transaction, team: Team, now: Date): Promise<void> {
  for (const sprint of await tx.read.openSprintsOf(team.id)) {
    // A reopened sprint closes at the end of its 24 hours and asks nobody any more.
    if (sprint.closedAt !== undefined) continue;
    const today = dayAt(now, team.timeZone);
    const closesAtInstant = instantOf(sprint.endsOn, sprint.closesAt, team.timeZone);
    const moved = { ...sprint, closesAtInstant };
    const askedToday = (await tx.read.promptsOf([{ sprintId: sprint.id, day: today }])).some(
      ({ postId }) => postId,
    );
    await tx.write.sprints.update({
      ...moved,
      // A day that has been asked about is not asked about, nor reminded of, a second time.
      nextPromptAt: firstPromptAt(team, moved, askedToday ? dayPlus(today, 1) : today),
      lastCallAt: sprint.lastCallAt === undefined ? undefined : lastCallAt(moved),
    });
  }
}
