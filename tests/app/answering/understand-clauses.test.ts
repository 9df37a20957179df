import { describe, expect, test } from 'vitest';
import { answers, understand } from './understood-answers.ts';

describe('what may be work, a card or what is left is asked about', () => {
  test.each<[string, number]>([
    ['done 3 points', 3],
    ['done 3 left', 3],
    ['I have done 3', 3],
    ['done 2', 3],
    ['1 done, 3 to go', 2],
    ['2 done, 3 left', 3],
    ['same 3 left', 3],
    ['3 left same', 3],
    ['3 as before', 3],
    ['3 same as yesterday', 3],
    ['no change 3 points', 3],
    ['unchanged 3', 3],
  ])('%j about %i', (text, count) => expect(understand(text, count)).toMatchObject({ kind: 'unclear' }));

  test.each<[string, number, unknown]>([
    ['2 done', 3, { 2: 0 }],
    ['done: 2', 3, { 2: 0 }],
    ['3 same', 3, { 3: 'unchanged' }],
    ['3: no change', 3, { 3: 'unchanged' }],
    ['no change on 3', 3, { 3: 'unchanged' }],
    ['41 as before', 2, { 1: 'unchanged' }],
    ['same, 3', 1, { 1: 3 }],
    ['unchanged, still 3 left', 1, { 1: 3 }],
  ])('%j about %i is not', (text, count, expected) => expect(answers(text, count)).toEqual(expected));
});

describe('a reason and a note end where the next card or its points begin', () => {
  test.each<[string, number, unknown]>([
    ['blocked by legal, 5', 1, { 1: { left: 5, blockedOn: 'by legal' } }],
    ['book blocked by legal, 5 left', 2, { 1: { left: 5, blockedOn: 'by legal' } }],
    ['book blocked by legal - 5 left', 2, { 1: { left: 5, blockedOn: 'by legal' } }],
    ['book blocked by legal, price 3', 2, { 1: { left: undefined, blockedOn: 'by legal' }, 2: 3 }],
    ['book 3, blocked by Bo, price done', 2, { 1: { left: 3, blockedOn: 'by Bo' }, 2: 0 }],
    ['book 3 note: ask Bo, price 2', 2, { 1: { left: 3, note: 'ask Bo' }, 2: 2 }],
    [
      'book blocked by legal, price blocked by Bo',
      2,
      { 1: { blockedOn: 'by legal' }, 2: { blockedOn: 'by Bo' } },
    ],
    [
      'book 3 blocked by Bo, price 2 note: easy',
      2,
      { 1: { left: 3, blockedOn: 'by Bo' }, 2: { left: 2, note: 'easy' } },
    ],
    ['book 3, blocked by Bo, worked 2', 2, { 1: { left: 3, worked: 2, blockedOn: 'by Bo' } }],
    ['2: blocked by legal, 5', 2, { 2: { left: 5, blockedOn: 'by legal' } }],
    ['book 3 blocked by Bo, then Ana', 2, { 1: { left: 3, blockedOn: 'by Bo, then Ana' } }],
  ])('%j about %i', (text, count, expected) => expect(answers(text, count)).toEqual(expected));
});

test.each(['2 blocked by legal, 5', '1 blocked by legal, 5'])(
  '%j may be about a card, and is asked about',
  (text) => expect(understand(text, 2)).toMatchObject({ problems: [{ code: 'blocked-two-ways' }] }),
);

describe('what is asked about is quoted as it was typed', () => {
  test.each([
    ['first 3 second 5', 'first 3 second 5'],
    ['task 3', 'task 3'],
    ['note', 'note'],
    ['three or four', 'three or four'],
  ])('%j', (text, typed) => expect(understand(text, 2)).toMatchObject({ problems: [{ typed }] }));

  test('and no word of answers is told to be no card', () => {
    expect(understand('both done', 3)).toMatchObject({ problems: [{ code: 'not-an-answer' }] });
    expect(understand('not done', 2)).toMatchObject({ problems: [{ code: 'not-an-answer' }] });
  });
});

describe('what takes back that a card is done is asked about', () => {
  test.each([
    'book done, review to do',
    'book done but review',
    'book done, but Bo must look',
    'book done, review left',
  ])('%j', (text) => expect(understand(text, 2)).toMatchObject({ kind: 'unclear' }));

  test.each<[string, unknown]>([['book done but price 3', { 1: 0, 2: 3 }]])('%j doesn’t', (text, expected) =>
    expect(answers(text, 2)).toEqual(expected),
  );
});

describe('of a card that is named first, the points may come after more words', () => {
  test.each<[string, number, unknown]>([
    ['book in progress, 3', 2, { 1: 3 }],
    ['book waiting for review, 1 left', 2, { 1: 1 }],
    ['41 just started, 5', 2, { 1: 5 }],
    ['41 not done, 2', 2, { 1: 2 }],
    ['book worked 2, 3 left', 2, { 1: { left: 3, worked: 2 } }],
    ['worked 2 on book, 3 left', 2, { 1: { left: 3, worked: 2 } }],
    ['surprise 2 on book, 5 left', 2, { 1: { left: 5, surprise: 2 } }],
    ['book: worked 2, left 3', 2, { 1: { left: 3, worked: 2 } }],
    ['book in progress, 3, price done', 2, { 1: 3, 2: 0 }],
    ['working on 41, 3 left', 2, { 1: 3 }],
    ['book in review. 3 left.', 2, { 1: 3 }],
    ['started 41, 5', 2, { 1: 5 }],
    ['worked on 41, 3 left', 2, { 1: 3 }],
  ])('%j about %i', (text, count, expected) => expect(answers(text, count)).toEqual(expected));

  test.each<[string, number]>([
    ['waiting for book, 3', 2],
    ['book after price, 3', 2],
    ['book done by Friday, 3', 2],
    ['book not started, 5', 2],
    ['worked with Ines on 41', 2],
  ])('%j about %i is asked about', (text, count) =>
    expect(understand(text, count)).toMatchObject({ kind: 'unclear' }),
  );
});

