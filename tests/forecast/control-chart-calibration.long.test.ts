/**
 * How often a chart cries wolf, and how soon it sees a real change. The worlds are made up: no open data hold the ratios
 * of a team in which nothing changed.
 */
import { describe, expect, test } from 'vitest';
import { type ControlChart, controlChart } from '../../src/forecast/control-chart.ts';
import { seededRandom } from './seeded-random.ts';

const { uniform, normal } = seededRandom(20261129);
const exponential = (): number => -Math.log(1 - uniform());
const SIZES = [1, 2, 3, 5, 8];

/** The share of 6 to 12 cards' points that are finished, each card with the same chance. */
const kept = (chance: number) => (): number => {
  const sizes = Array.from(
    { length: 6 + Math.floor(uniform() * 7) },
    () => SIZES[Math.floor(uniform() * 5)] ?? 0,
  );
  const finished = sizes.filter(() => uniform() < chance);
  const sum = (points: readonly number[]): number => points.reduce((total, one) => total + one, 0);
  return sum(finished) / sum(sizes);
};
/** No surprise work in so many sprints, else 15% of the commitment on average, with a long tail. */
const surprise = (none: number) => (): number => (uniform() < none ? 0 : 0.15 * exponential());

const WORLDS: Record<string, () => number> = {
  'velocity, even': () => 1 + 0.2 * normal(),
  'velocity, skewed': () => Math.exp(0.4 * normal()),
  'kept share near its end': kept(0.97),
  'kept share of 85%': kept(0.85),
  'kept share of 70%': kept(0.7),
  'surprise in each sprint': surprise(0),
  'surprise in half of the sprints': surprise(0.5),
  'surprise in three of ten sprints': surprise(0.7),
  'surprise in one of ten sprints': surprise(0.9),
};
const SPRINTS = [8, 12, 26];

function sprintsOf(world: () => number, count: number): number[] {
  return Array.from({ length: count }, world);
}

function isSignal(values: readonly number[]): boolean {
  return (controlChart(values) as ControlChart).latest.reading === 'signal';
}

describe.each(Object.entries(WORLDS))('%s', (_name, world) => {
  test.each(SPRINTS)(
    'where nothing changes, at most 20 in 1,000 latest values are a signal: %i sprints',
    (count) => {
      const teams = 2000;
      const alarms = Array.from({ length: teams }, () => isSignal(sprintsOf(world, count))).filter(
        Boolean,
      ).length;
      expect(alarms / teams).toBeLessThanOrEqual(0.02);
    },
  );

  test.each(SPRINTS)(
    'a change of two deviations is seen within six sprints in at least half: after %i',
    (before) => {
      const many = sprintsOf(world, 20_000);
      const mean = many.reduce((sum, value) => sum + value, 0) / many.length;
      const deviation = Math.sqrt(many.reduce((sum, value) => sum + (value - mean) ** 2, 0) / many.length);
      for (const change of [2 * deviation, -2 * deviation]) {
        const teams = 400;
        const seen = Array.from({ length: teams }, () => {
          const values = sprintsOf(world, before + 6).map((value, i) =>
            i < before ? value : value + change,
          );
          return [1, 2, 3, 4, 5, 6].some((sprints) => isSignal(values.slice(0, before + sprints)));
        }).filter(Boolean).length;
        expect(seen / teams).toBeGreaterThanOrEqual(0.5);
      }
    },
  );
});

test('of eight numbers at once, about one look in twenty shows a signal where nothing changes', () => {
  const looks = 1000;
  const worlds = Object.values(WORLDS).slice(0, 8);
  for (const count of SPRINTS) {
    const alarms = Array.from({ length: looks }, () =>
      worlds.some((world) => isSignal(sprintsOf(world, count))),
    ).filter(Boolean).length;
    expect(alarms / looks, `${count} sprints`).toBeLessThanOrEqual(0.06);
  }
});
