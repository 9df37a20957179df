import { describe, expect, test } from 'vitest';
import { burndownChart } from '../../src/charts/burndown-chart.ts';
import { burndownHeading } from '../../src/words/charts/burndown.ts';
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
    const title = (sprintName: string) => burndownChart({ ...midSprint, sprintName }).option.title;
    expect(title('Harbour lights')).toMatchObject([{ text: 'Burndown: Harbour lights' }]);
    expect(title('Гавань')).toMatchObject([{ text: 'Burndown' }]);
  });

  test.each([
    [
      midSprint,
      'Mon 2 Nov to Fri 13 Nov 2026, 10 working days. The commitment is 34 points. 24.5 points left on Thu 5 Nov, 4.1 more than the ideal of 20.4.',
    ],
    [
      finishedEarly,
      'Mon 2 Nov to Fri 6 Nov 2026, 5 working days. The commitment is 30 points. 0 points left on Wed 4 Nov, 12 fewer than the ideal of 12.',
    ],
    [
      unneededSurprise,
      'Mon 2 Nov to Fri 6 Nov 2026, 5 working days. The commitment is 20 points. 0 points left on Fri 6 Nov, right on the ideal.',
    ],
    [
      noPlan,
      'Mon 2 Nov to Fri 6 Nov 2026, 5 working days. There was no commitment, so there is no ideal line. 0 points left on Fri 6 Nov.',
    ],
    [
      allFuture,
      'Mon 2 Nov to Wed 11 Nov 2026, 8 working days. The commitment is 21 points. No day has numbers yet.',
    ],
    [
      burndown('No days', 3, []),
      'The sprint has no working days. The commitment is 3 points. No day has numbers yet.',
    ],
  ])('say how the sprint is doing (example %#)', (example, subtitle) => {
    expect(burndownHeading(example).subtitle).toBe(subtitle);
  });
});
