/**
 * Three sprints of a team that carries one card with a key and one without through all of them, the second time under
 * other numbers, titles and estimates; a cancelled sprint lies between. In the first sprint all four questions are
 * met; in the last one, one of two, too few.
 */
import type { Scenario, ScenarioEvent, ScenarioSprint } from '../../src/rehearsal/scenario.ts';

const away = (by: string, on: string): ScenarioEvent => ({ on, by, away: true });

function sprint(
  name: string,
  startsOn: string,
  endsOn: string,
  cards: readonly [key: string, title: string, owner: string][],
  events: ScenarioEvent[],
): ScenarioSprint {
  return {
    name,
    goal: '',
    startsOn,
    endsOn,
    cards: cards.map(([key, title, owner]) => ({ key, title, estimate: 3, owners: [owner] })),
    events,
  };
}

export const CARRY_OVER_SCENARIO: Scenario = {
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
    sprint(
      'Harbour 21',
      '2026-11-02',
      '2026-11-06',
      [
        ['quay-1', 'Tide table', 'ines'],
        ['a', 'Moon  phase', 'ines'],
      ],
      ['2026-11-03', '2026-11-04', '2026-11-05', '2026-11-06'].map((on) => away('ines', on)),
    ),
    sprint(
      'Harbour 22',
      '2026-11-09',
      '2026-11-10',
      [['quay-9', 'Fog horn', 'odd']],
      [{ on: '2026-11-10', cancel: true }],
    ),
    sprint(
      'Harbour 23',
      '2026-11-16',
      '2026-11-17',
      [
        ['quay-2', 'Buoy', 'odd'],
        ['b', 'moon phase', 'odd'],
        ['quay-1', 'Tide tables', 'ines'],
      ],
      [away('odd', '2026-11-16'), away('odd', '2026-11-17'), away('ines', '2026-11-16')],
    ),
  ],
};
