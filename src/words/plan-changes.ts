/** Corrections of a plan in words. */

import type { CardLine } from '../app/cards/card-line.ts';
import { dayAt } from '../app/clock/local-time.ts';
import type { ListedPlanChange } from '../app/planning/plan-change.ts';
import type { SprintHeading } from '../app/team/team.ts';
import { dayName } from './amounts.ts';
import { linkedCardName } from './cards.ts';
import { person } from './people.ts';
import { Markup, mrkdwn } from './say.ts';

export interface ChangedPlan {
  readonly team: SprintHeading['team'];
  readonly cards: readonly CardLine[];
  readonly planChanges: readonly ListedPlanChange[];
}

/** `The plan was changed on Wed 4 Nov and Fri 6 Nov`, in mrkdwn */
export function planChangedTitle({ team, planChanges }: ChangedPlan): string {
  const days = planChanges.map(({ changedAt }) => dayAt(changedAt, team.timeZone));
  return mrkdwn('plan-changed', { days: [...new Set(days)].map(dayName) });
}

/** A line for each change, in mrkdwn; of a change that was taken back nothing is left to say. */
export function planChangeLines(plan: ChangedPlan): string[] {
  return plan.planChanges.map((change) =>
    mrkdwn('plan-change-line', { change: new Markup(changeWords(change, plan.cards)) }),
  );
}

/** The same with who changed it when. */
export function planChangeLinesBy(plan: ChangedPlan): string[] {
  return plan.planChanges.map((change) =>
    mrkdwn('plan-change-line-by', {
      day: dayAt(change.changedAt, plan.team.timeZone),
      person: person(change.changedBy),
      change: new Markup(changeWords(change, plan.cards)),
    }),
  );
}

function changeWords({ part, was, became, cardId }: ListedPlanChange, cards: readonly CardLine[]): string {
  const change = was === '' ? 'added' : became === '' ? 'removed' : 'changed';
  const found = cards.find((card) => card.cardId === cardId);
  const card = found === undefined ? '' : linkedCardName(found);
  switch (part) {
    case 'undrop':
      return mrkdwn('plan-change-undrop', { card });
    case 'title':
      return mrkdwn('plan-change-title', { card, was });
    case 'link':
      return mrkdwn('plan-change-link', { card, change });
    case 'key':
      return mrkdwn('plan-change-key', { card, change, was, became });
    case 'estimate':
      return mrkdwn('plan-change-estimate', { card, was: Number(was), became: Number(became) });
    case 'goal':
      return mrkdwn('plan-change-goal', { change, was });
    case 'endsOn':
      return mrkdwn('plan-change-ends', { was, became });
    case 'closesAt':
      return mrkdwn('plan-change-closes', { was, became });
  }
}
