import { beforeAll, describe, expect, test } from 'vitest';
import type { CommitmentRange, RangeThresholds } from '../../src/forecast/commitment-range.ts';
import { commitmentRange } from '../../src/forecast/commitment-range.ts';
import type { TeamHabit } from './generated-team.ts';
import { generatedTeam } from './generated-team.ts';
import { seededRandom } from './seeded-random.ts';

const THRESHOLDS: RangeThresholds = {
  keptShareAtLeast: 0.8,
  pullInRatioAtMost: 0.2,
  surpriseRatioAtMost: 0.2,
};
const ALL_THERE = { workingDays: 10, memberDays: 50, memberDaysWhenAllThere: 50 };
const TEAMS_OF_A_KIND = 40;
/** A slow machine shared with other tests. */
const TIMEOUT_MS = 120_000;

interface Outcome {
  readonly spread: number;
  readonly sprints: number;
  readonly kept: boolean;
  readonly pulledInTooMuch: boolean;
}

function outcomes(): Outcome[] {
  const random = seededRandom(20261124);
  const found: Outcome[] = [];
  for (const spread of [0.12, 0.25, 0.4]) {
    for (const sprints of [3, 6, 12]) {
      for (const [i, boldness] of [0.65, 1, 1.4, undefined].entries()) {
        const habit: TeamHabit = { spread, boldness, skewed: i % 2 === 0 };
        for (let team = 0; team < TEAMS_OF_A_KIND; team += 1) {
          const { past, nextSprint } = generatedTeam(random, habit, sprints);
          const { lowPoints, highPoints } = commitmentRange(past, ALL_THERE, THRESHOLDS) as CommitmentRange;
          const [atHigh, atLow] = [nextSprint(highPoints as number), nextSprint(lowPoints as number)];
          found.push({
            spread,
            sprints,
            kept: (atHigh.committedFinishedPoints as number) >= 0.8 * atHigh.commitmentPoints,
            pulledInTooMuch: (atLow.pulledInPoints as number) > 0.2 * atLow.commitmentPoints,
          });
        }
      }
    }
  }
  return found;
}

function share(of: readonly Outcome[], fact: 'kept' | 'pulledInTooMuch'): number {
  return of.filter((one) => one[fact]).length / of.length;
}

describe('of 1,440 generated teams, timid, fair, bold and wavering, steady and not, with 3 to 12 sprints', () => {
  let all: Outcome[] = [];

  beforeAll(() => {
    all = outcomes();
  }, TIMEOUT_MS);

  test('they are so many', () => {
    expect(all).toHaveLength(1440);
  });

  test('those who commit to the high end keep it in about 80% of cases', () => {
    expect(share(all, 'kept')).toBeGreaterThan(0.77);
    expect(share(all, 'kept')).toBeLessThan(0.88);
  });

  test('those who commit to the low end pull in too much in about 20% of cases', () => {
    expect(share(all, 'pulledInTooMuch')).toBeGreaterThan(0.14);
    expect(share(all, 'pulledInTooMuch')).toBeLessThan(0.25);
  });

  test.each([0.12, 0.25, 0.4])('neither is far off for teams of a spread of %s', (spread) => {
    const alike = all.filter((one) => one.spread === spread);
    expect(share(alike, 'kept')).toBeGreaterThan(0.72);
    expect(share(alike, 'pulledInTooMuch')).toBeLessThan(0.3);
  });

  test.each([3, 6, 12])('neither is far off with %i sprints of history', (sprints) => {
    const alike = all.filter((one) => one.sprints === sprints);
    expect(share(alike, 'kept')).toBeGreaterThan(0.74);
    expect(share(alike, 'pulledInTooMuch')).toBeLessThan(0.28);
  });
});
