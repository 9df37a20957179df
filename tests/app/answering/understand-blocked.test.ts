import { describe, expect, test } from 'vitest';
import { understandWords } from '../../../src/app/answering/understand-words.ts';

const KEYS = ['lp-7', 'lp-8', 'lp-9'];

function understand(text: string, count: number, open?: readonly number[]) {
  const places = Array.from({ length: count }, (_, i) => i + 1);
  return understandWords(text, {
    count,
    open: open ?? places,
    positionOf: (reference) => {
      const byKey = KEYS.slice(0, count).indexOf(reference.toLowerCase());
      return byKey >= 0 ? byKey + 1 : places.find((place) => String(place) === reference);
    },
  });
}

function answers(text: string, count: number, open?: readonly number[]): unknown {
  const understood = understand(text, count, open);
  if (understood.kind !== 'answers') return understood;
  return understood.answers.map(({ position, leftPoints, workedPoints, blockedOn, note }) => ({
    [position]: leftPoints,
    ...(workedPoints !== undefined && { worked: workedPoints }),
    ...(blockedOn !== undefined && { blockedOn }),
    ...(note !== undefined && { note }),
  }));
}

const KEY = 'waiting for the key';

describe('with an answer goes on what the card is blocked', () => {
  test.each<[string, number, unknown]>([
    [`2 left, blocked: ${KEY}`, 1, [{ 1: 2, blockedOn: KEY }]],
    [`2 blocked ${KEY}`, 1, [{ 1: 2, blockedOn: KEY }]],
    [`2 Stuck, ${KEY}`, 1, [{ 1: 2, blockedOn: KEY }]],
    [`3: 2 blocked ${KEY}`, 3, [{ 3: 2, blockedOn: KEY }]],
    [`lp-8 2 worked 1, blocked: ${KEY}`, 2, [{ 2: 2, worked: 1, blockedOn: KEY }]],
    [`2 blocked: ${KEY}; 0`, 2, [{ 1: 2, blockedOn: KEY }, { 2: 0 }]],
    [`1: 2,5\n2: 3 blocked: ${KEY}`, 2, [{ 1: 2.5 }, { 2: 3, blockedOn: KEY }]],
    ['2 blocked: the key, 2: 3 of them', 1, [{ 1: 2, blockedOn: 'the key, 2: 3 of them' }]],
    [
      `1 and 2: 3 blocked: ${KEY}`,
      2,
      [
        { 1: 3, blockedOn: KEY },
        { 2: 3, blockedOn: KEY },
      ],
    ],
  ])('%j about %i', (text, count, expected) => {
    expect(answers(text, count)).toEqual(expected);
  });
});

describe('with an answer goes a note', () => {
  test.each<[string, number, unknown]>([
    ['2 note: two harbours, not one', 1, [{ 1: 2, note: 'two harbours, not one' }]],
    ['1: 2 note two harbours; 2: 0', 2, [{ 1: 2, note: 'two harbours' }, { 2: 0 }]],
    [`2 blocked: ${KEY}, note: ask Bo`, 1, [{ 1: 2, blockedOn: KEY, note: 'ask Bo' }]],
    [`2 note: ask Bo blocked: ${KEY}`, 1, [{ 1: 2, blockedOn: KEY, note: 'ask Bo' }]],
    ['2 blocked: a note from Bo', 1, [{ 1: 2, blockedOn: 'a note from Bo' }]],
  ])('%j about %i', (text, count, expected) => {
    expect(answers(text, count)).toEqual(expected);
  });
});

describe('a card is said to be blocked by itself', () => {
  test.each<[string, number, unknown]>([
    [`2: blocked ${KEY}`, 3, [{ 2: undefined, blockedOn: KEY }]],
    [`card 2 is blocked: ${KEY}`, 3, [{ 2: undefined, blockedOn: KEY }]],
    [`lp-9 stuck: ${KEY}`, 3, [{ 3: undefined, blockedOn: KEY }]],
    [`blocked: ${KEY}`, 1, [{ 1: undefined, blockedOn: KEY }]],
    [`it’s blocked: ${KEY}`, 1, [{ 1: undefined, blockedOn: KEY }]],
    [
      `1 and 3 blocked: ${KEY}`,
      3,
      [
        { 1: undefined, blockedOn: KEY },
        { 3: undefined, blockedOn: KEY },
      ],
    ],
    [`1: 3; 2: blocked ${KEY}`, 2, [{ 1: 3 }, { 2: undefined, blockedOn: KEY }]],
  ])('%j about %i', (text, count, expected) => {
    expect(answers(text, count)).toEqual(expected);
  });

  test('and may be named by the number in its key where it is the only one', () => {
    const card = {
      count: 1,
      open: [1],
      positionOf: (reference: string) => (reference === '42' ? 1 : undefined),
    };
    const answer = { position: 1, leftPoints: undefined, blockedOn: 'by the payment provider' };
    expect(understandWords('42 blocked by the payment provider', card)).toMatchObject({ answers: [answer] });
  });

  test('and may be the only one that is open', () => {
    expect(answers(`blocked: ${KEY}`, 3, [2])).toEqual([{ 2: undefined, blockedOn: KEY }]);
  });
});

describe('what can be meant in two ways, or is not said, is asked about', () => {
  test.each<[string, number, unknown]>([
    [`2 blocked ${KEY}`, 3, { code: 'blocked-two-ways', typed: '2' }],
    [`blocked: ${KEY}`, 3, { code: 'which-blocked' }],
    ['1: 2 blocked', 3, { code: 'blocked-on-what' }],
    [`7: blocked ${KEY}`, 3, { code: 'no-such-card', typed: '7' }],
    [`some more blocked: ${KEY}`, 1, { code: 'no-amount', typed: 'some more', position: 1 }],
  ])('%j about %i', (text, count, problem) => {
    expect(understand(text, count)).toEqual({ kind: 'unclear', problems: [problem] });
  });
});
