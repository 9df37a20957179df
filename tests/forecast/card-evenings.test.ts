import { describe, expect, test } from 'vitest';
import { openCardsAt, queueLengths } from '../../src/forecast/card-evenings.ts';

const CARDS = [
  { estimatePoints: 5, from: 0, left: [5, 3, 3, 0], worked: [0, 2, 2, 5], queues: [0] },
  {
    estimatePoints: 3,
    from: 0,
    left: [3, 3, 3, 3],
    worked: [0, 0, 0, 0],
    queues: [0],
    blocked: [2],
  },
  { estimatePoints: 2, from: 2, left: [2, 2], worked: [0, 0], queues: [] },
  { estimatePoints: 1, from: 0, left: [1, 0, 0, 0], worked: [0, 1, 1, 1], queues: [1] },
];

test('the cards that were open on an evening are those that had come in and had something left', () => {
  expect(openCardsAt(CARDS, 2)).toEqual([
    {
      estimatePoints: 5,
      leftPoints: 3,
      isBegun: true,
      unmovedDays: 1,
      isBlocked: false,
      queuePoints: 3,
      isFinished: true,
    },
    {
      estimatePoints: 3,
      leftPoints: 3,
      isBegun: false,
      unmovedDays: 2,
      isBlocked: true,
      queuePoints: 3,
      isFinished: false,
    },
    // Nobody's card waits behind everything.
    {
      estimatePoints: 2,
      leftPoints: 2,
      isBegun: false,
      unmovedDays: 0,
      isBlocked: false,
      queuePoints: 6,
      isFinished: false,
    },
  ]);
  expect(openCardsAt(CARDS, 0).map(({ estimatePoints }) => estimatePoints)).toEqual([5, 3, 1]);
});

describe('a queue', () => {
  test('is as long as what else is left in it; a card of two members waits in the shorter one', () => {
    const open = [
      { leftPoints: 5, queues: ['a'] },
      { leftPoints: 3, queues: ['a', 'b'] },
      { leftPoints: 1, queues: ['b'] },
    ];
    expect(queueLengths(open)).toEqual([3, 1, 3]);
  });
});
