import { expect, test } from 'vitest';
import { pacedSprints, usualMembers } from '../../src/forecast/sprint-times.ts';

const sprint = (velocityPoints: number | undefined, workingDays: number, memberDays?: number) => ({
  velocityPoints,
  workingDays,
  memberDays,
});

test('time is member-days where they are known, else working days × the usual members', () => {
  const past = [sprint(8, 10, 40), sprint(8, 10), sprint(8, 5, 20)];
  expect(pacedSprints(past, usualMembers(past, 99)).map(({ time }) => time)).toEqual([40, 40, 20]);
});

test('where nobody knows who was there, the members of now are taken', () => {
  expect(usualMembers([sprint(8, 10)], 6)).toBe(6);
  expect(usualMembers([], 6)).toBe(6);
});

test('sprints without time or a known velocity show no pace', () => {
  expect(pacedSprints([sprint(undefined, 10, 40), sprint(8, 0), sprint(8, 10, 0)], 4)).toEqual([]);
});
