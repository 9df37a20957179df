import { describe, expect, test } from 'vitest';
import { burndownWords } from '../../src/charts/chart-labels.ts';
import {
  allFuture,
  burndown,
  finishedEarly,
  midSprint,
  noPlan,
  unneededSurprise,
} from './burndown-examples.ts';

describe('the lines above the burndown', () => {
  test('name the sprint, or leave out a name that the font cannot draw', () => {
    expect(burndownWords.heading(midSprint).title).toBe('Burndown: Harbour lights');
    expect(burndownWords.heading({ ...midSprint, sprintName: 'Гавань' }).title).toBe('Burndown');
  });

  test.each([
    [
      midSprint,
      'Mon 2 to Fri 13 Nov 2026 · commitment 34 points · 24.5 left on Thu 5 Nov, 4.1 more than the ideal',
    ],
    [
      finishedEarly,
      'Mon 2 to Fri 6 Nov 2026 · commitment 30 points · 0 left on Wed 4 Nov, 12 fewer than the ideal',
    ],
    [
      unneededSurprise,
      'Mon 2 to Fri 6 Nov 2026 · commitment 20 points · 0 left on Fri 6 Nov, right on the ideal',
    ],
    [noPlan, 'Mon 2 to Fri 6 Nov 2026 · no commitment · 0 left on Fri 6 Nov'],
    [allFuture, 'Mon 2 to Wed 11 Nov 2026 · commitment 21 points'],
    [burndown('No days', 3, []), 'commitment 3 points'],
  ])('say how far the sprint is (example %#)', (example, subtitle) => {
    expect(burndownWords.heading(example).subtitle).toBe(subtitle);
  });
});
