import { describe, expect, test } from 'vitest';
import { CardPlaces } from '../../src/sprint/ledger.ts';
import { aCard } from './sprint-facts.ts';

const IDS = ['a', 'b', 'c', 'd'];

function placesOf(ids: readonly string[], asked: readonly string[]): (number | undefined)[] {
  const places = new CardPlaces(ids.map((id) => aCard({ id })));
  return asked.map((id) => places.placeOf(id));
}

describe('a card is found after one in any place', () => {
  test('any card after any other, in any order of three', () => {
    const triples = IDS.flatMap((x) => IDS.flatMap((y) => IDS.map((z) => [x, y, z])));
    for (const asked of triples) {
      expect(placesOf(IDS, asked)).toEqual(asked.map((id) => IDS.indexOf(id)));
    }
  });

  test('in their order, round and round', () => {
    expect(placesOf(IDS, ['a', 'b', 'c', 'd', 'a', 'b'])).toEqual([0, 1, 2, 3, 0, 1]);
  });

  test('the only card, again and again', () => {
    expect(placesOf(['a'], ['a', 'a', 'a'])).toEqual([0, 0, 0]);
  });
});

describe('a card that is not in the list', () => {
  test('has no place, and leaves those of the others as they are', () => {
    expect(placesOf(IDS, ['x', 'b', 'x', 'b', 'c'])).toEqual([undefined, 1, undefined, 1, 2]);
  });

  test('has no place in a list of none', () => {
    expect(placesOf([], ['x', 'x'])).toEqual([undefined, undefined]);
  });
});
