/** Short ways to write cards and facts in the tests of the core. Checks nothing. */
import type { AnswerFact, Card, CardFact } from '../../src/sprint/card.ts';

export const MON = '2026-11-02';
export const TUE = '2026-11-03';
export const WED = '2026-11-04';
export const THU = '2026-11-05';
export const FRI = '2026-11-06';

/** A planned card of 5 points owned by ana and ben, with what is given instead. */
export function aCard(given: Partial<Card> = {}): Card {
  const id = given.id ?? 'card';
  return {
    id,
    key: `K-${id}`,
    title: `Card ${id}`,
    estimatePoints: 5,
    origin: 'planned',
    enteredOn: MON,
    ownerIds: ['ana', 'ben'],
    ...given,
  };
}

/** A fact whose order is its place in the list that `inOrder` makes of it. */
export type Loose<F> = Omit<F, 'order'>;

interface Said {
  readonly worked?: number;
  readonly left: number;
  readonly surprise?: number;
  readonly card?: string;
}

export function answer(day: string, memberId: string, said: Said): Loose<AnswerFact> {
  return {
    kind: 'answer',
    cardId: said.card ?? 'card',
    day,
    memberId,
    workedPoints: said.worked,
    leftPoints: said.left,
    surprisePoints: said.surprise ?? 0,
  };
}

export function reopen(day: string, card = 'card'): Loose<CardFact> {
  return { kind: 'reopen', cardId: card, day, memberId: 'fay' };
}

export function drop(day: string, card = 'card'): Loose<CardFact> {
  return { kind: 'drop', cardId: card, day, memberId: 'fay' };
}

export function undrop(day: string, card = 'card'): Loose<CardFact> {
  return { kind: 'undrop', cardId: card, day, memberId: 'fay' };
}

export function blocked(day: string, card = 'card'): Loose<CardFact> {
  return { kind: 'blocked', cardId: card, day, memberId: 'fay' };
}

export function moving(day: string, card = 'card'): Loose<CardFact> {
  return { kind: 'moving', cardId: card, day, memberId: 'fay' };
}

/** The facts as recorded one after another. */
export function inOrder(...facts: readonly Loose<CardFact>[]): CardFact[] {
  return facts.map((fact, i) => ({ ...fact, order: i + 1 }) as CardFact);
}
