import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Understood } from '../../../src/app/answering/understand-words.ts';
import { understandWords } from '../../../src/app/answering/understand-words.ts';
import { formatPoints } from '../../../src/sprint/points.ts';
import { unclearWords } from '../../../src/words/problems.ts';

/** The keys of the cards in the list, in order. */
const KEYS = ['LP-7', 'lp-8', 'LP-9', 'LP-10'];

function understand(text: string, cardCount: number): Understood {
  const keys = KEYS.slice(0, cardCount).map((key) => key.toLowerCase());
  return understandWords(text, cardCount, (reference) => {
    const byKey = keys.indexOf(reference.toLowerCase());
    const byPlace = Array.from({ length: cardCount }, (_, i) => String(i + 1)).indexOf(reference);
    const found = byKey >= 0 ? byKey : byPlace;
    return found < 0 ? undefined : found + 1;
  });
}

/** `[place, left, worked, surprise]` for each card, without what was not said. */
function answers(text: string, cardCount: number): unknown {
  const understood = understand(text, cardCount);
  if (understood.kind !== 'answers') return understood;
  return understood.answers.map(({ position, leftPoints, workedPoints, surprisePoints }) => ({
    [position]: leftPoints,
    ...(workedPoints !== undefined && { worked: workedPoints }),
    ...(surprisePoints !== undefined && { surprise: surprisePoints }),
  }));
}

function problems(text: string, cardCount: number): readonly string[] {
  const understood = understand(text, cardCount);
  return understood.kind === 'unclear' ? understood.problems.map((problem) => unclearWords(problem)) : [];
}

describe('numbers alone are what is left, in the order of the list', () => {
  test.each<[string, number, unknown]>([
    ['3', 1, [{ 1: 3 }]],
    [' 3 ', 1, [{ 1: 3 }]],
    ['0', 1, [{ 1: 0 }]],
    ['3 left', 1, [{ 1: 3 }]],
    ['3 points left', 1, [{ 1: 3 }]],
    ['2, 0', 2, [{ 1: 2 }, { 2: 0 }]],
    ['2,0', 2, [{ 1: 2 }, { 2: 0 }]],
    ['2; 0', 2, [{ 1: 2 }, { 2: 0 }]],
    ['2\n0', 2, [{ 1: 2 }, { 2: 0 }]],
    ['2\r\n0\r\n', 2, [{ 1: 2 }, { 2: 0 }]],
    ['½, 1½', 2, [{ 1: 0.5 }, { 2: 1.5 }]],
    ['3 worked 1', 1, [{ 1: 3, worked: 1 }]],
    ['3 left worked 0.5 surprise 2', 1, [{ 1: 3, worked: 0.5, surprise: 2 }]],
    ['3 SURPRISE 2 Worked 1', 1, [{ 1: 3, worked: 1, surprise: 2 }]],
    ['2 surprise -1', 1, [{ 1: 2, surprise: -1 }]],
    ['2 surprise −1', 1, [{ 1: 2, surprise: -1 }]],
    [
      '2 worked 1, 0 worked 3',
      2,
      [
        { 1: 2, worked: 1 },
        { 2: 0, worked: 3 },
      ],
    ],
  ])('%j with %i cards', (text, cardCount, expected) => {
    expect(answers(text, cardCount)).toEqual(expected);
  });
});

describe('a comma before a 5 is read as fits the number of cards', () => {
  test.each<[string, number, unknown]>([
    ['2,5', 1, [{ 1: 2.5 }]],
    ['2,5', 2, [{ 1: 2 }, { 2: 5 }]],
    ['2, 5', 2, [{ 1: 2 }, { 2: 5 }]],
    ['2,5, 3', 2, [{ 1: 2.5 }, { 2: 3 }]],
    ['2,5,3', 2, [{ 1: 2.5 }, { 2: 3 }]],
    ['2,5,3', 3, [{ 1: 2 }, { 2: 5 }, { 3: 3 }]],
    ['2,5;3,5', 2, [{ 1: 2.5 }, { 2: 3.5 }]],
    ['2,5;3,5', 4, [{ 1: 2 }, { 2: 5 }, { 3: 3 }, { 4: 5 }]],
    ['0.5,5', 2, [{ 1: 0.5 }, { 2: 5 }]],
    ['2,5.5', 2, [{ 1: 2 }, { 2: 5.5 }]],
    ['½,5', 2, [{ 1: 0.5 }, { 2: 5 }]],
    ['3 worked 1,5', 1, [{ 1: 3, worked: 1.5 }]],
    ['3 worked 1,5', 2, [{ 1: 3, worked: 1 }, { 2: 5 }]],
    ['1: 2,5', 2, [{ 1: 2.5 }]],
    ['1: 2,5, 2: 3,5', 2, [{ 1: 2.5 }, { 2: 3.5 }]],
  ])('%j with %i cards', (text, cardCount, expected) => {
    expect(answers(text, cardCount)).toEqual(expected);
  });

  test.each<[string, number]>([
    ['2,5;3,5', 3],
    ['2,5,5', 2],
  ])('%j with %i cards is not guessed', (text, cardCount) => {
    expect(problems(text, cardCount)).toEqual([
      'A comma before a 5 can be read in two ways; write 2.5 for two and a half, or 2, 5 for two numbers.',
    ]);
  });

  test('a comma before the place of a card is no decimal comma', () => {
    const understood = understandWords('1: 2,5: 3', 6, Number);
    expect(understood).toMatchObject({
      answers: [
        { position: 1, leftPoints: 2 },
        { position: 5, leftPoints: 3 },
      ],
    });
  });
});

