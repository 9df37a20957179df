import { expect, it } from 'vitest';
import { printPlay } from '../../src/rehearsal/play-file.ts';

it('a post is printed with its images in words and the names of its files', () => {
  const post = {
    to: { member: 'ana' },
    at: '2026-11-02T09:15:00.000Z',
    text: 'All that is kept.',
    altTexts: ['Burndown: 3 of 5 points are left.'],
    fileNames: ['sprints.csv', 'cards.csv'],
    earlierTexts: [],
    inThread: false,
    onlyForThem: false,
  };
  expect(printPlay({ team: 'Quayside', sprints: [], refusals: [], posts: [post] }).split('\n')).toEqual([
    '2026-11-02 09:15 UTC → ana',
    '  All that is kept.',
    '  [Image: Burndown: 3 of 5 points are left.]',
    '  [File: sprints.csv]',
    '  [File: cards.csv]',
  ]);
});
