import { describe, expect, test } from 'vitest';
import { readNumber } from '../../src/app/read-number.ts';
import { problemWords } from '../../src/words/problems.ts';

function problemOf(text: string): string {
  const read = readNumber(text);
  if ('value' in read) throw new Error(`“${text}” was read as ${read.value}`);
  return problemWords(read.problem);
}

describe('a number', () => {
  test.each([
    ['1200', 1200],
    [' 1200 ', 1200],
    ['0', 0],
    ['007', 7],
    ['3.5', 3.5],
    ['3,5', 3.5],
    ['0,250', 0.25],
    ['0.125', 0.125],
    ['.5', 0.5],
    ['12.50', 12.5],
    ['1234.567', 1234.567],
    ['1.2345', 1.2345],
    ['0.000001', 0.000001],
    ['999999999999999', 999_999_999_999_999],
    ['００１２', 12],
  ])('“%s” is read as it is', (text, value) => {
    expect(readNumber(text)).toEqual({ value });
  });

  test.each([
    ['1,200', 1200],
    ['1,234,567', 1_234_567],
    ['1 200', 1200],
    ['1\u00A0200\u202F300', 1_200_300],
    ['1’200', 1200],
    ["1'200'000.5", 1_200_000.5],
    ['1.200,50', 1200.5],
    ['1.200.000', 1_200_000],
    ['1,200.50', 1200.5],
    ['1 200,50', 1200.5],
    ['12,34,567', 1_234_567],
    ['12,34,567.89', 1_234_567.89],
  ])('“%s” is read with its thousands', (text, value) => {
    expect(readNumber(text)).toEqual({ value });
  });

  test.each([
    ['-5', -5],
    ['−5', -5],
    ['– 5', -5],
    ['+5', 5],
    ['-0', 0],
    ['-1,200.5', -1200.5],
  ])('“%s” may have a sign', (text, value) => {
    expect(readNumber(text)).toEqual({ value });
  });

  test.each([
    ['€ 1200', 1200],
    ['1200€', 1200],
    ['$1,200', 1200],
    ['-£5', -5],
    ['£-5', -5],
    ['¥ 1 200', 1200],
    ['₹12,34,567', 1_234_567],
  ])('“%s” is read without its currency sign', (text, value) => {
    expect(readNumber(text)).toEqual({ value });
  });

  test.each([
    ['1.200', '1200', '1.2'],
    ['-1.250', '-1250', '-1.25'],
    ['12.345', '12345', '12.3450'],
    ['€ 3.000', '3000', '3.0'],
  ])(
    '“%s” may mean two things, and asks with both of them, each of which can be read',
    (text, one, other) => {
      expect(problemOf(text)).toBe(
        `“${text}” may mean ${one} or ${other}. Write it in one of these two ways.`,
      );
      expect([readNumber(one), readNumber(other)]).toEqual([
        { value: Number(one) },
        { value: Number(other) },
      ]);
    },
  );

  test.each([
    'many',
    '1200 users',
    '1.2k',
    '1e5',
    '1,2,3',
    '1.200,50,5',
    '1,20.50',
    '1.2.3',
    '5-',
    '--5',
    '12:30',
    '1 2',
    '12%',
    '3.',
    'NaN',
    'Infinity',
    '<!channel>',
  ])('“%s” is no number, and the refusal quotes it and shows one', (text) => {
    const problem = problemOf(text);
    expect(problem).toContain(`“${text}”`);
    expect(problem).toContain('for example 1200');
  });

  test.each(['', '   ', '€', '-'])('“%s” holds no number at all', (text) => {
    expect(problemOf(text)).toContain('There is no number.');
  });

  test.each([['1234567890123456'], ['1000000000.0000001'], ['0.0000001'], ['9'.repeat(400)]])(
    '“%s” has more digits than can be kept',
    (text) => {
      expect(problemOf(text)).toContain('too long. Write it with 15 digits at most');
    },
  );

  test('a long text is quoted in part', () => {
    expect(problemOf('word '.repeat(1_000)).length).toBeLessThan(140);
  });
});
