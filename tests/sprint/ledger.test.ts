import { describe, expect, test } from 'vitest';
import { burndownOf } from '../../src/sprint/burndown.ts';
import {
  answersInForce,
  cardState,
  impliedWorkedPoints,
  ledgerOf,
  surpriseWithin,
} from '../../src/sprint/ledger.ts';
import {
  aCard,
  answer,
  blocked,
  drop,
  FRI,
  inOrder,
  MON,
  moving,
  reopen,
  THU,
  TUE,
  undrop,
  WED,
} from './sprint-facts.ts';

const card = aCard({ estimatePoints: 5 });

describe('a card nobody has answered about', () => {
  test('has everything left and has not grown', () => {
    expect(cardState(card, [])).toMatchObject({
      card,
      workedPoints: 0,
      leftPoints: 5,
      surprisePoints: 0,
      driftPoints: 0,
      trueSizePoints: 5,
      finished: false,
      finishedOn: undefined,
      droppedOn: undefined,
      entries: [],
    });
  });

  test('is not finished even when it was estimated at 0 points, before somebody says so', () => {
    const empty = aCard({ estimatePoints: 0 });
    expect(cardState(empty, []).finished).toBe(false);
    expect(cardState(empty, inOrder(answer(TUE, 'ana', { left: 0 }))).finished).toBe(true);
  });
});

describe('growth is worked + left − previous left', () => {
  test('the previous left starts at the estimate and then is the last one given', () => {
    const state = cardState(
      card,
      inOrder(
        answer(TUE, 'ana', { worked: 2, left: 4, surprise: 1 }),
        answer(WED, 'ana', { worked: 1, left: 3 }),
        answer(THU, 'ana', { worked: 2, left: 3, surprise: 0.5 }),
      ),
    );
    expect(state.entries.map((entry) => entry.previousLeftPoints)).toEqual([5, 4, 3]);
    expect(state.entries.map((entry) => entry.growthPoints)).toEqual([1, 0, 2]);
    expect(state.entries.map((entry) => entry.surprisePoints)).toEqual([1, 0, 0.5]);
    expect(state.entries.map((entry) => entry.driftPoints)).toEqual([0, 0, 1.5]);
    expect(state).toMatchObject({ workedPoints: 5, leftPoints: 3, surprisePoints: 1.5, driftPoints: 1.5 });
    expect(state.trueSizePoints).toBe(8);
  });

  test('a card that shrank has drift below 0', () => {
    const state = cardState(card, inOrder(answer(TUE, 'ana', { worked: 1, left: 2.5 })));
    expect(state).toMatchObject({ driftPoints: -1.5, surprisePoints: 0, trueSizePoints: 3.5 });
  });

  test('surprise that was not needed after all is taken back, never more than there was', () => {
    const state = cardState(
      card,
      inOrder(
        answer(TUE, 'ana', { worked: 0, left: 8, surprise: 2 }),
        answer(WED, 'ana', { worked: 1, left: 3, surprise: -2 }),
      ),
    );
    expect(state).toMatchObject({ surprisePoints: 0, driftPoints: -1 });
    const greedy = inOrder(
      answer(TUE, 'ana', { worked: 0, left: 8, surprise: 2 }),
      answer(WED, 'ana', { worked: 1, left: 3, surprise: -4 }),
    );
    expect(cardState(card, greedy)).toMatchObject({ surprisePoints: 0, driftPoints: -1 });
  });
});

describe('the quick way: only what is left', () => {
  test('worked is the decrease', () => {
    const state = cardState(card, inOrder(answer(TUE, 'ana', { left: 3.5 })));
    expect(state).toMatchObject({ workedPoints: 1.5, leftPoints: 3.5, surprisePoints: 0, driftPoints: 0 });
  });

  test('worked is 0 when it rose, and the rise is growth', () => {
    const state = cardState(card, inOrder(answer(TUE, 'ana', { left: 7, surprise: 2 })));
    expect(state).toMatchObject({ workedPoints: 0, leftPoints: 7, surprisePoints: 2, driftPoints: 0 });
    expect(impliedWorkedPoints(5, 7)).toBe(0);
  });
});

describe('several owners', () => {
  test('worked adds up and the latest left counts', () => {
    const state = cardState(
      card,
      inOrder(
        answer(TUE, 'ana', { worked: 1, left: 4 }),
        answer(TUE, 'ben', { worked: 1.5, left: 3, surprise: 0.5 }),
      ),
    );
    expect(state).toMatchObject({ workedPoints: 2.5, leftPoints: 3, surprisePoints: 0.5, driftPoints: 0 });
  });

  test('one owner correcting does not move behind the other', () => {
    const facts = inOrder(
      answer(TUE, 'ana', { worked: 1, left: 4 }),
      answer(TUE, 'ben', { worked: 1, left: 3 }),
      answer(TUE, 'ana', { worked: 2, left: 3.5, surprise: 0.5 }),
    );
    const state = cardState(card, facts);
    expect(state.entries.map((entry) => entry.answer.memberId)).toEqual(['ana', 'ben']);
    expect(state).toMatchObject({ workedPoints: 3, leftPoints: 3, surprisePoints: 0.5, driftPoints: 0.5 });
  });
});

