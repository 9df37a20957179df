import { expect, it } from 'vitest';
import { COMMANDS } from '../../../src/slack/commands/commands.ts';
import { nearestCommandWord } from '../../../src/slack/commands/nearest-command.ts';

it.each([
  ['a letter left out', 'staus', 'status'],
  ['two letters swapped', 'paln', 'plan'],
  ['a wrong letter', 'olan', 'plan'],
  ['capitals', 'CARD', 'cards'],
  ['only the beginning', 'canc', 'cancel'],
  ['two words', 'setup mesures', 'setup measures'],
  ['a slip with more behind it', 'stauts please', 'status'],
  ['another word for it', 'unblock 41', 'moving'],
  ['what one does with a card elsewhere', 'remove 3', 'drop'],
  ['what one says of a sprint elsewhere', 'finish sprint', 'close'],
  ['the beginning of a sprint', 'new sprint', 'plan'],
  ['another word for a card of one’s own', 'claim 4', 'take'],
  ['a sentence', 'I am off tomorrow', 'off'],
  ['a question', 'what is the status?', 'status'],
  ['a question about what would change', 'what if Yusuf is away tomorrow', 'status'],
  ['a question about the sprint’s end', 'when does the sprint end?', 'status'],
  ['a question about people', 'who hasn’t answered?', 'status'],
  ['a question about who is asked', 'who still has to answer?', 'status'],
  ['a question about one’s own card', 'what’s my card?', 'cards'],
  ['a day that isn’t worked', 'I won’t be here on Thursday', 'off'],
  ['leave from work', 'on leave till Monday', 'off'],
  ['more leave from work', 'parental leave from 1 Dec', 'off'],
  ['half a day', 'half day tomorrow', 'off'],
  ['a day that isn’t worked, in few words', 'not working Wednesday', 'off'],
  ['what is deleted of somebody', 'delete my data', 'privacy'],
  ['what is stored of somebody', 'what do you store about me?', 'privacy'],
  ['who reads it', 'who can see this?', 'privacy'],
  ['what is no card', 'delete my answer', 'answer'],
  ['who wants to leave', 'can you remove me from the team?', 'leave'],
  ['the same in other words', 'I’m leaving the team', 'leave'],
  ['who wants no messages', 'unsubscribe', 'leave'],
  ['what was finished before', 'how much did we finish last sprint', 'history'],
  ['how long it still takes', 'how many days left?', 'status'],
  ['where it will end', 'will we make it?', 'status'],
  ['another word in a question', 'how much should we commit to?', 'range'],
  ['two words beside a command’s own', 'tell me how much we should take', 'range'],
  ['a question about the team', 'how are we doing', 'status'],
  ['a question about what is left', 'how much is left', 'status'],
  ['the same of several', 'how many points are left?', 'status'],
  ['another word for the days that one works', 'part time mon-wed', 'works'],
  ['what can’t be said anew of a card', 'estimate 3 8', 'edit'],
])('guesses the word from %s', (_slip, typed, word) => {
  expect(nearestCommandWord(typed)).toBe(word);
});

it.each(['', ' ', 'x', 'hi', 'weather', 'xyzzy', 'how is the weather today', 'constructor'])(
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

it('offers only words of the command table', () => {
  const words = COMMANDS.map(({ word }) => word);
  for (const other of [
    'away',
    'vacation',
    'unblock',
    'settings',
    'commit',
    'risk',
    'trend',
    'what-if',
    'what if',
    'velocity',
    'burndown',
    'chances',
    'progress',
    'missing',
    'next',
    'capacity',
    'deadline',
    'finish',
    'out',
    'remind',
    'asking',
    'join',
    'who',
    'answered',
    'going',
    'undo',
    'members',
    'facilitators',
  ])
    expect(words).toContain(nearestCommandWord(other));
});
