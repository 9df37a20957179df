import { describe, expect, test } from 'vitest';
import { ownRecord } from '../../../src/app/history/own-record.ts';
import type { WatchedSprint } from '../../../src/app/history/watched-sprint.ts';
import { contestCases } from '../../../src/forecast/contest.ts';
import { simulatedSprints, simulatedTeam } from '../../forecast/simulated-team.ts';

// Simulated sprints: see the rules there. A trace point an evening, ten working days.
function watched(teamId: string, seed: number, sprints: number): WatchedSprint[] {
  return simulatedSprints({ seed, sprints, rule: 'queues' }).map((sprint) => ({ ...sprint, teamId }));
}

describe('the own record of an installation', () => {
  test('scores both models at four moments, all teams together, after each team’s first six sprints', () => {
    const scores = ownRecord([...watched('a', 1, 20), ...watched('b', 2, 10)]);
    expect(scores.map(({ elapsedPercent, scored }) => [elapsedPercent, scored])).toEqual(
      [0, 30, 50, 80].map((percent) => [percent, 14 + 4]),
    );
  });

  test('is what the contest of each team says', () => {
    const cases = [...contestCases(simulatedTeam({ seed: 1, sprints: 20, evening: 5, rule: 'queues' }), 6)];
    const [, , half] = ownRecord(watched('simulated', 1, 20));
    expect(half?.cards.crps).toBeCloseTo(cases.reduce((sum, { cards }) => sum + cards.crps, 0) / 14, 12);
    expect(half?.sums.crps).toBeCloseTo(cases.reduce((sum, { sums }) => sum + sums.crps, 0) / 14, 12);
  });

  test('of teams with few sprints there is none', () => {
    expect(ownRecord(watched('a', 1, 6))).toEqual([]);
  });

  test('names no team', () => {
    expect(JSON.stringify(ownRecord(watched('harbour', 1, 12)))).not.toContain('harbour');
  });
});
