/** Keeps who corrected what in a plan and when, and brings up to date what was posted about it. */
import { randomUUID } from 'node:crypto';
import type { Transaction } from '../ports/store.ts';
import { refreshVerdict } from '../posting/thread.ts';
import type { Sprint } from '../team/team.ts';
import type { PlanChange } from './plan-change.ts';

/** Records what differs. */
export async function recordPlanChanges(
  tx: Transaction,
  sprint: Pick<Sprint, 'id'>,
  changed: Pick<PlanChange, 'cardId' | 'changedBy' | 'changedAt'>,
  parts: readonly Pick<PlanChange, 'part' | 'was' | 'became'>[],
): Promise<PlanChange[]> {
  const changes = parts
    .filter(({ was, became }) => was !== became)
    .map((part) => ({ id: randomUUID(), sprintId: sprint.id, ...changed, ...part }));
  if (changes.length === 0) return [];
  await tx.write.sprints.recordPlanChanges(changes);
  const plan = await tx.read.postAbout(sprint.id, 'plan');
  if (plan) await tx.write.posts.refresh(plan.id);
  await refreshVerdict(tx, sprint.id);
  return changes;
}
