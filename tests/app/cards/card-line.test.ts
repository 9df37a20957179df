import { expect, test } from 'vitest';
import { sharedNote } from '../../../src/app/cards/card-line.ts';

test('a note is shared as it is, and one that begins with “private:” with nobody', () => {
  expect(sharedNote(' The tables come in two formats ')).toBe('The tables come in two formats');
  for (const note of ['private: my slip', ' Private : my slip', 'PRIVATE:'])
    expect(sharedNote(note)).toBe('');
  expect(sharedNote('a private berth: two')).toBe('a private berth: two');
});
