import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Understood } from '../../../src/app/answering/understand-words.ts';
import { understandWords } from '../../../src/app/answering/understand-words.ts';
import { isThanks } from '../../../src/app/answering/what-is-told.ts';
import { formatPoints } from '../../../src/sprint/points.ts';
import { unclearWords } from '../../../src/words/problems.ts';

/** The keys of the cards in the list, in order. */
const KEYS = ['LP-7', 'lp-8', 'LP-9', 'LP-10'];

/** @param open places of the cards that are still open; all of them when left out */
function understand(text: string, cardCount: number, open?: readonly number[]): Understood {
  const keys = KEYS.slice(0, cardCount).map((key) => key.toLowerCase());
  const places = Array.from({ length: cardCount }, (_, i) => i + 1);
  return understandWords(text, {
    count: cardCount,
    open: open ?? places,
    positionOf: (reference) => {
      const byKey = keys.indexOf(reference.toLowerCase());
      return byKey >= 0 ? byKey + 1 : places.find((place) => String(place) === reference);
    },
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
    ['3 left, 2 surprise', 1, [{ 1: 3, surprise: 2 }]],
    ['3 left 2 points surprise', 1, [{ 1: 3, surprise: 2 }]],
    ['3, 1 worked, 2 surprise', 1, [{ 1: 3, worked: 1, surprise: 2 }]],
    ['3, 1 worked; 0', 2, [{ 1: 3, worked: 1 }, { 2: 0 }]],
    ['3 surprise 2 worked 1', 1, [{ 1: 3, worked: 1, surprise: 2 }]],
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
    ['2, 5', 2, [{ 1: 2 }, { 2: 5 }]],
    ['2,5, 3', 2, [{ 1: 2.5 }, { 2: 3 }]],
    ['2,5,3', 2, [{ 1: 2.5 }, { 2: 3 }]],
    ['2,5,3', 3, [{ 1: 2 }, { 2: 5 }, { 3: 3 }]],
    ['2,5;3,5', 2, [{ 1: 2.5 }, { 2: 3.5 }]],
    ['2,5;3,5', 4, [{ 1: 2 }, { 2: 5 }, { 3: 3 }, { 4: 5 }]],
    ['0.5,5', 2, [{ 1: 0.5 }, { 2: 5 }]],
    ['2,5.5', 2, [{ 1: 2 }, { 2: 5.5 }]],
    ['0, .5', 2, [{ 1: 0 }, { 2: 0.5 }]],
    ['3 and 1', 2, [{ 1: 3 }, { 2: 1 }]],
    ['1 and 5', 2, [{ 1: 1 }, { 2: 5 }]],
    ['3, 1 and 0.5', 3, [{ 1: 3 }, { 2: 1 }, { 3: 0.5 }]],
    ['½,5', 2, [{ 1: 0.5 }, { 2: 5 }]],
    ['3 worked 1,5', 1, [{ 1: 3, worked: 1.5 }]],
    ['3 worked 1,5', 2, [{ 1: 3, worked: 1 }, { 2: 5 }]],
    ['1: 2,5', 2, [{ 1: 2.5 }]],
    ['1: 2,5, 2: 3,5', 2, [{ 1: 2.5 }, { 2: 3.5 }]],
  ])('%j with %i cards', (text, cardCount, expected) => {
    expect(answers(text, cardCount)).toEqual(expected);
  });

  test.each<[string, number, string, string]>([
    ['0,5', 2, '1: 0.5', '0, 5'],
    ['2,5', 2, '1: 2.5', '2, 5'],
    ['0,5 left', 2, '1: 0.5', '0, 5'],
    ['2,5;3,5', 3, '2.5', '2, 5'],
    ['2,5,5', 2, '2.5', '2, 5'],
  ])('%j with %i cards asks which is meant', (text, cardCount, half, two) => {
    expect(problems(text, cardCount)).toEqual([
      `“${text}” can be read in two ways: write “${half}” for a number with a half, or “${two}” for two numbers.`,
    ]);
  });

  test('one card takes a decimal comma before any digit', () => {
    expect(answers('2,0', 1)).toEqual([{ 1: 2 }]);
    expect(problems('2,3', 1)).toEqual(['“2,3” isn’t possible: points go in halves, such as 2, 2.5 or 3.']);
  });

  test('a comma before the place of a card is no decimal comma', () => {
    const understood = understand('1: 2,5: 3', 6);
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

describe('a short name needs no colon', () => {
  test.each<[string, unknown]>([
    ['LP-7 2', [{ 1: 2 }]],
    ['lp-8: 2 left', [{ 2: 2 }]],
    ['LP-8 has 2 left', [{ 2: 2 }]],
    ['LP-8 still 2 points to go', [{ 2: 2 }]],
    ['LP-7 2,5', [{ 1: 2.5 }]],
    ['LP-7 2, LP-9 0.5 worked 1', [{ 1: 2 }, { 3: 0.5, worked: 1 }]],
    ['card 2 3', [{ 2: 3 }]],
    ['2 = 3', [{ 2: 3 }]],
    ['2 has 3', [{ 2: 3 }]],
    ['2 3', [{ 2: 3 }]],
    ['LP-7 and LP-9: 1', [{ 1: 1 }, { 3: 1 }]],
  ])('%j with three cards', (text, expected) => {
    expect(answers(text, 3)).toEqual(expected);
  });

  test.each<[string, number, unknown]>([
    ['1 3', 1, [{ 1: 3 }]],
    ['3 0', 2, [{ 1: 3 }, { 2: 0 }]],
    ['3 0 5', 3, [{ 1: 3 }, { 2: 0 }, { 3: 5 }]],
  ])(
    'numbers with spaces between them are in order where that is the only reading: %j, %i cards',
    (text, cardCount, expected) => {
      expect(answers(text, cardCount)).toEqual(expected);
    },
  );

  test('two numbers of which the first may be a card are not guessed', () => {
    expect(problems('2 3', 2)).toEqual([
      '“2 3” can be read in two ways: write “2: 3” for what is left on card 2, or “2, 3” for two cards.',
    ]);
  });
});

describe('what is done has nothing left', () => {
  test.each<[string, number, unknown]>([
    ['done', 1, [{ 1: 0 }]],
    ['Done!', 1, [{ 1: 0 }]],
    ['it’s done', 1, [{ 1: 0 }]],
    ['none', 1, [{ 1: 0 }]],
    ['none left', 1, [{ 1: 0 }]],
    ['nothing left', 1, [{ 1: 0 }]],
    ['done worked 3', 1, [{ 1: 0, worked: 3 }]],
    ['2 done', 2, [{ 2: 0 }]],
    ['2 is done', 2, [{ 2: 0 }]],
    ['2: done', 2, [{ 2: 0 }]],
    ['card 2 finished', 2, [{ 2: 0 }]],
    ['done with 2', 2, [{ 2: 0 }]],
    ['done: 2', 2, [{ 2: 0 }]],
    ['LP-8 done', 2, [{ 2: 0 }]],
    ['lp-8: none', 2, [{ 2: 0 }]],
    ['lp-8: nothing', 2, [{ 2: 0 }]],
    ['2 done worked 1', 2, [{ 2: 0, worked: 1 }]],
    ['1 and 3 done', 3, [{ 1: 0 }, { 3: 0 }]],
    ['1 done, 3: 2', 3, [{ 1: 0 }, { 3: 2 }]],
    ['done, 3', 2, [{ 1: 0 }, { 2: 3 }]],
    ['0, 2 done', 2, [{ 1: 0 }, { 2: 0 }]],
    ['all done', 2, [{ 1: 0 }, { 2: 0 }]],
    ['Everything is done.', 2, [{ 1: 0 }, { 2: 0 }]],
  ])('%j with %i cards', (text, cardCount, expected) => {
    expect(answers(text, cardCount)).toEqual(expected);
  });

  test('the only card that is still open is meant, and all done is about those that are', () => {
    expect(understand('done', 2, [2])).toMatchObject({ answers: [{ position: 2, leftPoints: 0 }] });
    expect(understand('all done', 3, [2, 3])).toMatchObject({ answers: [{ position: 2 }, { position: 3 }] });
  });

  test.each<[string, number, string]>([
    ['done', 2, 'Which card is done? Name it, or write “all done”.'],
    ['none', 2, 'Which card is done? Name it, or write “all done”.'],
    [
      '2 done',
      1,
      '“2 done” can be the card or points: write “done” if your card is finished, or the points that are left.',
    ],
    [
      '1 done',
      1,
      '“1 done” can be the card or points: write “done” if your card is finished, or the points that are left.',
    ],
    [
      'nothing',
      1,
      '“nothing” can be read in two ways: write “done” if nothing is left, or “same” if nothing has changed.',
    ],
    [
      '1, 2 done',
      2,
      '“1” can be a card or what is left: write “1 done” if card 1 is finished, or “1: 1” for what is left on card 1.',
    ],
    ['2 points done', 2, '“2 points done” isn’t clear.'],
    ['5 done', 2, 'There is no card “5” in your list.'],
  ])('%j with %i cards is not guessed', (text, cardCount, expected) => {
    expect(problems(text, cardCount)).toEqual([expected]);
  });
});

describe('a word may answer for the whole day', () => {
  test.each([
    'same',
    'Same.',
    'same as yesterday',
    'still the same',
    'no change',
    'nothing changed',
    ' UNCHANGED! ',
  ])('%j: nothing changed', (text) => {
    expect(understand(text, 2)).toEqual({ kind: 'unchanged' });
  });

  test.each([
    'away',
    'Away today',
    'I am away',
    'I’m away',
    "i'm away.",
    'sick today',
    'I’m sick',
    'out sick',
    'day off',
    'off today',
    'sick again',
    'Sorry, sick today',
    'off sick today',
    'feeling ill',
    'day off today',
    'OOO',
    'Out of office',
    'sick today 🤒',
    'sick today :face_with_thermometer:',
  ])('%j: away', (text) => {
    expect(understand(text, 2)).toEqual({ kind: 'away' });
  });
});

describe('as people type it in a hurry', () => {
  test.each([
    'no progress',
    'no progress today',
    'nothing new today',
    'same for all',
    'all same',
    'same again',
    'still the same 🙂',
  ])('%j: nothing changed', (text) => {
    expect(understand(text, 2)).toEqual({ kind: 'unchanged' });
  });

  test.each<[string, number, unknown]>([
    ['done ✅', 1, [{ 1: 0 }]],
    ['done :tada:', 1, [{ 1: 0 }]],
    ['2 done :white_check_mark:', 2, [{ 2: 0 }]],
    ['done with both', 2, [{ 1: 0 }, { 2: 0 }]],
    ['both are done', 2, [{ 1: 0 }, { 2: 0 }]],
    ['2) 3', 2, [{ 2: 3 }]],
    ['1) 3\n2) done', 2, [{ 1: 3 }, { 2: 0 }]],
    ['(2) 3 left', 2, [{ 2: 3 }]],
    ['2 -> 3', 2, [{ 2: 3 }]],
    ['1: 3 2: done', 2, [{ 1: 3 }, { 2: 0 }]],
    ['LP-7 3 left lp-8 5', 2, [{ 1: 3 }, { 2: 5 }]],
    ['LP-7 done and card 2: 1.5', 2, [{ 1: 0 }, { 2: 1.5 }]],
    ['2 → 3', 2, [{ 2: 3 }]],
    ['2: 3, worked 1', 2, [{ 2: 3, worked: 1 }]],
    ['2: 3 left, worked 1, surprise 2', 2, [{ 2: 3, worked: 1, surprise: 2 }]],
    [
      '1: 2, worked 1, 2: 3, worked 0.5',
      2,
      [
        { 1: 2, worked: 1 },
        { 2: 3, worked: 0.5 },
      ],
    ],
    ['3, worked 1', 1, [{ 1: 3, worked: 1 }]],
  ])('%j about %i cards', (text, cardCount, expected) => {
    expect(answers(text, cardCount)).toEqual(expected);
  });

  test.each([
    'both are done',
    'not done',
    '2 not done',
    '2 isn’t done',
    '2 almost done',
    'done for today',
    'done today',
    'nothing done',
    '2-3',
    '2 - 3',
    '5 more',
    '+2',
    '-1',
    '1 done 2 3',
    'worked 2, 3 left',
    '2 of 3',
  ])('%j about three cards is asked about, not guessed', (text) => {
    expect(understand(text, 3)).toMatchObject({ kind: 'unclear' });
  });
});

describe('what is not clear is named, and nothing is taken from it', () => {
  test.each<[string, number, string[]]>([
    ['-1', 1, ['“-1” isn’t an amount of points.']],
    ['0.3', 1, ['“0.3” isn’t possible: points go in halves, such as 2, 2.5 or 3.']],
    ['LP-7: 2.3', 1, ['“2.3” isn’t possible: points go in halves, such as 2, 2.5 or 3.']],
    ['3 worked 1.2', 1, ['“1.2” isn’t possible: points go in halves, such as 2, 2.5 or 3.']],
    ['ahoy 3', 2, ['There is no card “ahoy” in your list.']],
    ['1000', 1, ['“1000” is too much: a card has 999.5 points at most.']],
    ['3 worked lots', 1, ['“lots” isn’t an amount of points.']],
    ['3 worked 1 worked 2', 1, ['“3 worked 1 worked 2” says twice what was worked.']],
    ['9: 3', 2, ['There is no card “9” in your list.']],
    ['LP-99: 3', 2, ['There is no card “LP-99” in your list.']],
    ['1: 3, LP-7: 2', 2, ['Card LP-7 is answered twice in one message.']],
    ['3', 2, ['You have 2 open cards, but the message gives 1 number.']],
    ['3, 4', 1, ['You have 1 open card, but the message gives 2 numbers.']],
    ['2,5', 3, ['You have 3 open cards, but the message gives 1 number.']],
  ])('%j with %i cards', (text, cardCount, expected) => {
    expect(problems(text, cardCount)).toEqual(expected);
  });

  test('of many slips the first five are named, each shortened', () => {
    const named = problems(Array.from({ length: 50 }, () => `${'x'.repeat(500)} 1`).join(', '), 50);
    expect(named).toHaveLength(5);
    for (const problem of named) expect(problem.length).toBeLessThan(120);
  });
});

test('any numbers written with points and parted by commas and spaces read back the same', () => {
  const points = fc.integer({ min: 0, max: 1_999 }).map((halves) => halves / 2);
  fc.assert(
    fc.property(fc.array(points, { minLength: 1, maxLength: 12 }), (some) => {
      const understood = understand(some.map(formatPoints).join(', '), some.length);
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

describe('said as people say it', () => {
  test.each<[string, number, unknown]>([
    ['sorry, I meant 3', 1, [{ 1: 3 }]],
    ['sorry I meant 3 for lp-8', 2, [{ 2: 3 }]],
    ['Good morning! 2, 0', 2, [{ 1: 2 }, { 2: 0 }]],
    ['hi, LP-7: 3', 2, [{ 1: 3 }]],
    ['3 left for LP-7, 0 on lp-8', 2, [{ 1: 3 }, { 2: 0 }]],
    ['3 points for card 2, surprise 1', 2, [{ 2: 3, surprise: 1 }]],
    ['LP-7 5 -> 3', 2, [{ 1: 3 }]],
    ['LP-7: 5 → 3', 2, [{ 1: 3 }]],
    ['LP-7 went down from 5 to 3', 2, [{ 1: 3 }]],
    ['from 5 to 3', 1, [{ 1: 3 }]],
    ['2 -> 3', 2, [{ 2: 3 }]],
    ['card 2 -> 3', 2, [{ 2: 3 }]],
  ])('“%s” with %i cards', (text, cardCount, said) => expect(answers(text, cardCount)).toEqual(said));

  test.each(['LP-7 -2', 'LP-7 80%'])('“%s” is no amount of points', (text) => {
    expect(problems(text, 2)[0]).toMatch(/isn’t an amount of points/);
  });

  test.each(['', ' , ', 'hello', 'thanks a lot', 'working from home', 'half day', 'when is it over?', '🎉'])(
    '“%s” is about no card',
    (text) => {
      expect(understand(text, 2)).toEqual({ kind: 'not-about-cards' });
    },
  );

  test('a word of an answer counts with a comma behind it', () => {
    expect(understand('done, more or less', 2)).toMatchObject({ kind: 'unclear' });
  });

  test('a card is found by its name even where that is a word of greeting', () => {
    const cards = {
      count: 2,
      open: [1, 2],
      positionOf: (name: string) => (name === 'hello' ? 2 : undefined),
    };
    expect(understandWords('hello: 3', cards)).toMatchObject({ answers: [{ position: 2, leftPoints: 3 }] });
  });

  test.each(['Thanks!', 'thank you', 'thx 🙏'])('“%s” is thanks', (text) =>
    expect(isThanks(text)).toBe(true),
  );
  test.each(['thanks, 3', 'no thanks needed', ''])('“%s” isn’t', (text) =>
    expect(isThanks(text)).toBe(false),
  );
});

describe('in the forms that people give a list', () => {
  test.each<[string, number, unknown]>([
    ['- LP-7: 3\n- lp-8: 6', 2, [{ 1: 3 }, { 2: 6 }]],
    ['• LP-7 → 2\n• lp-8 → 6', 2, [{ 1: 2 }, { 2: 6 }]],
    ['1. 3\n2. 6', 2, [{ 1: 3 }, { 2: 6 }]],
    ['LP-7=4;lp-8=1', 2, [{ 1: 4 }, { 2: 1 }]],
    ['LP-7->2', 2, [{ 1: 2 }]],
    ['LP-7 - 3', 2, [{ 1: 3 }]],
    ['LP-7, 3', 2, [{ 1: 3 }]],
    ['LP-7 – done', 2, [{ 1: 0 }]],
    ['LP-7 3 / lp-8 6', 2, [{ 1: 3 }, { 2: 6 }]],
    ['LP-7: 3. lp-8: 6.', 2, [{ 1: 3 }, { 2: 6 }]],
    ['LP-7 is done and lp-8 has 3 left', 2, [{ 1: 0 }, { 2: 3 }]],
    ['LP-7 is done but lp-8 has 3 left', 2, [{ 1: 0 }, { 2: 3 }]],
    ['LP-7 ✅', 2, [{ 1: 0 }]],
    [':white_check_mark: LP-7\n:white_check_mark: lp-8', 2, [{ 1: 0 }, { 2: 0 }]],
    ['✅', 1, [{ 1: 0 }]],
  ])('%j about %i cards', (text, cardCount, said) => expect(answers(text, cardCount)).toEqual(said));
});

describe('the number of a key, which no card has in points', () => {
  const positionOf = (reference: string) =>
    [41, 42].findIndex((key) => String(key) === reference) + 1 || undefined;
  const both = { count: 2, open: [1, 2], positionOf };

  test.each<[string, unknown]>([
    ['41, 3', [{ position: 1, leftPoints: 3 }]],
    [
      '41: 3, 42 done',
      [
        { position: 1, leftPoints: 3 },
        { position: 2, leftPoints: 0 },
      ],
    ],
  ])('%j is a card', (text, expected) =>
    expect(understandWords(text, both)).toMatchObject({ answers: expected }),
  );

  test.each(['41, 42', '41 and 42', '41: 42'])('%j names cards and no points', (text) => {
    expect(understandWords(text, both)).toMatchObject({ kind: 'unclear' });
  });

  test('is the card also where there is no other', () => {
    const only = { ...both, count: 1, open: [1] };
    expect(understandWords('41 done, finally', only)).toMatchObject({
      answers: [{ position: 1, leftPoints: 0 }],
    });
  });
});

describe('as a number is said in passing', () => {
  test.each<[string, number, unknown]>([
    ['~3', 1, [{ 1: 3 }]],
    ['around 3', 1, [{ 1: 3 }]],
    ['3 I think', 1, [{ 1: 3 }]],
    ['three', 1, [{ 1: 3 }]],
    ['two left on LP-7', 2, [{ 1: 2 }]],
    ['3 -> 2', 1, [{ 1: 2 }]],
    ['down to 1', 1, [{ 1: 1 }]],
    ['LP-7 grew to 8', 2, [{ 1: 8 }]],
    ['LP-7 went up to 8', 2, [{ 1: 8 }]],
    ['LP-7: 3, was 5', 2, [{ 1: 3 }]],
    ['LP-7: 3 (was 5)', 2, [{ 1: 3 }]],
    ['5 (surprise 2)', 1, [{ 1: 5, surprise: 2 }]],
    ['worked 1, 2 left', 1, [{ 1: 2, worked: 1 }]],
    ['Done :)', 1, [{ 1: 0 }]],
    ['LP-7: 3, lp-8 same', 2, [{ 1: 3 }, { 2: 'unchanged' }]],
    ['no change on lp-8, LP-7 done', 2, [{ 2: 'unchanged' }, { 1: 0 }]],
    ['same, 3', 2, [{ 1: 'unchanged' }, { 2: 3 }]],
  ])('%j about %i cards', (text, cardCount, said) => expect(answers(text, cardCount)).toEqual(said));
});

describe('what is said beside an answer', () => {
  test.each<[string, number, unknown, string[]]>([
    ['LP-7: 3, was in meetings', 2, [{ 1: 3 }], ['was in meetings']],
    ['3 because the mail is down', 1, [{ 1: 3 }], ['the mail is down']],
    ['3 (the mail is down)', 1, [{ 1: 3 }], ['the mail is down']],
    ['LP-7: 3, LP-7 was easy', 2, [{ 1: 3 }], ['LP-7 was easy']],
    ['LP-7: 3 because lp-8 is larger', 2, [{ 1: 3 }], ['lp-8 is larger']],
    ['3 - the mail is down', 1, [{ 1: 3 }], ['the mail is down']],
    ['2. Off tomorrow', 1, [{ 1: 2 }], ['Off tomorrow']],
    ['done, what next?', 1, [{ 1: 0 }], ['what next?']],
    ['2 left, should be done tomorrow', 1, [{ 1: 2 }], ['should be done tomorrow']],
  ])('%j about %i cards', (text, cardCount, said, leftOut) => {
    expect(answers(text, cardCount)).toEqual(said);
    expect(understand(text, cardCount)).toMatchObject({ leftOut });
  });

  test('is about a day that went by without change, or away, too', () => {
    const meetings = 'no progress today, was in meetings';
    expect(understand(meetings, 2)).toEqual({ kind: 'unchanged', leftOut: ['was in meetings'] });
    expect(understand('sick, back on Monday', 2)).toEqual({ kind: 'away', leftOut: ['back on Monday'] });
  });

  test('loses no note of another card where something is hoped for with a keyword', () => {
    const understood = understand('should be blocked: by Bo; LP-7: 3 note: ask Ana', 2);
    expect(understood).toMatchObject({ kind: 'unclear' });
  });

  test('thanks are nothing that has to be told of', () => {
    expect(understand('3, thanks', 1)).not.toHaveProperty('leftOut');
  });

  test.each([
    'done, but not tested',
    'LP-7 done, LP-7 not tested',
    'done, except for the mail',
    'done, more or less',
  ])('%j takes something back, so that it is asked about', (text) =>
    expect(understand(text, 1)).toMatchObject({ kind: 'unclear' }),
  );
});

describe('what could be something else than it looks', () => {
  test.each<[string, number]>([
    ['everything but lp-8 done', 2],
    ['all but LP-7 are done', 2],
    ['nothing but tests left', 1],
    ['grew 3', 1],
    ['LP-7 grew 3', 2],
    ['dropped 2', 1],
    ['went down 2', 1],
    ['down 2', 1],
    ['2 more to go', 1],
    ['2 to 3', 1],
    ['2 to 3 left', 3],
    ['maybe done', 1],
    ['I think it’s done', 1],
    ['about done', 1],
    ['LP-7 probably done', 2],
    ['done, except for the mail', 1],
    ['finished testing, 2 left', 1],
    ['3 of 5 done', 1],
    ['not 3 but 5', 1],
    ['LP-7 isn’t done but lp-8 is', 2],
    ['2 days left', 1],
    ['done, docs are missing', 1],
    ['done (waiting for review)', 1],
    ['done, deploy tomorrow', 1],
    ['done, just docs', 1],
  ])('%j about %i cards is asked about', (text, cardCount) =>
    expect(understand(text, cardCount)).toMatchObject({ kind: 'unclear' }),
  );
});

describe('of a card that is named without a number of points', () => {
  test.each<[string, number, string]>([
    ['LP-7 is nearly done', 2, '“LP-7 is nearly done” doesn’t say how many points are left.'],
    ['LP-7 in review', 2, '“LP-7 in review” doesn’t say how many points are left.'],
    ['2 hours left on LP-7', 2, '“2 hours left on LP-7” doesn’t say how many points are left.'],
    ['LP-7 3, lp-8 was easy', 2, '“lp-8 was easy” doesn’t say how many points are left.'],
    ['half done', 1, '“half done” doesn’t say how many points are left.'],
    ['1 down on LP-7', 2, '“1 down on LP-7” doesn’t say how many points are left.'],
    ['5 surprise', 1, '“5 surprise” doesn’t say how many points are left.'],
    ['I’m stuck on LP-7', 2, 'Say what the card is waiting for: “1: 2 blocked reason”.'],
  ])('%j of %i cards asks for them', (text, cardCount, expected) => {
    expect(problems(text, cardCount)).toEqual([expected]);
  });
});