describe('a correction', () => {
  const facts = inOrder(
    answer(TUE, 'ana', { worked: 1, left: 4 }),
    answer(WED, 'ana', { left: 6, surprise: 2 }),
    answer(TUE, 'ana', { worked: 1, left: 5, surprise: 1 }),
  );

  test("replaces the member's own answer for that day and card, and re-derives what follows", () => {
    const state = cardState(card, facts);
    expect(state.entries.map((entry) => entry.growthPoints)).toEqual([1, 1]);
    // On Wednesday only 1 point of growth is left to be surprise, although 2 were stated.
    expect(state.entries.map((entry) => entry.surprisePoints)).toEqual([1, 1]);
    expect(state).toMatchObject({ workedPoints: 1, leftPoints: 6, surprisePoints: 2, driftPoints: 0 });
  });

  test('a later quick answer is derived again from what is now left before it', () => {
    const quick = inOrder(
      answer(TUE, 'ana', { worked: 1, left: 4 }),
      answer(WED, 'ana', { left: 2 }),
      answer(TUE, 'ana', { worked: 2, left: 3 }),
    );
    expect(cardState(card, quick).entries.map((entry) => entry.workedPoints)).toEqual([2, 1]);
  });

  test('of a correction counts as well; the last one is in force', () => {
    const twice = [...facts, { ...inOrder(answer(TUE, 'ana', { worked: 5, left: 0 }))[0], order: 4 }];
    const inForce = answersInForce(twice as typeof facts);
    expect(inForce.map((fact) => [fact.day, fact.workedPoints])).toEqual([
      [TUE, 5],
      [WED, undefined],
    ]);
  });

  test("leaves another member's, another day's and another card's answer alone", () => {
    const others = inOrder(
      answer(TUE, 'ana', { left: 4 }),
      answer(TUE, 'ben', { left: 3 }),
      answer(WED, 'ana', { left: 2 }),
      answer(TUE, 'ana', { left: 1, card: 'other' }),
    );
    expect(answersInForce(others)).toHaveLength(4);
  });

  test('keeps members apart whose ids hold spaces', () => {
    const facts = inOrder(
      answer(TUE, 'b c', { left: 4, card: 'a' }),
      answer(TUE, 'c', { left: 3, card: 'a b' }),
    );
    expect(answersInForce(facts)).toHaveLength(2);
  });
});

test('an answer about an earlier day goes before those of later days', () => {
  const state = cardState(
    card,
    inOrder(answer(WED, 'ana', { left: 2 }), answer(TUE, 'ben', { worked: 1, left: 3 })),
  );
  expect(state.entries.map((entry) => entry.answer.day)).toEqual([TUE, WED]);
  expect(state).toMatchObject({ workedPoints: 2, leftPoints: 2, driftPoints: -1 });
});

test('the ledger goes by the order of the facts, not by the order of the list', () => {
  const facts = inOrder(
    answer(TUE, 'ana', { left: 4 }),
    answer(TUE, 'ana', { left: 1 }),
    drop(WED),
    drop(THU),
  );
  expect(cardState(card, facts.toReversed())).toEqual(cardState(card, facts));
  expect(cardState(card, facts.toReversed())).toMatchObject({ leftPoints: 1, droppedOn: WED });
});

