import { describe, expect, test } from 'vitest';
import { blockedCardDays, currentBlock } from '../../src/sprint/blocks.ts';
import type { CardFact } from '../../src/sprint/card.ts';
import type { CardState } from '../../src/sprint/ledger.ts';
import { cardState } from '../../src/sprint/ledger.ts';
import {
  aCard,
  answer,
  blocked,
  drop,
  FRI,
  inOrder,
  type Loose,
  MON,
  moving,
  reopen,
  THU,
  TUE,
  WED,
} from './sprint-facts.ts';

const WEEK = [MON, TUE, WED, THU, FRI];

const withFacts = (...facts: Loose<CardFact>[]): CardState => cardState(aCard(), inOrder(...facts));

const blocksOf = (state: CardState) => state.blocks.map(({ since, until }) => [since, until]);

describe('a block', () => {
  test('lasts until the card is said to move again, and counts no evening of that day', () => {
    const state = withFacts(blocked(MON), moving(THU));
    expect(blocksOf(state)).toEqual([[MON, THU]]);
    expect(currentBlock(state)).toBeUndefined();
    expect(blockedCardDays([state], WEEK)).toBe(3);
  });

  test('lasts on while nothing ends it', () => {
    const state = withFacts(blocked(TUE));
    expect(currentBlock(state)).toMatchObject({ since: TUE, until: undefined });
    expect(blockedCardDays([state], WEEK)).toBe(4);
  });

  test.each([
    ['an answer', answer(WED, 'ana', { left: 4 })],
    ['the answer that finishes the card', answer(WED, 'ana', { left: 0 })],
    ['dropping the card', drop(WED)],
  ])('ends with %s', (_, fact) => {
    const state = withFacts(blocked(MON), fact);
    expect(blocksOf(state)).toEqual([[MON, WED]]);
    expect(blockedCardDays([state], WEEK)).toBe(2);
  });

  test('begins after an answer of the same day, and ends with one', () => {
    expect(blockedCardDays([withFacts(answer(MON, 'ana', { left: 4 }), blocked(MON))], [MON])).toBe(1);
    expect(blockedCardDays([withFacts(blocked(MON), answer(MON, 'ana', { left: 4 }))], [MON])).toBe(0);
  });

  test('ends with an answer that corrects an earlier one of the day', () => {
    const state = withFacts(answer(MON, 'ana', { left: 4 }), blocked(MON), answer(MON, 'ana', { left: 3 }));
    expect(blocksOf(state)).toEqual([[MON, MON]]);
  });

  test('does not end with an answer about an earlier day', () => {
    const state = withFacts(blocked(WED), answer(TUE, 'ana', { left: 4 }));
    expect(blocksOf(state)).toEqual([[WED, undefined]]);
  });

  test('is over once the card is finished, even by an answer about an earlier day', () => {
    const state = withFacts(blocked(WED), answer(TUE, 'ana', { left: 0 }));
    expect(blocksOf(state)).toEqual([[WED, WED]]);
  });

  test('goes on when it is said once more, or with the answer of the day, now on something else', () => {
    const again = withFacts(blocked(MON), blocked(WED));
    expect(blocksOf(again)).toEqual([[MON, undefined]]);
    expect(currentBlock(again)?.said.day).toBe(WED);
    const withAnswer = withFacts(blocked(MON), answer(WED, 'ana', { left: 4 }), blocked(WED));
    expect(blocksOf(withAnswer)).toEqual([[MON, undefined]]);
    expect(blockedCardDays([withAnswer], WEEK)).toBe(5);
  });

  test('is another one after the card has moved', () => {
    const state = withFacts(blocked(MON), moving(WED), blocked(WED));
    expect(blocksOf(state)).toEqual([
      [MON, WED],
      [WED, undefined],
    ]);
    const later = withFacts(blocked(MON), answer(TUE, 'ana', { left: 4 }), blocked(THU));
    expect(blocksOf(later)).toEqual([
      [MON, TUE],
      [THU, undefined],
    ]);
  });

  test('is not ended by reopening the card', () => {
    const state = withFacts(answer(MON, 'ana', { left: 0 }), reopen(TUE), blocked(TUE), reopen(WED));
    expect(blocksOf(state)).toEqual([[TUE, undefined]]);
  });

  test('counts on the days given only, of all cards together', () => {
    const one = withFacts(blocked(MON), moving(WED));
    const other = withFacts(blocked(TUE));
    expect(blockedCardDays([one, other], [MON, TUE])).toBe(3);
    expect(blockedCardDays([one, other], [])).toBe(0);
    expect(blockedCardDays([], WEEK)).toBe(0);
  });
});