describe('a card may be named by its place or key', () => {
  test.each<[string, unknown]>([
    ['2: 3', [{ 2: 3 }]],
    ['2:3', [{ 2: 3 }]],
    ['2 : 3', [{ 2: 3 }]],
    ['card 2: 3', [{ 2: 3 }]],
    ['2: 3 worked 1', [{ 2: 3, worked: 1 }]],
    ['2: 3 worked 1 surprise 2', [{ 2: 3, worked: 1, surprise: 2 }]],
    ['LP-7: 3', [{ 1: 3 }]],
    ['LP-8: 3', [{ 2: 3 }]],
    ['3: 0, 1: 2', [{ 3: 0 }, { 1: 2 }]],
    ['lp-9: 0\nLP-7: 2', [{ 3: 0 }, { 1: 2 }]],
    ['4, 2: 3', [{ 1: 4 }, { 2: 3 }]],
  ])('%j', (text, expected) => {
    expect(answers(text, 3)).toEqual(expected);
  });
});

describe('a word may answer for the whole day', () => {
  test.each(['same', 'Same.', 'no change', 'nothing changed', ' UNCHANGED! '])(
    '%j: nothing changed',
    (text) => {
      expect(understand(text, 2)).toEqual({ kind: 'unchanged' });
    },
  );

  test.each(['away', 'Away today', 'I am away', 'I’m away', "i'm away."])('%j: away', (text) => {
    expect(understand(text, 2)).toEqual({ kind: 'away' });
  });
});

describe('what is not clear is named, and nothing is taken from it', () => {
  test.each<[string, number, string[]]>([
    ['', 1, ['The message holds no number.']],
    [' , ', 1, ['The message holds no number.']],
    ['hello there', 1, ['“hello there” isn’t an amount of points; write for example 3, 0.5 or 2: 3.']],
    ['-1', 1, ['“-1” isn’t an amount of points; write for example 3, 0.5 or 2: 3.']],
    ['0.3', 1, ['“0.3” isn’t an amount of points; write for example 3, 0.5 or 2: 3.']],
    ['1000', 1, ['“1000” isn’t an amount of points; write for example 3, 0.5 or 2: 3.']],
    ['3 worked lots', 1, ['“lots” isn’t an amount of points.']],
    ['3 worked 1 worked 2', 1, ['“3 worked 1 worked 2” says twice what was worked.']],
    ['9: 3', 2, ['There is no card “9” in your list.']],
    ['LP-99: 3', 2, ['There is no card “LP-99” in your list.']],
    ['1: 3, LP-7: 2', 2, ['Card LP-7 is answered twice in one message.']],
    ['3', 2, ['You have 2 open cards, but the message gives 1 number.']],
    ['3, 4', 1, ['You have 1 open card, but the message gives 2 numbers.']],
    ['2,5', 3, ['You have 3 open cards, but the message gives 1 number.']],
    ['same, 3', 2, ['“same” isn’t an amount of points; write for example 3, 0.5 or 2: 3.']],
  ])('%j with %i cards', (text, cardCount, expected) => {
    expect(problems(text, cardCount)).toEqual(expected);
  });

  test('of many slips the first five are named, each shortened', () => {
    const named = problems(Array.from({ length: 50 }, () => 'x'.repeat(500)).join(', '), 50);
    expect(named).toHaveLength(5);
    for (const problem of named) expect(problem.length).toBeLessThan(120);
  });
});

test('any numbers written with points and parted by commas and spaces read back the same', () => {
  const points = fc.integer({ min: 0, max: 1_999 }).map((halves) => halves / 2);
  fc.assert(
    fc.property(fc.array(points, { minLength: 1, maxLength: 12 }), (some) => {
      const understood = understandWords(some.map(formatPoints).join(', '), some.length, Number);
      expect(understood).toMatchObject({
        answers: some.map((leftPoints, i) => ({ position: i + 1, leftPoints })),
      });
    }),
  );
});

describe('a long message takes no longer than its length asks for', () => {
  const LENGTH = 100_000;
  test.each([
    ['spaces', `3${' '.repeat(LENGTH)}x`],
    ['words', `3${' worked 1'.repeat(LENGTH / 9)} x`],
    ['digits', '5'.repeat(LENGTH)],
    ['unsettled commas', `1${',5'.repeat(LENGTH / 2)}`],
    ['colons', ':'.repeat(LENGTH)],
    ['card', `card${' '.repeat(LENGTH)}`],
  ])('%s', (_, text) => {
    const before = process.cpuUsage();
    understand(text, 3);
    // Work that grew with the square of the length would take minutes.
    expect(process.cpuUsage(before).user / 1_000_000).toBeLessThan(5);
  });
});