describe('finished, reopened, dropped', () => {
  test('a card is finished when nothing is left', () => {
    const state = cardState(card, inOrder(answer(TUE, 'ana', { left: 1 }), answer(WED, 'ana', { left: 0 })));
    expect(state).toMatchObject({ finished: true, finishedOn: WED });
  });

  test('a reopened card is open although nothing is left, and keeps its numbers', () => {
    const state = cardState(card, inOrder(answer(TUE, 'ana', { left: 0 }), reopen(WED)));
    expect(state).toMatchObject({ finished: false, finishedOn: undefined, workedPoints: 5, leftPoints: 0 });
  });

  test('the next answer that leaves nothing finishes a reopened card, on the same day as well', () => {
    const sameDay = inOrder(answer(TUE, 'ana', { left: 0 }), reopen(TUE), answer(TUE, 'ana', { left: 0 }));
    expect(cardState(card, sameDay)).toMatchObject({ finished: true, finishedOn: TUE });
    const nextDay = inOrder(
      answer(TUE, 'ana', { left: 0 }),
      reopen(WED),
      answer(THU, 'ana', { worked: 1, left: 0, surprise: 1 }),
    );
    expect(cardState(card, nextDay)).toMatchObject({ finished: true, finishedOn: THU, surprisePoints: 1 });
  });

  test('correcting a day before the reopening does not undo the reopening', () => {
    const facts = inOrder(
      answer(TUE, 'ana', { left: 3 }),
      answer(WED, 'ana', { left: 0 }),
      reopen(THU),
      answer(TUE, 'ana', { left: 2 }),
    );
    expect(cardState(card, facts)).toMatchObject({ finished: false, leftPoints: 0, workedPoints: 5 });
  });

  test('a second reopening counts after an answer that followed the first', () => {
    const facts = inOrder(
      answer(TUE, 'ana', { left: 0 }),
      reopen(TUE),
      answer(WED, 'ana', { left: 0 }),
      reopen(WED),
    );
    expect(cardState(card, facts).finished).toBe(false);
  });

  test('a correction can open a card again', () => {
    const facts = inOrder(answer(TUE, 'ana', { left: 0 }), answer(TUE, 'ana', { left: 1 }));
    expect(cardState(card, facts)).toMatchObject({ finished: false, finishedOn: undefined });
  });

  test('a dropped card never counts as finished, whether it was dropped before or after', () => {
    const after = cardState(card, inOrder(answer(TUE, 'ana', { left: 0 }), drop(WED)));
    expect(after).toMatchObject({ finished: false, finishedOn: undefined, droppedOn: WED, workedPoints: 5 });
    const before = cardState(card, inOrder(drop(MON), answer(TUE, 'ana', { left: 0 })));
    expect(before).toMatchObject({ finished: false, droppedOn: MON });
  });
});

test('a drop that is taken back leaves the card as it was, until it is dropped again', () => {
  const facts = inOrder(answer(TUE, 'ana', { left: 2 }), drop(TUE), undrop(WED), drop(FRI));
  const back = cardState(card, facts.slice(0, 3));
  expect(back).toMatchObject({ droppedOn: undefined, finished: false, workedPoints: 3, leftPoints: 2 });
  expect(cardState(card, facts)).toMatchObject({
    droppedOn: FRI,
    outOfSprint: [
      { from: TUE, until: WED },
      { from: FRI, until: undefined },
    ],
  });
  const done = cardState(card, inOrder(answer(TUE, 'ana', { left: 0 }), drop(WED), undrop(WED)));
  expect(done).toMatchObject({ finished: true, finishedOn: TUE });
});

test('a burndown leaves a card out on the evenings on which it was dropped', () => {
  const facts = inOrder(answer(MON, 'ana', { left: 2 }), drop(TUE), undrop(FRI));
  const calendar = { workingDays: [1, 2, 3, 4, 5], daysOff: { full: [], half: [] } };
  const span = { sprintName: 'S', startsOn: MON, endsOn: FRI, calendar, members: [], today: undefined };
  const { days } = burndownOf([cardState(card, facts)], span);
  expect(days.map(({ leftPoints }) => leftPoints)).toEqual([2, 0, 0, 0, 2]);
});

test('a burndown counts the cards that were blocked in each evening that has come', () => {
  const stuck = (from: string, to: string) => inOrder(blocked(from), moving(to));
  const calendar = { workingDays: [1, 2, 3, 4, 5], daysOff: { full: [], half: [] } };
  const span = { sprintName: 'S', startsOn: MON, endsOn: FRI, calendar, members: [], today: THU };
  const states = [cardState(card, stuck(MON, WED)), cardState(card, stuck(TUE, FRI))];
  const { days } = burndownOf(states, { ...span, evenings: [MON, TUE, WED] });
  expect(days.map(({ blockedCards }) => blockedCards)).toEqual([1, 2, 1, 0, 0]);
});

test('ledgerOf gives each card its own facts, in the order of the cards', () => {
  const cards = [aCard({ id: 'b', estimatePoints: 8 }), aCard({ id: 'a', estimatePoints: 2 })];
  const states = ledgerOf(
    cards,
    inOrder(answer(FRI, 'ana', { left: 0, card: 'a' }), answer(FRI, 'ana', { left: 7, card: 'b' })),
  );
  expect(states.map((state) => [state.card.id, state.leftPoints])).toEqual([
    ['b', 7],
    ['a', 0],
  ]);
});

describe('how much of a growth may be surprise work', () => {
  test.each([
    // stated, growth, surprise so far, allowed
    [2, 3, 0, 2],
    [4, 3, 0, 3],
    [-1, 3, 2, 0],
    [1, 0, 5, 0],
    [-1, 0, 5, 0],
    [-2, -3, 5, -2],
    [-4, -3, 5, -3],
    [-3, -3, 1, -1],
    [-3, -3, 0, 0],
    [2, -3, 5, 0],
    [0, 3, 2, 0],
    [0, 0, 0, 0],
    [0, -3, 5, 0],
    [-0, 3, 0, 0],
  ])('of %s stated with growth %s and %s so far, %s', (stated, growth, soFar, allowed) => {
    expect(surpriseWithin(stated, growth, soFar)).toBe(allowed);
  });
});
