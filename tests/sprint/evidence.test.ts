import { describe, expect, it } from 'vitest';
import type { Card, CardFact } from '../../src/sprint/card.ts';
import {
  whatWentWell,
  whenPulledIn,
  whereEstimatesWereOff,
  whereSurpriseCame,
  whyUnfinished,
} from '../../src/sprint/evidence.ts';
import { ledgerOf } from '../../src/sprint/ledger.ts';

// Worked by hand; there is no published source for these rules.

const DAYS = ['2026-11-02', '2026-11-03', '2026-11-04', '2026-11-05', '2026-11-06'];
const [MON, TUE, WED, THU, FRI] = DAYS as [string, string, string, string, string];

function planned(id: string, estimatePoints: number): Card {
  return { id, key: id, title: id, estimatePoints, origin: 'planned', enteredOn: MON, ownerIds: [] };
}

function pulledIn(id: string, estimatePoints: number, enteredOn: string): Card {
  return { ...planned(id, estimatePoints), origin: 'pulled-in', enteredOn };
}

let order = 0;
function left(
  cardId: string,
  day: string,
  leftPoints: number,
  more: { worked?: number; surprise?: number } = {},
) {
  order += 1;
  const { worked: workedPoints, surprise: surprisePoints = 0 } = more;
  return {
    kind: 'answer',
    cardId,
    day,
    order,
    memberId: 'm',
    leftPoints,
    workedPoints,
    surprisePoints,
  } as const;
}

function drop(cardId: string, day: string): CardFact {
  order += 1;
  return { kind: 'drop', cardId, day, order, memberId: 'm' };
}

const why = (cards: readonly Card[], facts: readonly CardFact[]) =>
  whyUnfinished(ledgerOf(cards, facts), DAYS);

describe('why part of the commitment was not finished', () => {
  it('is not asked when everything committed was finished', () => {
    expect(why([planned('a', 3)], [left('a', TUE, 0)])).toEqual([]);
  });

  it('leads with cards that were blocked on two evenings or more, when they hold half of it', () => {
    const blocked = (cardId: string, day: string): CardFact => {
      order += 1;
      return { kind: 'blocked', cardId, day, order, memberId: 'm' };
    };
    const cards = [planned('a', 5), planned('b', 3), planned('c', 8)];
    const facts = [left('a', MON, 4), blocked('a', TUE), left('b', MON, 1), left('c', MON, 0)];
    expect(why(cards, facts)[0]).toEqual({
      code: 'blocked',
      cardId: 'a',
      cards: 1,
      cardDays: 4,
      points: 5,
      unfinishedPoints: 8,
    });
    expect(why(cards, facts).map(({ code }) => code)).not.toContain('one-card');
    // On the last day alone it is no cause.
    expect(
      why(cards, [left('a', MON, 4), left('b', MON, 1), left('c', MON, 0), blocked('a', FRI)])[0]?.code,
    ).toBe('one-card');
  });

  it('leads with the one card that holds at least half of it', () => {
    const facts = [left('a', WED, 6, { worked: 4, surprise: 2 }), left('b', TUE, 0), left('c', THU, 1)];
    expect(why([planned('a', 8), planned('b', 5), planned('c', 2)], facts)[0]).toEqual({
      code: 'one-card',
      cardId: 'a',
      points: 8,
      unfinishedPoints: 10,
      leftPoints: 6,
      surprisePoints: 2,
      driftPoints: 0,
    });
  });

  it('leads with pulled-in work when as much as half of it was worked there', () => {
    const cards = [planned('a', 5), planned('b', 5), pulledIn('c', 3, WED)];
    const facts = [left('a', TUE, 0), left('b', WED, 3), left('c', FRI, 0)];
    expect(why(cards, facts)[0]).toEqual({
      code: 'pulled-in-before',
      pulledInPoints: 3,
      unfinishedPoints: 5,
      from: WED,
    });
    expect(why(cards, [left('a', TUE, 0), left('b', WED, 3), left('c', FRI, 1)])[0]?.code).toBe('one-card');
  });

  it('leads with what was dropped when that is half of it', () => {
    const cards = [planned('a', 3), planned('b', 3), planned('c', 8)];
    const facts = [drop('a', WED), left('b', FRI, 1), left('c', THU, 0)];
    expect(why(cards, facts)[0]).toEqual({ code: 'dropped', cards: 1, points: 3, unfinishedPoints: 6 });
  });

  it('counts cards that nobody began', () => {
    const cards = [planned('a', 2), planned('b', 2), planned('c', 2), planned('d', 2), planned('e', 2)];
    const facts = [left('a', TUE, 0), left('b', THU, 1)];
    expect(why(cards, facts)).toEqual([
      { code: 'never-begun', cards: 3, points: 6, unfinishedPoints: 8 },
      { code: 'open-on-last-morning', cards: 4, of: 5 },
    ]);
    // Somebody has looked into a card of which they say that it is larger.
    const grown = left('c', THU, 4, { worked: 0, surprise: 2 });
    expect(why(cards, [...facts, grown]).map((cause) => ('cards' in cause ? cause.cards : 0))).toEqual([
      2, 4,
    ]);
  });

  it('counts the cards that were open on the last morning, those finished on that day too', () => {
    const cards = [planned('a', 2), planned('b', 2), planned('c', 2), planned('d', 2), planned('e', 2)];
    const facts = [left('a', THU, 0), left('b', FRI, 0), ...['c', 'd', 'e'].map((id) => left(id, THU, 1))];
    expect(why(cards, facts)).toEqual([{ code: 'open-on-last-morning', cards: 4, of: 5 }]);
  });

  it('compares what was worked with the commitment when nothing else explains it', () => {
    const cards = [planned('a', 5), planned('b', 3), planned('c', 4), planned('d', 4), planned('e', 5)];
    const facts = [
      left('a', TUE, 0),
      left('e', TUE, 0),
      left('b', TUE, 2),
      left('c', WED, 2),
      left('d', WED, 0),
    ];
    // Of 7 points not finished one card holds 4, which is more than half.
    expect(why(cards, facts)[0]?.code).toBe('one-card');
    const even = [
      planned('a', 5),
      ...['b', 'c', 'd'].map((id) => planned(id, 2)),
      planned('e', 5),
      planned('f', 5),
    ];
    const lateOnes = ['b', 'c', 'd'].map((id) => left(id, TUE, 1));
    const done = ['a', 'e', 'f'].map((id) => left(id, WED, 0));
    expect(why([...even, planned('g', 5)], [...lateOnes, ...done, left('g', THU, 0)])).toEqual([
      { code: 'worked-less', workedPoints: 23, commitmentPoints: 26 },
    ]);
  });
});

