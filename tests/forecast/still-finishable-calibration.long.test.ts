/** Whether the chances of pulled-in cards come true, over generated sprints. */
import { beforeAll, describe, expect, test } from 'vitest';
import { laterPace, pacedVelocity, paceShare } from '../../src/forecast/paced-velocity.ts';
import { NO_HISTORY, projectVelocity, withEndedSprints } from '../../src/forecast/project-velocity.ts';
import { pullInChance } from '../../src/forecast/pull-in-chance.ts';
import { stillFinishable } from '../../src/forecast/still-finishable.ts';
import { seededRandom } from './seeded-random.ts';
import { workedSprint } from './worked-sprint.ts';

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
              const pace = laterPace(past.map((one) => one.later));
              const { plannedOpenPoints } = now;
              const finishable = stillFinishable(now.soFar, (morePoints) => {
                const soFar = { ...now.soFar, cardPoints: now.soFar.cardPoints + morePoints };
                const { distribution } = projectVelocity(history, 'a', soFar);
                return pacedVelocity(distribution, { ...soFar, plannedOpenPoints }, pace, paceShare(0));
              });
              for (const estimatePoints of [1, 3, 8]) {
                const chance = pullInChance(
                  {
                    estimatePoints,
                    aheadPoints: now.openPoints - now.soFar.underwayPoints,
                    surprise: undefined,
                  },
                  finishable,
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

  // These teams can do the same whatever they plan; real ones rather finish a share of it, which the projection goes by.
  test('those done first are finished more often than was said, and not much more', () => {
    const { said, came } = compare(all, 'first');
    expect(came - said).toBeGreaterThan(-0.03);
    expect(came - said).toBeLessThan(0.11);
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
