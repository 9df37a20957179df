/** What may be a slip in a plan. None of it keeps anybody from committing. Pure. */
import type { Day } from '../../sprint/calendar.ts';
import { isOnScale } from '../../sprint/scale.ts';
import { workingDaysOf } from '../../sprint/work-calendar.ts';
import { type CardLine, cardIdentity, hasOwnKey } from '../cards/card-line.ts';
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
      WorkBefore,
      'sprintName' | 'endsOn'
    >)
  | {
      readonly code: 'finished-before';
      readonly cardNumbers: readonly number[];
      readonly sprintName: string;
    }
  | { readonly code: 'no-card' | 'no-points' | 'no-working-day' };

/** The latest sprint that has begun and ends before the plan begins; its cards by `cardIdentity`. */
export interface WorkBefore {
  readonly sprintName: string;
  readonly endsOn: Day;
  /** None once it is closed. */
  readonly openCards: ReadonlySet<string>;
  readonly finishedCards: ReadonlySet<string>;
}

export function planWarnings(
  cards: readonly CardLine[],
  team: Team,
  input: PlanInput,
  before?: WorkBefore,
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
    ...workedOnBefore(cards, before),
    ...(ownerless.length > 0 ? [{ code: 'no-owner', cardNumbers: ownerless } as const] : []),
    ...(cards.length === 0 ? [{ code: 'no-card' } as const] : []),
    ...(hasNoPoints ? [{ code: 'no-points' } as const] : []),
    ...(workingDays.length === 0 ? [{ code: 'no-working-day' } as const] : []),
  ];
}

/**
 * What is left of those in work is not known yet, and nothing is left of those that are finished, unless only their titles are the
 * same: some work comes again each sprint. Cards of 0 points can't be planned with too many.
 */
function workedOnBefore(cards: readonly CardLine[], before: WorkBefore | undefined): PlanWarning[] {
  if (!before) return [];
  const { sprintName, endsOn, openCards, finishedCards } = before;
  const withPoints = cards.filter(({ estimatePoints }) => estimatePoints > 0);
  const numbersOf = (some: readonly CardLine[]) => some.map(({ number }) => number);
  const open = numbersOf(withPoints.filter((card) => openCards.has(cardIdentity(card))));
  const finished = numbersOf(
    withPoints.filter((card) => hasOwnKey(card) && finishedCards.has(cardIdentity(card))),
  );
  return [
    ...(open.length > 0 ? [{ code: 'still-in-work', cardNumbers: open, sprintName, endsOn } as const] : []),
    ...(finished.length > 0 ? [{ code: 'finished-before', cardNumbers: finished, sprintName } as const] : []),
  ];
}

/**
 * The numbers of cards that another one may be a copy of: with the same title, and no short names to tell them apart.
 *
 * @param of those that are asked about; the others that are alike don't count
 */
export function alikeCards<Card extends Pick<SprintCard, 'number' | 'key' | 'title'>>(
  cards: readonly Card[],
  of: readonly Pick<Card, 'number'>[] = cards,
): number[] {
  const asked = new Set(of.map(({ number }) => number));
  const ofTitle = Map.groupBy(cards, ({ title }) => titleAtHeart(title));
  return [...ofTitle.values()]
    .filter(
      (same) => same.length > 1 && !same.every(hasOwnKey) && same.some(({ number }) => asked.has(number)),
    )
    .flatMap((same) => same.map(({ number }) => number))
    .sort((a, b) => a - b);
}
