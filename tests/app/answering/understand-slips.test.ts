import { describe, expect, test } from 'vitest';
import { saidDay } from '../../../src/app/answering/said-day.ts';
import { answers, understand } from './understood-answers.ts';

describe('a number is read in whatever form it is typed', () => {
  test.each<[string, number, unknown]>([
    ['6ish', 1, { 1: 6 }],
    ['price 6-ish', 2, { 2: 6 }],
    ['6ish left', 1, { 1: 6 }],
    ['3 left I think', 1, { 1: 3 }],
    ['3pts', 1, { 1: 3 }],
    ['book 3p left', 2, { 1: 3 }],
    ['3️⃣', 1, { 1: 3 }],
    [':three:', 1, { 1: 3 }],
    ['1️⃣: 3, 2️⃣: :zero:', 2, { 1: 3, 2: 0 }],
    ['2½', 1, { 1: 2.5 }],
    ['2 ½', 1, { 1: 2.5 }],
    ['2 1/2', 1, { 1: 2.5 }],
    ['book 2 1/2 left', 2, { 1: 2.5 }],
    ['2: 2 1/2', 2, { 2: 2.5 }],
    ['41 ½', 2, { 1: 0.5 }],
    ['1) 3 2) 6', 2, { 1: 3, 2: 6 }],
    ['1) done 2) 6', 3, { 1: 0, 2: 6 }],
    ['(1) 3 (2) 6', 2, { 1: 3, 2: 6 }],
    ['1. 3, 2. 6', 2, { 1: 3, 2: 6 }],
    ['1. 3 2. 6', 2, { 1: 3, 2: 6 }],
    ['1. done\n2. 6', 3, { 1: 0, 2: 6 }],
    ['41 3', 2, { 1: 3 }],
    ['41 3 42 2', 3, { 1: 3, 2: 2 }],
  ])('%j about %i', (text, count, expected) => expect(answers(text, count)).toEqual(expected));

  test.each<[string, number]>([
    ['2 1/2', 2],
    ['2 ½', 3],
    ['1/2 left', 1],
    ['1) 3 2) 6', 1],
    ['done ish', 1],
    ['2h left', 1],
    ['1,000', 2],
    ['one done', 2],
    ['two done', 2],
    ['two are done', 3],
  ])('%j about %i is asked about', (text, count) =>
    expect(understand(text, count)).toMatchObject({ kind: 'unclear' }),
  );
});

describe('of all open cards', () => {
  test.each<[string, number, unknown]>([
    ['both 3', 2, { 1: 3, 2: 3 }],
    ['both have 3 left', 2, { 1: 3, 2: 3 }],
    ['both zero', 2, { 1: 0, 2: 0 }],
    ['all zero', 3, { 1: 0, 2: 0, 3: 0 }],
    ['all at 0', 2, { 1: 0, 2: 0 }],
    ['all done', 3, { 1: 0, 2: 0, 3: 0 }],
    ['all three are done', 3, { 1: 0, 2: 0, 3: 0 }],
    ['all of them have 2 left', 3, { 1: 2, 2: 2, 3: 2 }],
    ['all my cards are done', 2, { 1: 0, 2: 0 }],
    ['each has 2', 2, { 1: 2, 2: 2 }],
    ['everything’s done', 1, { 1: 0 }],
  ])('%j about %i', (text, count, expected) => expect(answers(text, count)).toEqual(expected));

  test.each<[string, number]>([
    ['both 3', 3],
    ['both done', 1],
    ['all 3', 3],
    ['all two done', 3],
    ['not all done', 2],
    ['nearly all done', 2],
    ['both done worked 3', 2],
    ['book and price: 1 worked 2', 2],
    ['all done, book 2', 2],
  ])('%j about %i is asked about', (text, count) =>
    expect(understand(text, count)).toMatchObject({ kind: 'unclear' }),
  );
});

describe('what was is not what is', () => {
  test.each(['book was 3', 'book had 3 left', 'it was 3', 'was 5, price 3', '3 was 5'])(
    '%j may be about today or before, and is asked about',
    (text) => {
      for (const count of [1, 2, 3]) expect(understand(text, count)).toMatchObject({ kind: 'unclear' });
    },
  );

  test('but is what was left where an earlier day is spoken about', () => {
    expect(understand('book was 3', 2, true)).toMatchObject({ answers: [{ position: 1, leftPoints: 3 }] });
  });

  test('“was finished” says that it is', () => {
    expect(answers('book was finished', 2)).toEqual({ 1: 0 });
  });

  test.each([
    ['yesterday it was 2', 'yesterday', 'it was 2'],
    ['book finished yesterday', 'yesterday', 'book finished'],
    ['Finished book yesterday.', 'yesterday', 'Finished book'],
    ['done yesterday', 'yesterday', 'done'],
    ['book was 3 yesterday', 'yesterday', 'book was 3'],
    ['book was done Yesterday!', 'Yesterday', 'book was done'],
  ])('%j is about yesterday', (text, day, rest) => expect(saidDay(text)).toEqual({ day, rest }));

  test.each([
    'same as yesterday',
    'book 3 since yesterday',
    'book 3 yesterday',
    'done with book since yesterday',
    'book done yesterday, price 3',
    'yesterday',
  ])('%j isn’t', (text) => expect(saidDay(text)).toEqual({ day: undefined, rest: text }));
});

