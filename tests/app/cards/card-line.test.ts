import { expect, test } from 'vitest';
import {
  cardIdentity,
  cardOfKeyNumber,
  cardOfShortName,
  sharedNote,
} from '../../../src/app/cards/card-line.ts';

test('a note is shared as it is, and one that begins with “private:” with nobody', () => {
  expect(sharedNote(' The tables come in two formats ')).toBe('The tables come in two formats');
  for (const note of ['private: my slip', ' Private : my slip', 'PRIVATE:'])
    expect(sharedNote(note)).toBe('');
  expect(sharedNote('a private berth: two')).toBe('a private berth: two');
});

test('a number calls the only card whose key ends in it', () => {
  const cards = [{ key: 'quay-41' }, { key: 'quay-1' }, { key: '7' }, { key: 'mole-9' }, { key: 'quay-9' }];
  expect(cardOfKeyNumber(cards, '41')).toEqual({ key: 'quay-41' });
  expect(cardOfKeyNumber(cards, '1')).toEqual({ key: 'quay-1' });
  for (const number of ['7', '9', '4', '', 'quay-1']) expect(cardOfKeyNumber(cards, number)).toBeUndefined();
});

test('what looks like a short name calls the only card that has it, or whose title begins with it', () => {
  const cards = [
    { key: '1', title: 'pier-3 Tide board' },
    { key: 'mole-2', title: 'Lamp' },
    { key: '3', title: 'utf-8 in mails' },
    { key: '4', title: 'utf-8 in names' },
    { key: '5', title: 'Lamp of pier-4' },
  ];
  expect(cardOfShortName(cards, 'PIER-3')?.key).toBe('1');
  expect(cardOfShortName(cards, 'Mole-2')?.key).toBe('mole-2');
  for (const name of ['utf-8', 'pier-4', 'lamp', 'pier'])
    expect(cardOfShortName(cards, name)).toBeUndefined();
});

test.each([
  [{ key: 'LP-7', number: 2, title: 'Tides' }, 'key lp-7'],
  [{ key: '2', number: 2, title: ' Tide  Table' }, 'title tide table'],
  [{ key: '#2', number: 2, title: 'Tides' }, 'title tides'],
  [{ key: '#4', number: 2, title: 'Tides' }, 'title tides'],
])('in another sprint %j is known again by its %s', (card, identity) => {
  expect(cardIdentity(card)).toBe(identity);
});
