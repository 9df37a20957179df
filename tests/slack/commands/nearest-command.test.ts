import { expect, it } from 'vitest';
import { COMMANDS } from '../../../src/slack/commands/commands.ts';
import { nearestCommandWord } from '../../../src/slack/listeners/commands.ts';

it.each([
  ['a letter left out', 'staus', 'status'],
  ['two letters swapped', 'paln', 'plan'],
  ['a wrong letter', 'olan', 'plan'],
  ['capitals', 'CARD', 'cards'],
  ['only the beginning', 'canc', 'cancel'],
  ['two words', 'setup mesures', 'setup measures'],
  ['a slip with more behind it', 'stauts please', 'status'],
  ['a sentence', 'I am off tomorrow', 'off'],
  ['a question', 'what is the status?', 'status'],
])('guesses the word from %s', (_slip, typed, word) => {
  expect(nearestCommandWord(typed)).toBe(word);
});

it.each(['', ' ', 'x', 'weather', 'xyzzy', 'how is the weather today'])(
  'guesses nothing from “%s”',
  (typed) => {
    expect(nearestCommandWord(typed)).toBeUndefined();
  },
);

it('knows every word of the command table', () => {
  for (const { word } of COMMANDS) expect(nearestCommandWord(word)).toBe(word);
});

it('declares each word once', () => {
  const words = COMMANDS.map(({ word }) => word);
  expect(new Set(words).size).toBe(words.length);
});
