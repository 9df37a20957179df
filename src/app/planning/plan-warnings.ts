/** What may be a slip in a plan. None of it keeps anybody from committing. Pure. */
import { isOnScale } from '../../sprint/scale.ts';
import { workingDaysOf } from '../../sprint/work-calendar.ts';
import { type CardLine, hasOwnKey } from '../cards/card-line.ts';
import type { SprintCard, Team } from '../team/team.ts';
import { titleAtHeart } from './card-paste.ts';
import type { PlanInput } from './plan-input.ts';

export type PlanWarning =
  | {
      readonly code: 'off-scale';
      readonly cardNumbers: readonly number[];
      readonly scale: readonly number[];
    }
  | { readonly code: 'alike'; readonly cardNumbers: readonly number[] }
  | { readonly code: 'no-owner'; readonly cardNumbers: readonly number[] }
  | { readonly code: 'no-card' | 'no-points' | 'no-working-day' };

export function planWarnings(cards: readonly CardLine[], team: Team, input: PlanInput): PlanWarning[] {
  const numbers = (some: readonly CardLine[]): number[] => some.map(({ number }) => number);
  const offScale = numbers(cards.filter(({ estimatePoints }) => !isOnScale(estimatePoints, team.scale)));
  const ownerless = numbers(cards.filter(({ ownerIds }) => ownerIds.length === 0));
  const alike = alikeCards(cards);
  const workingDays = workingDaysOf(team, input.startsOn, input.endsOn);
  const hasNoPoints = cards.length > 0 && cards.every(({ estimatePoints }) => estimatePoints === 0);
  return [
    ...(alike.length > 0 ? [{ code: 'alike', cardNumbers: alike } as const] : []),
    ...(offScale.length > 0
      ? [{ code: 'off-scale', cardNumbers: offScale, scale: team.scale } as const]
      : []),
    ...(ownerless.length > 0 ? [{ code: 'no-owner', cardNumbers: ownerless } as const] : []),
    ...(cards.length === 0 ? [{ code: 'no-card' } as const] : []),
    ...(hasNoPoints ? [{ code: 'no-points' } as const] : []),
    ...(workingDays.length === 0 ? [{ code: 'no-working-day' } as const] : []),
  ];
}

/** The numbers of cards that another one may be a copy of: with the same title, and no short names to tell them apart. */
export function alikeCards(cards: readonly Pick<SprintCard, 'number' | 'key' | 'title'>[]): number[] {
  const ofTitle = Map.groupBy(cards, ({ title }) => titleAtHeart(title));
  return [...ofTitle.values()]
    .filter((same) => same.length > 1 && !same.every(hasOwnKey))
    .flatMap((same) => same.map(({ number }) => number))
    .sort((a, b) => a - b);
}
