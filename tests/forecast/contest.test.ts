/** The contest of sums and cards on simulated teams. Nothing here is real: the rules are written beside each team. */
import { describe, expect, test } from 'vitest';
import {
  type ContestCase,
  contestCases,
  LEAST_CONTEST_SPRINTS,
  speaker,
} from '../../src/forecast/contest.ts';
import { simulatedTeam } from './simulated-team.ts';

function mean(cases: readonly ContestCase[], model: 'sums' | 'cards'): number {
  return cases.reduce((sum, each) => sum + each[model].crps, 0) / cases.length;
}

function held(cases: readonly ContestCase[], model: 'sums' | 'cards'): number {
  return cases.filter((each) => each[model].isHeld).length / cases.length;
}

describe.each([5, 8])('on evening %s of ten', (evening) => {
  test('where queues and stuck cards decide, the model of cards is nearer, and speaks', () => {
    const cases = [1, 2, 3, 4, 5].flatMap((seed) => [
      ...contestCases(simulatedTeam({ seed, sprints: 30, evening, rule: 'queues' }), 6),
    ]);
    expect(mean(cases, 'cards')).toBeLessThan(0.93 * mean(cases, 'sums'));
    expect(speaker(cases)).toBe('cards');
  });

  test('its middle four fifths hold about as often as they should', () => {
    const cases = [1, 2, 3, 4, 5].flatMap((seed) => [
      ...contestCases(simulatedTeam({ seed, sprints: 30, evening, rule: 'queues' }), 6),
    ]);
    expect(held(cases, 'cards')).toBeGreaterThan(0.72);
    expect(held(cases, 'cards')).toBeLessThan(0.95);
  });

  test('where the whole sprint goes well or badly whatever the cards, it is hardly ever much worse', () => {
    const cases = [1, 2, 3, 4, 5].flatMap((seed) => [
      ...contestCases(simulatedTeam({ seed, sprints: 30, evening, rule: 'whole' }), 6),
    ]);
    expect(mean(cases, 'cards')).toBeLessThan(1.15 * mean(cases, 'sums'));
  });
});

test('with few sprints the model of sums speaks, however well the other did', () => {
  const sure = { crps: 0, error: 0, isHeld: true };
  const unsure = { crps: 5, error: 5, isHeld: false };
  const cases = Array.from({ length: LEAST_CONTEST_SPRINTS }, () => ({ sums: unsure, cards: sure }));
  expect(speaker(cases.slice(1))).toBe('sums');
  expect(speaker(cases)).toBe('cards');
});

test('no sprint is foretold from what came later', () => {
  const past = simulatedTeam({ seed: 7, sprints: 12, evening: 5, rule: 'queues' });
  expect([...contestCases(past.slice(0, 10), 0)]).toEqual([...contestCases(past, 0)].slice(0, 10));
});
