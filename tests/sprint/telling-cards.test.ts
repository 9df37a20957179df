import { describe, expect, it } from 'vitest';
import { statesOf } from '../../src/app/cards/card-line.ts';
import type { RecordedFact, SprintCard } from '../../src/app/team/team.ts';
import { DEFAULT_SCALE } from '../../src/sprint/scale.ts';
import { type TellingCard, tellingCards } from '../../src/sprint/telling-cards.ts';
import { card, fact } from '../slack/views/view-examples.ts';

const DAYS = ['2026-11-02', '2026-11-03', '2026-11-04', '2026-11-05', '2026-11-06'];

function told(cards: readonly SprintCard[], facts: readonly RecordedFact[]): TellingCard[] {
  return tellingCards(statesOf({ cards, facts }), DAYS, DEFAULT_SCALE);
}

function blocked(order: number, cardId: string, day: string): RecordedFact {
  const { workedPoints, leftPoints, surprisePoints, ...rest } = fact(order, {
    cardId,
    day,
  }) as RecordedFact & {
    kind: 'answer';
  };
  return { ...rest, kind: 'blocked' };
}

const PAIR = [card(1), card(2)];

describe('the cards that taught something', () => {
  it('are none in a sprint that went as planned', () => {
    expect(
      told(PAIR, [
        fact(1, { cardId: 'card-1', day: '2026-11-03' }),
        fact(2, { cardId: 'card-2', day: '2026-11-04' }),
      ]),
    ).toEqual([]);
  });

  it('are the one that grew most, surprise and drift together, and the one furthest off the scale', () => {
    const found = told(PAIR, [
      // 6 points are still a 5 on the scale; 9 are an 8.
      fact(1, { cardId: 'card-1', day: '2026-11-03', workedPoints: 6, leftPoints: 0, surprisePoints: 1 }),
      fact(2, { cardId: 'card-2', day: '2026-11-03', workedPoints: 9, leftPoints: 0, surprisePoints: 1 }),
    ]);
    expect(found).toEqual([
      {
        cardId: 'card-2',
        lessons: [
          { code: 'grew-most', surprisePoints: 1, driftPoints: 3 },
          { code: 'off-scale', estimatePoints: 5, sizePoints: 9 },
        ],
      },
    ]);
  });

  it('count one that turned out much smaller as off its estimate, and not as grown', () => {
    const found = told(PAIR, [
      fact(1, { cardId: 'card-1', day: '2026-11-03', workedPoints: 2, leftPoints: 0 }),
    ]);
    expect(found).toEqual([
      { cardId: 'card-1', lessons: [{ code: 'off-scale', estimatePoints: 5, sizePoints: 2 }] },
    ]);
  });

  it('are the one that was blocked for longest, from two evenings on', () => {
    const short = told(PAIR, [blocked(1, 'card-1', '2026-11-06')]);
    expect(short).toEqual([]);
    const long = told(PAIR, [blocked(1, 'card-1', '2026-11-05'), blocked(2, 'card-2', '2026-11-03')]);
    expect(long).toEqual([{ cardId: 'card-2', lessons: [{ code: 'blocked-longest', evenings: 4 }] }]);
  });

  it('are the one pulled in and worked on while committed cards stayed unfinished', () => {
    const late = card(3, { origin: 'pulled-in', estimatePoints: 3, enteredOn: '2026-11-04' });
    const done = fact(1, { cardId: 'card-3', day: '2026-11-05' });
    expect(told([...PAIR, late], [done])).toEqual([
      { cardId: 'card-3', lessons: [{ code: 'pulled-in-before', workedPoints: 3, openCards: 2 }] },
    ]);
    const rest = [1, 2].map((n) => fact(n + 1, { cardId: `card-${n}`, day: '2026-11-06' }));
    expect(told([...PAIR, late], [done, ...rest])).toEqual([]);
  });

  it('are the open one with least to go, when that is less than half of it', () => {
    const half = fact(1, { cardId: 'card-1', day: '2026-11-05', leftPoints: 2.5 });
    expect(told(PAIR, [half])).toEqual([]);
    expect(told(PAIR, [half, fact(2, { cardId: 'card-2', day: '2026-11-05', leftPoints: 1 })])).toEqual([
      { cardId: 'card-2', lessons: [{ code: 'nearly-done', leftPoints: 1, sizePoints: 5 }] },
    ]);
  });

  it('leave out the growth of a card that was dropped', () => {
    const grown = fact(1, { cardId: 'card-1', day: '2026-11-03', workedPoints: 9, leftPoints: 4 });
    const { workedPoints, leftPoints, surprisePoints, ...rest } = fact(2, {
      cardId: 'card-1',
      day: '2026-11-04',
    }) as RecordedFact & { kind: 'answer' };
    expect(told(PAIR, [grown, { ...rest, kind: 'drop' }])).toEqual([]);
  });
});
