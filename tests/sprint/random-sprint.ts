/** Arbitrary scales, cards, facts and whole sprints for the property tests of the core. */
import fc from 'fast-check';
import type { Card, CardFact } from '../../src/sprint/card.ts';
import type { CardState } from '../../src/sprint/ledger.ts';
import { ledgerOf } from '../../src/sprint/ledger.ts';
import { DEFAULT_SCALE } from '../../src/sprint/scale.ts';
import { aCard, FRI, MON, THU, TUE, WED } from './sprint-facts.ts';

export const DAYS = [MON, TUE, WED, THU, FRI] as const;
export const OWNERS = ['ana', 'ben', 'cyd'] as const;

/** Multiples of 0.5 between the two ends. */
export function halves(least: number, most: number): fc.Arbitrary<number> {
  return fc.integer({ min: least * 2, max: most * 2 }).map((n) => n / 2);
}

/** The default scale, or an ascending one of a team's own. */
export const anyScale: fc.Arbitrary<readonly number[]> = fc.oneof(
  fc.constant(DEFAULT_SCALE),
  fc
    .uniqueArray(halves(0, 100), { minLength: 1, maxLength: 12 })
    .map((sizes) => sizes.sort((a, b) => a - b))
    .filter((sizes) => (sizes.at(-1) as number) > 0),
);

/** A number of points, most often small and sometimes as large as may be. */
export const anyPoints: fc.Arbitrary<number> = fc.oneof(
  { weight: 5, arbitrary: halves(0, 8) },
  { weight: 1, arbitrary: halves(0, 999.5) },
  { weight: 2, arbitrary: fc.constant(0) },
);

/** One fact without regard to whether the bot would let it through. */
function looseFact(cardId: string): fc.Arbitrary<Omit<CardFact, 'order'>> {
  const about = {
    cardId: fc.constant(cardId),
    day: fc.constantFrom(...DAYS),
    memberId: fc.constantFrom(...OWNERS),
  };
  return fc.oneof(
    {
      weight: 10,
      arbitrary: fc.record({
        kind: fc.constant('answer' as const),
        ...about,
        workedPoints: fc.option(anyPoints, { nil: undefined }),
        leftPoints: anyPoints,
        surprisePoints: fc.oneof(
          fc.constant(0),
          anyPoints,
          anyPoints.map((points) => 0 - points),
        ),
      }),
    },
    { weight: 1, arbitrary: fc.record({ kind: fc.constant('reopen' as const), ...about }) },
    {
      weight: 1,
      arbitrary: fc.record({ kind: fc.constantFrom('drop' as const, 'undrop' as const), ...about }),
    },
    {
      weight: 2,
      arbitrary: fc.record({ kind: fc.constantFrom('blocked' as const, 'moving' as const), ...about }),
    },
  );
}

/** Facts about one card in the order in which they were recorded, days in any order. */
function looseFacts(cardId: string): fc.Arbitrary<CardFact[]> {
  return fc
    .array(looseFact(cardId), { maxLength: 14 })
    .map((facts) => facts.map((fact, i) => ({ ...fact, order: i + 1 }) as CardFact));
}

interface RandomCard {
  readonly card: Card;
  readonly facts: readonly CardFact[];
}

export const anyCardWithFacts: fc.Arbitrary<RandomCard> = fc
  .record({ estimatePoints: anyPoints, origin: fc.constantFrom('planned' as const, 'pulled-in' as const) })
  .chain((given) =>
    fc.record({ card: fc.constant(aCard({ ...given, ownerIds: OWNERS })), facts: looseFacts('card') }),
  );

/** The states of a sprint's cards; from none to eight of them, sometimes without a commitment. */
export const anyStates: fc.Arbitrary<CardState[]> = fc
  .array(anyCardWithFacts, { maxLength: 8 })
  .map((cards) => cards.flatMap(({ card, facts }) => ledgerOf([card], facts)));
