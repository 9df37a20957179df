import { describe, expect, test } from 'vitest';
import { OpenDataError, readOpenData } from './read-open-data.ts';

// Invented rows; the real ones are never part of the repository.
const HEADER =
  'board,sprint,plannedDays,elapsedPercent,startPoints,addedPoints,removedPoints,todoPoints,inProgressPoints,donePoints,members,deliveredPoints';
const ROW = '900,1,14,30,10,3,1,-2,4,5,3,9';

function problemOf(text: string): string {
  try {
    readOpenData(text, 'invented.csv');
  } catch (error) {
    expect(error).toBeInstanceOf(OpenDataError);
    return (error as OpenDataError).message;
  }
  return '';
}

test('a row becomes numbers by the names of its columns, in any order', () => {
  const expected = {
    board: 900,
    sprint: 1,
    plannedDays: 14,
    elapsedPercent: 30,
    startPoints: 10,
    addedPoints: 3,
    removedPoints: 1,
    todoPoints: -2,
    inProgressPoints: 4,
    donePoints: 5,
    members: 3,
    deliveredPoints: 9,
  };
  expect(readOpenData(`${HEADER}\n${ROW}\n`, 'invented.csv')).toEqual([expected]);
  const turned = [HEADER, ROW].map((line) => line.split(',').reverse().join(',')).join('\n');
  expect(readOpenData(turned, 'invented.csv')).toEqual([expected]);
});

test('a byte order mark, Windows line ends and blank lines do no harm', () => {
  expect(readOpenData(`\uFEFF${HEADER}\r\n${ROW}\r\n\r\n${ROW}\r\n`, 'invented.csv')).toHaveLength(2);
});

describe('what is wrong is named with line and column', () => {
  test.each([
    ['text for a number', ROW.replace(',10,', ',ten,'), 'invented.csv, line 3, column startPoints: "ten"'],
    [
      'an empty cell',
      ROW.replace(',10,', ',,'),
      'line 3, column startPoints: "" is not a whole number of 0 or more',
    ],
    ['points below 0', ROW.replace(',3,1,', ',-3,1,'), 'line 3, column addedPoints: "-3"'],
    ['a fraction', ROW.replace(',-2,', ',-2.5,'), 'line 3, column todoPoints: "-2.5" is not a whole number.'],
    ['an exponent', ROW.replace(/9$/, '9e3'), 'line 3, column deliveredPoints: "9e3"'],
  ])('%s', (_, row, words) => {
    expect(problemOf(`${HEADER}\n${ROW}\n${row}\n`)).toContain(words);
  });

  test('a missing column', () => {
    expect(problemOf('board,sprint\n1,2')).toMatch(
      /^invented\.csv, line 1: missing columns plannedDays, .*deliveredPoints\.$/,
    );
  });

  test('a row with too few cells', () => {
    expect(problemOf(`${HEADER}\n${ROW}\n1,2,3\n`)).toMatch(/line 3/);
  });

  test('a file without rows', () => {
    expect(problemOf(`${HEADER}\n`)).toBe('invented.csv holds no sprints.');
  });
});
