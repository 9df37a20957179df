import { describe, expect, test } from 'vitest';
import type { AnswerInput } from '../../src/sprint/check-answer.ts';
import { growthOf, placeInLedger, whyNotAnswer, whyNotAnswerable } from '../../src/sprint/check-answer.ts';
import { aCard, answer, drop, FRI, inOrder, reopen, THU, TUE, WED } from './sprint-facts.ts';

const card = aCard({ estimatePoints: 5 });

function said(left: number, worked?: number, surprise?: number): AnswerInput {
  return { leftPoints: left, workedPoints: worked, surprisePoints: surprise };
}

describe('a card may be answered for', () => {
  test('by its owners only', () => {
    expect(whyNotAnswerable(card, [], 'ana', TUE)).toBeUndefined();
    expect(whyNotAnswerable(card, [], 'cyd', TUE)).toEqual({ code: 'not-an-owner' });
  });

  test('not once it was dropped, and the problem says when', () => {
    expect(whyNotAnswerable(card, inOrder(drop(WED)), 'ana', THU)).toEqual({ code: 'card-dropped', on: WED });
  });

  test('not on a day after it was finished, and the problem says when', () => {
    const facts = inOrder(answer(TUE, 'ana', { left: 0 }));
    expect(whyNotAnswerable(card, facts, 'ana', WED)).toEqual({ code: 'card-finished', on: TUE });
  });

  test('by a second owner, or in correction, on the day when it was finished', () => {
    const facts = inOrder(answer(TUE, 'ana', { left: 0 }));
    expect(whyNotAnswerable(card, facts, 'ben', TUE)).toBeUndefined();
    expect(whyNotAnswerable(card, facts, 'ana', TUE)).toBeUndefined();
  });

  test('in correction of any own answer, even when an earlier day now leaves nothing', () => {
    const facts = inOrder(
      answer(TUE, 'ana', { left: 3 }),
      answer(WED, 'ana', { left: 0 }),
      answer(TUE, 'ana', { left: 0 }),
    );
    expect([TUE, WED].map((day) => whyNotAnswerable(card, facts, 'ana', day))).toEqual([
      undefined,
      undefined,
    ]);
  });

  test('again after it was reopened', () => {
    const facts = inOrder(answer(TUE, 'ana', { left: 0 }), reopen(WED));
    expect(whyNotAnswerable(card, facts, 'ana', WED)).toBeUndefined();
  });
});

describe('an answer is refused with the first thing that is wrong', () => {
  test.each([
    ['left that is no amount of points', said(2.3), { code: 'bad-left' }],
    ['left below 0', said(-1), { code: 'bad-left' }],
    ['left that is no number', said(Number.NaN), { code: 'bad-left' }],
    ['worked that is no amount of points', said(2, 0.1), { code: 'bad-worked' }],
    ['worked above the most', said(2, 1000), { code: 'bad-worked' }],
    ['growth without a reason', said(5, 2), { code: 'growth-unexplained', growthPoints: 2 }],
    ['growth without a reason, the quick way', said(6.5), { code: 'growth-unexplained', growthPoints: 1.5 }],
    ['surprise in thirds', said(6, 0, 0.3), { code: 'bad-surprise' }],
    [
      'more surprise than growth',
      said(6, 1, 3),
      { code: 'surprise-out-of-range', growthPoints: 2, leastPoints: 0, mostPoints: 2 },
    ],
    [
      'less than no surprise when the card grew',
      said(6, 1, -1),
      { code: 'surprise-out-of-range', growthPoints: 2, leastPoints: 0, mostPoints: 2 },
    ],
    [
      'surprise without growth',
      said(4, 1, 1),
      { code: 'surprise-out-of-range', growthPoints: 0, leastPoints: 0, mostPoints: 0 },
    ],
    [
      'taking back surprise that there never was',
      said(2, 1, -1),
      { code: 'surprise-out-of-range', growthPoints: -2, leastPoints: 0, mostPoints: 0 },
    ],
  ])('%s', (_, input, problem) => {
    expect(whyNotAnswer(card, [], 'ana', TUE, input)).toEqual(problem);
  });

  test('taking back more surprise than the card had so far', () => {
    const facts = inOrder(answer(TUE, 'ana', { worked: 0, left: 7, surprise: 1 }));
    expect(whyNotAnswer(card, facts, 'ana', WED, said(3, 1, -2))).toEqual({
      code: 'surprise-out-of-range',
      growthPoints: -3,
      leastPoints: -1,
      mostPoints: 0,
    });
    expect(whyNotAnswer(card, facts, 'ana', WED, said(3, 1, -1))).toBeUndefined();
  });

  test('a person who may not answer is told so before the numbers are looked at', () => {
    expect(whyNotAnswer(card, [], 'cyd', TUE, said(-1))).toEqual({ code: 'not-an-owner' });
  });
});

describe('an answer is let through', () => {
  test.each([
    ['less left, the quick way', said(3)],
    ['nothing changed', said(5)],
    ['worked and left that add up', said(3, 2)],
    ['growth that is all surprise', said(6, 1, 2)],
    ['growth that is all drift', said(6, 1, 0)],
    ['growth that is some of each', said(6, 1, 0.5)],
    ['a card that shrank needs no reason', said(1, 1)],
    ['halves', said(0.5, 4.5)],
  ])('%s', (_, input) => {
    expect(whyNotAnswer(card, [], 'ana', TUE, input)).toBeUndefined();
  });
});

describe('where an answer goes', () => {
  const facts = inOrder(
    answer(TUE, 'ana', { worked: 1, left: 6, surprise: 2 }),
    answer(TUE, 'ben', { worked: 1, left: 5 }),
    answer(THU, 'ana', { worked: 2, left: 3 }),
  );

  test('a new one goes behind everything said about its day and before later days', () => {
    expect(placeInLedger(card, facts, 'ben', WED)).toEqual({
      previousLeftPoints: 5,
      surpriseSoFarPoints: 2,
      corrects: undefined,
    });
    expect(placeInLedger(card, facts, 'ana', FRI)).toMatchObject({ previousLeftPoints: 3 });
  });

  test('a correction goes where the answer was that it replaces', () => {
    const context = placeInLedger(card, facts, 'ben', TUE);
    expect(context).toMatchObject({ previousLeftPoints: 6, surpriseSoFarPoints: 2 });
    expect(context.corrects).toMatchObject({ memberId: 'ben', day: TUE, leftPoints: 5 });
  });

  test('a corrected answer keeps its place before what a second owner said that day', () => {
    const corrected = [...facts, { ...inOrder(answer(TUE, 'ana', { worked: 1, left: 4 }))[0], order: 9 }];
    const context = placeInLedger(card, corrected as typeof facts, 'cyd', WED);
    expect(context).toMatchObject({ previousLeftPoints: 5, surpriseSoFarPoints: 0 });
  });
});

test('growth counts the worked that "only left" implies', () => {
  expect([growthOf(said(3), 5), growthOf(said(7), 5), growthOf(said(3, 1), 5)]).toEqual([0, 2, -1]);
});