describe('what was and what is now', () => {
  test.each<[string, number, unknown]>([
    ['was 5, now 3', 1, { 1: 3 }],
    ['book was 5, is 3', 2, { 1: 3 }],
    ['book was 5 now 3', 2, { 1: 3 }],
    ['book reduced to 2', 2, { 1: 2 }],
    ['nothing left on book', 2, { 1: 0 }],
    ['nothing left to do for book', 2, { 1: 0 }],
    ['approx. 3', 1, { 1: 3 }],
    ['yep, done', 1, { 1: 0 }],
    ['1st: 3, 2nd: 2', 2, { 1: 3, 2: 2 }],
    ['first: 3, second done', 3, { 1: 3, 2: 0 }],
    ['book=3 price=2', 2, { 1: 3, 2: 2 }],
    ['cards 1 and 2: 3', 2, { 1: 3, 2: 3 }],
    ['book 2, rest same', 3, { 1: 2, 2: 'unchanged', 3: 'unchanged' }],
    ['book 2, everything else same', 2, { 1: 2, 2: 'unchanged' }],
    ['I’ve got 3 left', 1, { 1: 3 }],
    ['3 please', 1, { 1: 3 }],
    ['book stays 3', 2, { 1: 3 }],
    ['book done, the others have 2', 3, { 1: 0, 2: 2, 3: 2 }],
  ])('%j about %i', (text, count, expected) => expect(answers(text, count)).toEqual(expected));

  test.each<[string, number]>([
    ['nothing on book', 2],
    ['first 2 done', 3],
    ['first draft done', 2],
    ['rest same, book 2', 3],
    ['both same, 2', 2],
    ['my 2 are done', 2],
    ['the two 3', 3],
    ['book 2, rest same', 1],
  ])('%j about %i is asked about', (text, count) =>
    expect(understand(text, count)).toMatchObject({ kind: 'unclear' }),
  );
});

describe('a surprise with its reason', () => {
  test.each<[string, unknown]>([
    ['41: 3 surprise 1: two boat classes', { 1: { left: 3, surprise: 1, note: 'two boat classes' } }],
    ['41: 1, surprise: two boat classes', { 1: { left: 1, note: 'two boat classes' } }],
    ['41: 1 left, surprise: 2', { 1: { left: 1, surprise: 2 } }],
  ])('%j', (text, expected) => expect(answers(text, 2)).toEqual(expected));

  test('without what is left is asked about', () => {
    expect(understand('41: 1 surprise: two boat classes', 2)).toEqual({
      kind: 'unclear',
      problems: [{ code: 'no-amount', typed: '41: 1 surprise', position: 1 }],
    });
  });
});

describe('a card is called by words of its title', () => {
  test.each<[string, unknown]>([
    ['book a berth 3', { 1: 3 }],
    ['Book a berth: done', { 1: 0 }],
    ['the price list has 2 left', { 2: 2 }],
    ['cancel booking 2', { 3: 2 }],
    ['book berth and price list done', { 1: 0, 2: 0 }],
  ])('%j', (text, expected) => expect(answers(text, 3)).toEqual(expected));
});

describe('what looks like an answer and may be something else is asked about', () => {
  test.each<[string, number]>([
    ['book 2 to 3', 2],
    ['book 2-3', 2],
    ['done at 3', 3],
    ['is book done', 2],
    ['has book 3 left', 2],
    ['up to 3', 1],
    ['book up to 3', 2],
    ['3... no, 2', 2],
    ['3, sorry, 2', 2],
    ['book 3, no, 2', 2],
    ['41: 3 (2 done)', 2],
    ['41: 3, 2 done', 2],
    ['book 3 / 5', 2],
    ['book not started, 5', 2],
    ['book 3, 5', 3],
    ['book 3, done', 2],
    ['3 (2 done)', 2],
    ['book not blocked, 3', 1],
    ['blocked, 3 left', 1],
    ['book blocked, 3', 2],
    ['book was blocked by Bo, 3 left', 2],
    ['stuck on book', 1],
    ['2 left 3', 3],
  ])('%j about %i', (text, count) => expect(understand(text, count)).toMatchObject({ kind: 'unclear' }));

  test.each<[string, number, unknown]>([
    ['no, 3', 1, { 1: 3 }],
    ['sorry, 3', 1, { 1: 3 }],
    ['book 3, 5', 2, { 1: 3, 2: 5 }],
    ['book 5 to 3', 2, { 1: 3 }],
    ['finished: 2', 2, { 2: 0 }],
    ['done with 2', 2, { 2: 0 }],
    ['book left 3', 2, { 1: 3 }],
    ['left: 3', 1, { 1: 3 }],
    ['its 3', 1, { 1: 3 }],
    ['im done with book', 2, { 1: 0 }],
    ['41: 3, 42 done', 2, { 1: 3, 2: 0 }],
    ['book 3, blocked by Bo', 2, { 1: { left: 3, blockedOn: 'by Bo' } }],
  ])('%j about %i is not', (text, count, expected) => expect(answers(text, count)).toEqual(expected));
});
