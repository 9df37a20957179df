/** Corrections of a plan that was committed to: what may be corrected, and what is kept of it. */
import type { SprintRecords } from '../team/team.ts';

export const PLAN_PARTS = {
  card: ['title', 'link', 'key', 'estimate'],
  sprint: ['goal', 'endsOn', 'closesAt'],
} as const;

export type PlanPart = (typeof PLAN_PARTS)[keyof typeof PLAN_PARTS][number];

/** As it is listed: also that a drop was taken back, which is kept as a fact of the card. */
export type ListedPlanChange = Omit<PlanChange, 'part'> & { readonly part: PlanPart | 'undrop' };

/** With the drops of the sprint that were taken back, in order. */
export function withUndrops(
  changes: readonly PlanChange[],
  { facts }: Pick<SprintRecords, 'facts'>,
  sprintId: string,
): ListedPlanChange[] {
  const undrops = facts
    .filter(({ kind }) => kind === 'undrop')
    .map(
      ({ id, cardId, memberId, recordedAt }): ListedPlanChange => ({
        ...{ id, sprintId, cardId, part: 'undrop', was: '', became: '' },
        ...{ changedBy: memberId, changedAt: recordedAt },
      }),
    );
  return [...changes, ...undrops].sort((a, b) => a.changedAt.getTime() - b.changedAt.getTime());
}

export interface PlanChange {
  readonly id: string;
  readonly sprintId: string;
  /** Undefined for a part of the sprint itself. */
  readonly cardId: string | undefined;
  readonly part: PlanPart;
  /** As texts: a title, an ISO day, `17:00`, points as `3.5`; empty for none. */
  readonly was: string;
  readonly became: string;
  readonly changedBy: string;
  readonly changedAt: Date;
}
