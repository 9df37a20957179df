/** What may be a slip in a plan. None of it keeps anybody from committing. Pure. */
import type { Day } from '../../sprint/calendar.ts';
import { isOnScale } from '../../sprint/scale.ts';
import { workingDaysOf } from '../../sprint/work-calendar.ts';
import { type CardLine, hasOwnKey } from '../cards/card-line.ts';
import { cardIdentity } from '../closing/sprint-habits.ts';
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
  | ({ readonly code: 'still-in-work'; readonly cardNumbers: readonly number[] } & Pick<
      RunningWork,
      'sprintName' | 'endsOn'
    >)
  | { readonly code: 'no-card' | 'no-points' | 'no-working-day' };

/** A sprint that has begun and ends before the plan begins. */
export interface RunningWork {
  readonly sprintName: string;
  readonly endsOn: Day;
  /** By `cardIdentity`, of its open cards. */
  readonly openCards: ReadonlySet<string>;
}

export function planWarnings(
  cards: readonly CardLine[],
  team: Team,
  input: PlanInput,
  running?: RunningWork,
): PlanWarning[] {
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
    ...stillInWork(cards, running),
    ...(ownerless.length > 0 ? [{ code: 'no-owner', cardNumbers: ownerless } as const] : []),
    ...(cards.length === 0 ? [{ code: 'no-card' } as const] : []),
    ...(hasNoPoints ? [{ code: 'no-points' } as const] : []),
    ...(workingDays.length === 0 ? [{ code: 'no-working-day' } as const] : []),
  ];
}

/** What is left of these is not known yet; cards of 0 points can't be planned with too many. */
function stillInWork(cards: readonly CardLine[], running: RunningWork | undefined): PlanWarning[] {
  if (!running) return [];
  const { sprintName, endsOn, openCards } = running;
  const cardNumbers = cards
    .filter((card) => card.estimatePoints > 0 && openCards.has(cardIdentity(card)))
    .map(({ number }) => number);
  return cardNumbers.length === 0 ? [] : [{ code: 'still-in-work', cardNumbers, sprintName, endsOn }];
}

/** The numbers of cards that another one may be a copy of: with the same title, and no short names to tell them apart. */
export function alikeCards(cards: readonly Pick<SprintCard, 'number' | 'key' | 'title'>[]): number[] {
  const ofTitle = Map.groupBy(cards, ({ title }) => titleAtHeart(title));
  return [...ofTitle.values()]
    .filter((same) => same.length > 1 && !same.every(hasOwnKey))
    .flatMap((same) => same.map(({ number }) => number))
    .sort((a, b) => a - b);
}