describe('where surprise work came from', () => {
  const surprised = (amounts: Readonly<Record<string, number>>) =>
    Object.entries(amounts).map(([id, surprise]) => left(id, TUE, 1 + surprise, { worked: 0, surprise }));

  it('is nothing without any', () => {
    expect(whereSurpriseCame(ledgerOf([planned('a', 1)], []))).toEqual([]);
  });

  it('is one card when that holds half of it', () => {
    const cards = [planned('a', 1), planned('b', 1)];
    expect(whereSurpriseCame(ledgerOf(cards, surprised({ a: 3, b: 1 })))).toEqual([
      { code: 'surprise-one-card', cardId: 'a', surprisePoints: 3, allPoints: 4 },
    ]);
  });

  it('is the large cards when those, at most half of all, hold nearly all of it', () => {
    const cards = [
      planned('a', 8),
      planned('b', 8),
      planned('c', 13),
      ...['d', 'e', 'f'].map((id) => planned(id, 2)),
    ];
    const facts = ['a', 'b', 'c'].map((id) => left(id, TUE, 20, { worked: 0, surprise: 2 }));
    expect(whereSurpriseCame(ledgerOf(cards, facts))).toEqual([
      { code: 'surprise-large-cards', sizePoints: 8, cards: 3, surprisePoints: 6, allPoints: 6 },
    ]);
  });

  it('is spread else', () => {
    const cards = ['a', 'b', 'c', 'd'].map((id) => planned(id, 1));
    expect(whereSurpriseCame(ledgerOf(cards, surprised({ a: 1, b: 1, c: 1 })))).toEqual([
      { code: 'surprise-spread', cards: 3, of: 4 },
    ]);
  });
});

describe('when work was pulled in', () => {
  it('is told apart: after everything committed was finished or dropped, or while it was open', () => {
    const cards = [planned('a', 3), planned('b', 3), pulledIn('c', 2, THU), pulledIn('d', 1, TUE)];
    const facts = [left('a', WED, 0), drop('b', TUE)];
    expect(whenPulledIn(ledgerOf(cards, facts), DAYS)).toEqual([
      { code: 'pulled-in-after', points: 2, allPoints: 3 },
    ]);
    expect(whenPulledIn(ledgerOf(cards, [left('a', FRI, 0)]), DAYS)).toEqual([
      { code: 'pulled-in-while-open', points: 3, allPoints: 3 },
    ]);
    expect(whenPulledIn(ledgerOf([planned('a', 3)], []), DAYS)).toEqual([]);
  });
});