describe('a card is called in one more way', () => {
  test.each<[string, number, unknown]>([
    ['ticket 41 3', 2, { 1: 3 }],
    ['task 1 done, task 2: 3', 2, { 1: 0, 2: 3 }],
    ['number two: 3', 2, { 2: 3 }],
    ['no. 1: 3', 2, { 1: 3 }],
    ['quay 41 3', 2, { 1: 3 }],
    ['quay41: done', 2, { 1: 0 }],
    ['41 - 3, 42 - 5', 2, { 1: 3, 2: 5 }],
    ['1=3 2=5', 2, { 1: 3, 2: 5 }],
    ['41 3. 42 done.', 2, { 1: 3, 2: 0 }],
    ['41 to 2, 42 to 3', 2, { 1: 2, 2: 3 }],
    ['done w/ 41', 2, { 1: 0 }],
    ['finished 41 today', 2, { 1: 0 }],
    ['the berth one is done, the other one has 3', 2, { 1: 0, 2: 3 }],
    ['second one: 3', 2, { 2: 3 }],
    ['2 each', 2, { 1: 2, 2: 2 }],
    ['2 left each', 3, { 1: 2, 2: 2, 3: 2 }],
    ['2 both', 2, { 1: 2, 2: 2 }],
    ['no change for both', 2, { 1: 'unchanged', 2: 'unchanged' }],
    ['book 2, no change on the rest', 3, { 1: 2, 2: 'unchanged', 3: 'unchanged' }],
    ['book 3, other unchanged', 2, { 1: 3, 2: 'unchanged' }],
  ])('%j about %i', (text, count, expected) => expect(answers(text, count)).toEqual(expected));
});

describe('all but one', () => {
  test.each<[string, number, unknown]>([
    ['same except 41: 2', 3, { 1: 2, 2: 'unchanged', 3: 'unchanged' }],
    ['no change except 41 now 2', 2, { 1: 2, 2: 'unchanged' }],
    ['all done except price 3', 3, { 1: 0, 2: 3, 3: 0 }],
    ['all done apart from price: 3', 3, { 1: 0, 2: 3, 3: 0 }],
    ['all done but book, 3', 2, { 1: 3, 2: 0 }],
    ['everything same but book 2, price done', 3, { 1: 2, 2: 0, 3: 'unchanged' }],
  ])('%j about %i', (text, count, expected) => expect(answers(text, count)).toEqual(expected));

  test('that say nothing of it don’t speak of the rest', () => {
    expect(JSON.stringify(understand('all done but book in review', 2))).not.toMatch(/rest/);
  });

  test.each(['all done except price', 'done except review', 'all but price done', 'book done except review'])(
    '%j is asked about',
    (text) => expect(understand(text, 3)).toMatchObject({ kind: 'unclear' }),
  );
});

describe('a slip in a word of answers is read over', () => {
  test.each<[string, unknown]>([
    ['41 doen', { 1: 0 }],
    ['41 finsihed', { 1: 0 }],
    ['41 finshed', { 1: 0 }],
    ['3 lefft', { 1: 3 }],
    ['41 3 blcoked by legal', { 1: { left: 3, blockedOn: 'by legal' } }],
    ['3 note: finshed the gaet', { 1: { left: 3, note: 'finshed the gaet' } }],
  ])('%j', (text, expected) => expect(answers(text, 1)).toEqual(expected));

  test.each(['41 dome', '41 some', '41 lets 3', '41 gone', 'neither done', 'halfway through 41'])(
    '%j is another word',
    (text) => expect(understand(text, 1)).toMatchObject({ kind: 'unclear' }),
  );
});

describe('an amount in more words', () => {
  test.each<[string, unknown]>([
    ['two and a half', { 1: 2.5 }],
    ['2 and a half left', { 1: 2.5 }],
    ['half a point left', { 1: 0.5 }],
    ['3 SP', { 1: 3 }],
    ['3 story points left', { 1: 3 }],
    ['5 => 3', { 1: 3 }],
    ['today 3', { 1: 3 }],
    ['3 thx!', { 1: 3 }],
    ['worked from home, 3', { 1: 3 }],
    ['3, worked with Bo', { 1: 3 }],
    ['ive got 3 left', { 1: 3 }],
    ['3 left, done by Friday', { 1: 3 }],
    ['3 left, one test failing', { 1: 3 }],
    ['sorry, meant 3', { 1: 3 }],
    ['correction: 4', { 1: 4 }],
  ])('%j', (text, expected) => expect(answers(text, 1)).toEqual(expected));

  test.each([
    '3 more',
    '3 more to go',
    'half',
    'half done',
    '3 of 5',
    '3 hours left',
    'yesterday 3, today 2',
  ])('%j is asked about', (text) => expect(understand(text, 1).kind).not.toBe('answers'));
});
