/** Whether the chances to keep a commitment come true, over generated sprints of known cards (`carded-sprint.ts`). */
import { beforeAll, describe, expect, test } from 'vitest';
import { commitmentModel } from '../../src/forecast/commitment-model.ts';
import { loadReading } from '../../src/forecast/load-signal.ts';
import { NO_HISTORY, projectVelocity, withEndedSprints } from '../../src/forecast/project-velocity.ts';
import { setChances } from '../../src/forecast/set-chances.ts';
import { type CardedHabit, cardedSprint } from './carded-sprint.ts';
import { aPastSprint } from './past-sprint.ts';
import { seededRandom } from './seeded-random.ts';

const FLOOR = 0.8;
const HISTORY = 12;
const ASKED_OF_A_TEAM = 3;
const TEAMS_OF_A_KIND = 50;
const TIMEOUT_MS = 240_000;

interface Case {
  readonly told: number;
  readonly came: boolean;
}

function cases(order: CardedHabit['order'], wrongness: number): { keep: Case[]; ofSums: Case[] } {
  const random = seededRandom(20261129);
  const keep: Case[] = [];
  const ofSums: Case[] = [];
  for (const elapsedShare of [0, 0.3, 0.5, 0.8]) {
    for (const spread of [0.12, 0.25, 0.4]) {
      for (const boldness of [0.8, 1, 1.3]) {
        for (const scale of [
          [1, 2, 3],
          [1, 2, 3, 5, 8],
          [5, 8, 13],
        ]) {
          for (let team = 0; team < TEAMS_OF_A_KIND; team += 1) {
            const habit = {
              meanPoints: 20 + 30 * random.uniform(),
              spread,
              boldness,
              wrongness,
              order,
              scale,
            };
            let history = NO_HISTORY;
            for (let i = 0; i < HISTORY; i += 1) {
              const { soFar, velocityPoints } = cardedSprint(random, habit, elapsedShare);
              history = withEndedSprints(history, [{ team: 'a', soFar, velocityPoints }]);
            }
            for (let i = 0; i < ASKED_OF_A_TEAM; i += 1) {
              const now = cardedSprint(random, habit, elapsedShare);
              const { finishedPoints } = now.soFar;
              const needed = Math.ceil(FLOOR * now.commitmentPoints * 2 - 1e-9) / 2;
              const { distribution } = projectVelocity(history, 'a', now.soFar);
              const { keepingChance } = loadReading(distribution, {
                ...now,
                finishedPoints,
                missingPoints: needed - finishedPoints,
              });
              const came = now.velocityPoints >= needed;
              keep.push({ told: keepingChance, came });
              ofSums.push({ told: 1 - distribution.cdf(needed - 0.25), came });
            }
          }
        }
      }
    }
  }
  return { keep, ofSums };
}

function mean(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0) / values.length;
}

/** How far the chances were from what came, squared; 0 is best. Source: Brier, 1950. */
function brier(of: readonly Case[]): number {
  return mean(of.map(({ told, came }) => (told - Number(came)) ** 2));
}

describe.each([
  ['in a row', 0],
  ['in a row', 0.3],
  ['side by side', 0],
  ['side by side', 0.3],
] as const)(
  'of 16,200 sprints of teams that work %s, on cards that take %s more or less',
  (order, wrongness) => {
    let of: ReturnType<typeof cases>;

    beforeAll(() => {
      of = cases(order, wrongness);
    }, TIMEOUT_MS);

    test('each tenth of the chances comes true as often as was told, within 7 points', () => {
      expect(of.keep).toHaveLength(16_200);
      for (let tenth = 0; tenth < 10; tenth += 1) {
        const alike = of.keep.filter(({ told }) => Math.min(9, Math.floor(told * 10)) === tenth);
        expect(alike.length).toBeGreaterThanOrEqual(50);
        const told = mean(alike.map((one) => one.told));
        const came = mean(alike.map((one) => Number(one.came)));
        expect(Math.abs(told - came), `told ${told}, came ${came}`).toBeLessThan(0.07);
      }
    });

    test('they are as near to what came as the chance of the floor’s points, which knows no cards, or nearer', () => {
      expect(brier(of.keep)).toBeLessThan(brier(of.ofSums) + 0.001);
    });
  },
);

// Where cards are dealt to people who don't help each other, some run dry while others are late, and the more so the smaller
// a plan is beside earlier ones; from sizes alone nobody can know it, so too much is told.
describe.each([
  ['in a row', 0.07],
  ['from one list', 0.08],
  ['side by side', 0.12],
] as const)('of 2,160 plans of teams that work %s', (order, most) => {
  test('each fifth of the chances to keep with 300 cases or more comes true about as often as was told', () => {
    const random = seededRandom(20261130);
    const keep: Case[] = [];
    for (const spread of [0.12, 0.25, 0.4]) {
      for (const boldness of [0.8, 1, 1.3]) {
        for (let team = 0; team < 60; team += 1) {
          const habit = { meanPoints: 20 + 30 * random.uniform(), spread, boldness, wrongness: 0.3, order };
          const played = (change: Partial<CardedHabit>) =>
            cardedSprint(random, { ...habit, scale: [1, 2, 3, 5, 8], ...change }, 0.5);
          const past = Array.from({ length: HISTORY }, () => {
            const { commitmentPoints, velocityPoints } = played({});
            const finished = { velocityPoints, committedFinishedPoints: velocityPoints };
            return aPastSprint({ commitmentPoints, ...finished });
          });
          const model = commitmentModel(past, {
            workingDays: 10,
            memberDays: 50,
            memberDaysWhenAllThere: 50,
          });
          if ('undefined' in model || 'undefined' in model.finishes) throw new Error('no model');
          for (let i = 0; i < 4; i += 1) {
            const plan = played({ boldness: 0.6 + 0.9 * random.uniform() });
            const told = setChances(model.finishes.amountOf, plan.sizes, FLOOR)?.kept as number;
            keep.push({ told, came: plan.velocityPoints >= FLOOR * plan.commitmentPoints - 1e-9 });
          }
        }
      }
    }
    expect(keep).toHaveLength(2160);
    const fifths = Map.groupBy(keep, ({ told }) => Math.min(4, Math.floor(told * 5)));
    const large = [...fifths.values()].filter(({ length }) => length >= 300);
    expect(large.length).toBeGreaterThan(1);
    for (const alike of large) {
      const told = mean(alike.map((one) => one.told));
      const came = mean(alike.map((one) => Number(one.came)));
      expect(Math.abs(told - came), `told ${told}, came ${came}`).toBeLessThan(most);
    }
  }, 240_000);
});
