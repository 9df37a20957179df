/**
 * What lies at the margin of a play: words said before the sprint begins and after it has ended, a card that
 * the answer form has no room for, a card's key that looks like another card's number, and a plan that fills
 * more fields than the form has at first.
 */
import type { Scenario } from '../../src/rehearsal/scenario.ts';

/** A long title without being refused; 90 of them outgrow the plan form's first three fields. */
const LONG_TITLE = 'The harbour office reads the tide table aloud, '.repeat(3);

export const MARGIN_SCENARIO: Scenario = {
  team: {
    name: 'Quayside',
    timeZone: 'Europe/Lisbon',
    promptAt: '09:15',
    workingDays: [1, 2, 3, 4, 5],
    thresholds: {},
  },
  members: [{ id: 'ines', name: 'Ines' }],
  sprints: [
    {
      name: 'Harbour 22',
      goal: '',
      startsOn: '2026-11-03',
      endsOn: '2026-11-04',
      cards: Array.from({ length: 90 }, (_, i) => ({
        key: `quay-${i + 1}`,
        title: `${LONG_TITLE}part ${i + 1}`,
        estimate: 1.5,
        owners: ['ines'],
      })),
      events: [
        { on: '2026-11-02', by: 'ines', answer: [{ card: 'quay-1', left: 0 }] },
        {
          on: '2026-11-02',
          by: 'ines',
          pull: { key: 'quay-95', title: 'Too early', estimate: 1, owners: ['ines'] },
        },
        { on: '2026-11-03', by: 'ines', answer: [{ card: 'quay-88', worked: 1, left: 1, surprise: 0.5 }] },
        { on: '2026-11-03', by: 'ines', answer: [{ card: '2', left: 0 }] },
        { on: '2026-11-03', by: 'ines', drop: { card: '#2', reason: 'No such card' } },
        { on: '2026-11-05', by: 'ines', answer: [{ card: 'quay-1', left: 0 }] },
      ],
    },
  ],
};
