import { beforeAll, describe, expect, test } from 'vitest';
import { NO_HISTORY, projectVelocity, withEndedSprints } from '../../src/forecast/project-velocity.ts';
import { pullInChance } from '../../src/forecast/pull-in-chance.ts';
import type { LaterPart } from '../../src/forecast/still-finishable.ts';
import { stillFinishable } from '../../src/forecast/still-finishable.ts';
import { seededRandom } from './seeded-random.ts';
import { workedSprint } from './worked-sprint.ts';

const NOW = { cardPoints: 20, finishedPoints: 8, underwayPoints: 2 };

/** A velocity of 14 or 20 points, as likely. */
const TWO_ENDS = { cdf: (points: number) => (points < 14 ? 0 : points < 20 ? 0.5 : 1) };

const full = (finishedPoints: number): LaterPart => ({
  finishedPoints,
  evenPoints: finishedPoints,
  hadTimeToSpare: false,
});
const spare = (finishedPoints: number, evenPoints = finishedPoints): LaterPart => ({
  finishedPoints,
  evenPoints,
  hadTimeToSpare: true,
});
const atLeast = (points: number, later: readonly LaterPart[], velocity = TWO_ENDS): number =>
  1 - stillFinishable(velocity, NOW, later).cdf(points - 0.25);

describe('what can still be finished', () => {
  test('is the projection less what is finished, where no past sprint tells the pace', () => {
    for (const later of [[], [full(9), full(11)], [spare(0), spare(0), spare(0), full(10)]]) {
      expect(atLeast(6, later)).toBe(1);
      expect(atLeast(6.5, later)).toBe(0.5);
      expect(atLeast(12, later)).toBe(0.5);
      expect(atLeast(12.5, later)).toBe(0);
    }
  });

  test('beyond the open work goes on from the chance that the open work gets finished', () => {
    const later = [full(14), full(17), full(16), full(15)];
    expect(atLeast(12, later)).toBeGreaterThanOrEqual(0.5);
    expect(atLeast(13, later)).toBeGreaterThan(0.4);
    expect(atLeast(13, later)).toBeLessThanOrEqual(0.5);
    expect(atLeast(24, later)).toBeLessThan(0.05);
  });

  test('never rises with the points, whatever the history', () => {
    for (const later of [
      [full(3), full(4), full(2)],
      [spare(12), spare(9), full(20)],
      [full(0), full(1), full(2)],
    ]) {
      const chances = Array.from({ length: 80 }, (_, i) => atLeast(i / 2, later));
      for (const [i, chance] of chances.entries()) {
        expect(chance).toBeLessThanOrEqual(chances[i - 1] ?? 1);
        expect(chance).toBeGreaterThanOrEqual(0);
      }
    }
  });

  test('time to spare speaks for more than was finished, and no less than at an even pace', () => {
    const nothingOpen = { cardPoints: 8, finishedPoints: 8, underwayPoints: 0 };
    const chance = (later: readonly LaterPart[]): number =>
      1 - stillFinishable({ cdf: (points) => (points < 8 ? 0 : 1) }, nothingOpen, later).cdf(5);
    const asFinished = [full(4), full(5), full(4)];
    expect(chance([spare(4), spare(5), spare(4)])).toBeGreaterThan(chance(asFinished));
    expect(chance([spare(4, 8), spare(5, 8), spare(4, 8)])).toBeGreaterThan(0.9);
  });

  test('a sprint far beyond the team’s pace leaves the chances small instead of undefined', () => {
    const huge = { cardPoints: 900, finishedPoints: 0, underwayPoints: 0 };
    const cdf = stillFinishable({ cdf: (points) => (points < 10 ? 0 : 1) }, huge, [
      full(5),
      full(6),
      full(7),
    ]).cdf;
    expect(1 - cdf(901)).toBe(0);
    expect(1 - cdf(3)).toBeGreaterThan(0.9);
  });
});

interface Case {
  readonly boldness: number;
  readonly waits: { readonly chance: number; readonly came: boolean };
  readonly first: { readonly chance: number; readonly came: boolean };
}

const TIMEOUT_MS = 120_000;

function cases(): Case[] {
  const random = seededRandom(20261125);
  const found: Case[] = [];
  for (const spread of [0.12, 0.25, 0.4]) {
    for (const boldness of [0.65, 1, 1.4]) {
      for (const pullsIn of [0, 0.6]) {
        for (const sprints of [4, 12]) {
          for (const elapsedShare of [0.3, 0.6, 0.8]) {
            for (let team = 0; team < 4; team += 1) {
              const habit = { meanPoints: 15 + 40 * random.uniform(), spread, boldness, pullsIn };
              const past = Array.from({ length: sprints }, () => workedSprint(random, habit, elapsedShare));
              const history = past.reduce(
                (known, { soFar, velocityPoints }) =>
                  withEndedSprints(known, [{ team: 'a', soFar, velocityPoints }]),
                NO_HISTORY,
              );
              const now = workedSprint(random, habit, elapsedShare);
              const { distribution } = projectVelocity(history, 'a', now.soFar);
              const later = past.map((one) => one.later);
              for (const estimatePoints of [1, 3, 8]) {
                const chance = pullInChance(
                  { estimatePoints, aheadPoints: now.openPoints, surprise: undefined },
                  stillFinishable(distribution, now.soFar, later),
                );
                found.push({
                  boldness,
                  waits: {
                    chance: chance.afterOpenWork,
                    came: now.roomPoints >= now.openPoints + estimatePoints,
                  },
                  first: { chance: chance.doneFirst, came: now.afterPoints >= estimatePoints },
                });
              }
            }
          }
        }
      }
    }
  }
  return found;
}

function compare(of: readonly Case[], which: 'waits' | 'first'): { said: number; came: number } {
  const sum = (amount: (one: Case) => number): number =>
    of.reduce((all, one) => all + amount(one), 0) / of.length;
  return { said: sum((one) => one[which].chance), came: sum((one) => Number(one[which].came)) };
}

describe('of 1,296 cards pulled into generated sprints', () => {
  let all: Case[] = [];

  beforeAll(() => {
    all = cases();
  }, TIMEOUT_MS);

  test('they are so many', () => {
    expect(all).toHaveLength(1296);
  });

  test('those done first are finished about as often as was said', () => {
    const { said, came } = compare(all, 'first');
    expect(Math.abs(said - came)).toBeLessThan(0.04);
  });

  test('those that wait are finished about as often, and rather more often than less', () => {
    const { said, came } = compare(all, 'waits');
    expect(came - said).toBeGreaterThan(-0.03);
    expect(came - said).toBeLessThan(0.09);
  });

  test.each([0.65, 1, 1.4])('the same for teams that commit to %s of what they can', (boldness) => {
    const { said, came } = compare(
      all.filter((one) => one.boldness === boldness),
      'waits',
    );
    expect(came - said).toBeGreaterThan(-0.05);
    expect(came - said).toBeLessThan(0.16);
  });

  test.each([
    [0, 0.2],
    [0.2, 0.5],
    [0.5, 0.8],
    [0.8, 1.001],
  ])('a chance from %s to %s comes true about so often', (from, to) => {
    const alike = all.filter(({ waits }) => waits.chance >= from && waits.chance < to);
    const { said, came } = compare(alike, 'waits');
    expect(alike.length).toBeGreaterThan(100);
    expect(came - said).toBeGreaterThan(-0.06);
    expect(came - said).toBeLessThan(0.16);
  });
});