describe('what else explains a missed commitment', () => {
  const four = ['a', 'b', 'c', 'd'].map((id) => planned(id, 3));

  it('is that cards grew by half of it or more, on cards that stayed in the sprint', () => {
    const facts = [
      left('a', TUE, 5, { worked: 1, surprise: 2 }),
      left('b', TUE, 0),
      left('c', THU, 0),
      left('d', THU, 2),
    ];
    expect(why(four, facts)).toContainEqual({
      code: 'grew',
      growthPoints: 3,
      surprisePoints: 2,
      driftPoints: 1,
      unfinishedPoints: 6,
    });
    expect(why(four, [...facts, drop('a', FRI)]).map(({ code }) => code)).not.toContain('grew');
  });

  it('is a fifth of the usual member-days off or away, and no less', () => {
    const facts = [left('a', TUE, 0), left('b', TUE, 0), left('c', THU, 2), left('d', THU, 2)];
    const whyIn = (memberDays: number) =>
      whyUnfinished(ledgerOf(four, facts), DAYS, { memberDays, usualMemberDays: 20 });
    expect(whyIn(16)).toEqual([{ code: 'days-off', daysOff: 4, of: 20 }]);
    expect(whyIn(16.5)[0]?.code).toBe('worked-less');
  });

  it('is that a plan changed, when cards came in for those that were dropped', () => {
    const cards = [...four, pulledIn('e', 3, WED)];
    const facts = [left('a', TUE, 0), left('b', TUE, 0), drop('c', WED), drop('d', WED)];
    expect(why(cards, facts)[0]).toEqual({
      code: 'plan-changed',
      droppedCards: 2,
      droppedPoints: 6,
      pulledInPoints: 3,
      unfinishedPoints: 6,
    });
    expect(why([...four, pulledIn('e', 2.5, WED)], facts)[0]?.code).toBe('dropped');
  });

  it('is that little was left of it, and then not that less was worked', () => {
    const facts = [left('a', TUE, 0), left('b', TUE, 0), left('c', THU, 1), left('d', THU, 1)];
    expect(why(four, facts)).toEqual([{ code: 'nearly-done', cards: 2, leftPoints: 2, unfinishedPoints: 6 }]);
  });
});

describe('where estimates were off', () => {
  const SCALE = [1, 2, 3, 5, 8, 13];

  it('is no card whose true size is within its size on the scale', () => {
    const states = ledgerOf([planned('a', 5)], [left('a', TUE, 0, { worked: 6 })]);
    expect(whereEstimatesWereOff(states, SCALE)).toEqual([]);
  });

  it('is one card when that is off by half of it, and else all that are off', () => {
    const cards = ['a', 'b', 'c'].map((id) => planned(id, 3));
    const sized = (amounts: Readonly<Record<string, number>>) =>
      Object.entries(amounts).map(([id, worked]) => left(id, TUE, 0, { worked }));
    expect(whereEstimatesWereOff(ledgerOf(cards, sized({ a: 8, b: 5, c: 3 })), SCALE)).toEqual([
      {
        code: 'estimates-one-card',
        cardId: 'a',
        estimatePoints: 3,
        sizePoints: 8,
        offPoints: 5,
        allPoints: 7,
      },
    ]);
    expect(whereEstimatesWereOff(ledgerOf(cards, sized({ a: 5, b: 5, c: 1 })), SCALE)).toEqual([
      { code: 'estimates-spread', cards: 3, of: 3, larger: 2, allPoints: 6 },
    ]);
  });
});

describe('what went well', () => {
  it('is when everything committed was finished, and that nothing grew', () => {
    const cards = [planned('a', 3), planned('b', 2)];
    expect(whatWentWell(ledgerOf(cards, [left('a', TUE, 0), left('b', WED, 0)]), DAYS)).toEqual([
      { code: 'all-finished', cards: 2, day: WED, daysLeft: 2 },
      { code: 'nothing-grew', cards: 2 },
    ]);
  });

  it('is not how little cards grew, when they grew by more than a tenth of the commitment', () => {
    const cards = [planned('a', 3), planned('b', 7)];
    const facts = [left('a', TUE, 1.5, { worked: 3 }), left('b', FRI, 0)];
    expect(whatWentWell(ledgerOf(cards, facts), DAYS)).toEqual([]);
  });

  it('is how little surprise work there was, when something grew', () => {
    const cards = [planned('a', 3), planned('b', 7)];
    const facts = [left('a', TUE, 1, { worked: 3, surprise: 1 }), left('b', FRI, 0)];
    expect(whatWentWell(ledgerOf(cards, facts), DAYS)).toEqual([
      { code: 'little-surprise', surprisePoints: 1, commitmentPoints: 10 },
    ]);
  });
});
