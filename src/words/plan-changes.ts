/** Corrections of a plan in words. */

import type { CardLine } from '../app/cards/card-line.ts';
import { dayAt } from '../app/clock/local-time.ts';
import type { ChangedHands, CorrectedPlan, ListedPlanChange } from '../app/planning/listed-plan-changes.ts';
import type { SprintHeading } from '../app/team/team.ts';
import { dayName } from './amounts.ts';
import { cardNameIn } from './cards.ts';
import type { Form } from './language.ts';
import { people, person } from './people.ts';
import { inForm, Markup, mrkdwn } from './say.ts';

interface ChangedPlan {
  readonly team: SprintHeading['team'];
  readonly cards: readonly CardLine[];
  readonly planChanges: readonly ListedPlanChange[];
}

/** `The plan was changed on Wed 4 Nov and Fri 6 Nov`, in mrkdwn */
export function planChangedTitle({ team, planChanges }: ChangedPlan): string {
  const days = planChanges.map(({ changedAt }) => dayAt(changedAt, team.timeZone));
  return mrkdwn('plan-changed', { days: [...new Set(days)].map(dayName) });
}

/** What is said to the channel: that a card nobody had was taken is no change of the plan. */
export function changesForTeam<Plan extends ChangedPlan>(plan: Plan): Plan {
  const planChanges = plan.planChanges.filter((change) => change.part !== 'owners' || change.how !== 'first');
  return { ...plan, planChanges };
}

/**
 * A line for each change, in mrkdwn, and one for each card that changed hands, without names; of a change that was taken
 * back nothing is left to say.
 */
export function planChangeLines({ planChanges, cards }: ChangedPlan): string[] {
  const hands = planChanges.filter((change) => change.part === 'owners');
  const corrections = planChanges.filter((change) => change.part !== 'owners');
  return [
    ...corrections.map((change) => correctionWords(change, cards)),
    ...[...Map.groupBy(hands, ({ cardId }) => cardId)].map(([cardId, ofCard]) => {
      const isAlways = (way: ChangedHands['how']): boolean => ofCard.every(({ how }) => how === way);
      const how = isAlways('joined') ? 'joined' : isAlways('left') ? 'left' : 'handed-over';
      return mrkdwn('plan-change-owners', { card: cardNameIn('mrkdwn', cardId, cards), how });
    }),
  ].map((words) => mrkdwn('plan-change-line', { change: new Markup(words) }));
}

/** The same with who changed it when. */
export function planChangeLinesBy({ planChanges, cards, team }: ChangedPlan): string[] {
  return planChanges.map((change) => {
    const words = change.part === 'owners' ? handsWords(change, cards) : correctionWords(change, cards);
    return mrkdwn('plan-change-line-by', {
      day: dayAt(change.changedAt, team.timeZone),
      person: person(change.changedBy),
      change: new Markup(words),
    });
  });
}

/** Doesn't say whose it was: that somebody left the team is theirs to say. */
function handsWords({ cardId, how, newOwnerIds }: ChangedHands, cards: readonly CardLine[]): string {
  return mrkdwn('plan-change-owners-by', {
    card: cardNameIn('mrkdwn', cardId, cards),
    how: how === 'left' ? 'left' : how === 'joined' ? 'joined' : 'given',
    owners: people(newOwnerIds),
  });
}

/** `LP-1 Tide was called “Tides”` */
export function correctionWords(
  { part, was, became, cardId }: CorrectedPlan,
  cards: readonly CardLine[],
  form: Form = 'mrkdwn',
): string {
  const words = inForm(form);
  const change = was === '' ? 'added' : became === '' ? 'removed' : 'changed';
  const card = cardNameIn(form, cardId ?? '', cards);
  switch (part) {
    case 'undrop':
      return words('plan-change-undrop', { card });
    case 'title':
      return words('plan-change-title', { card, was });
    case 'link':
      return words('plan-change-link', { card, change });
    case 'key':
      return words('plan-change-key', { card, change, was, became });
    case 'estimate':
      return words('plan-change-estimate', { card, was: Number(was), became: Number(became) });
    case 'goal':
      return words('plan-change-goal', { change, was });
    case 'endsOn':
      return words('plan-change-ends', { was, became });
    case 'closesAt':
      return words('plan-change-closes', { was, became });
    case 'awayDays':
      return words('plan-change-away-days', { was: Number(was), became: Number(became) });
  }
}
