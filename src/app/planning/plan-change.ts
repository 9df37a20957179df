/** Corrections of a plan that was committed to: what may be corrected, and what is kept of it. */

export const PLAN_PARTS = {
  card: ['title', 'link', 'key', 'estimate'],
  sprint: ['goal', 'endsOn', 'closesAt', 'awayDays'],
} as const;

export type PlanPart = (typeof PLAN_PARTS)[keyof typeof PLAN_PARTS][number];

export interface PlanChange {
  readonly id: string;
  readonly sprintId: string;
  /** Undefined for a part of the sprint itself. */
  readonly cardId: string | undefined;
  readonly part: PlanPart;
  /** As texts: a title, an ISO day, `17:00`, points and days off and away as `3.5`; empty for none. */
  readonly was: string;
  readonly became: string;
  readonly changedBy: string;
  readonly changedAt: Date;
}
