/**
 * Two owners of a card correct what they said on the same day, while one of them answers for another card in
 * the form that shows both. Each stated surprise must last through what the other takes back and gives again.
 */
import type { Scenario, ScenarioEvent } from '../../src/rehearsal/scenario.ts';

const DAY = '2026-11-02';

const said = (by: string, card: string, worked: number, left: number, surprise = 0): ScenarioEvent => ({
  on: DAY,
  by,
  answer: [{ card, worked, left, surprise }],
});

export const CO_OWNER_SCENARIO: Scenario = {
  team: {
    name: 'Quayside',
    timeZone: 'Europe/Lisbon',
    promptAt: '09:15',
    workingDays: [1, 2, 3, 4, 5],
    thresholds: {},
  },
  members: [
    { id: 'ines', name: 'Ines' },
    { id: 'odd', name: 'Odd' },
  ],
  sprints: [
    {
      name: 'Harbour 21',
      goal: '',
      startsOn: DAY,
      endsOn: '2026-11-03',
      cards: [
        { key: 'quay-1', title: 'Tide table', estimate: 5, owners: ['ines', 'odd'] },
        { key: 'quay-2', title: 'Tide chart', estimate: 5, owners: ['ines', 'odd'] },
        { key: 'quay-3', title: 'Moon phase', estimate: 3, owners: ['ines'] },
      ],
      events: [
        said('odd', 'quay-1', 1, 4),
        said('odd', 'quay-2', 1, 4),
        said('ines', 'quay-1', 0, 6, 2),
        said('ines', 'quay-2', 0, 6, 2),
        // Takes all growth from what Ines said about one card, and half of it on the other.
        said('odd', 'quay-1', 0, 6),
        said('odd', 'quay-2', 0, 5),
        said('ines', 'quay-3', 1, 2),
        said('odd', 'quay-1', 1, 4),
        said('odd', 'quay-2', 1, 4),
      ],
    },
  ],
};
