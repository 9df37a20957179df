import { expect, test } from 'vitest';
import { readOpenData, type SprintMoment } from '../open-data/read-open-data.ts';
import { FinishShareRule } from './finish-share-rule.ts';
import { HEADER } from './invented-sprints.ts';

/** At half-time, of 20 committed. */
function sprint(board: number, done: number, delivered: number): SprintMoment {
  const csv = [HEADER, `${board},1,14,50,20,0,0,${20 - done},0,${done},4,${delivered}`].join('\n');
  return readOpenData(csv, 'invented.csv')[0] as SprintMoment;
}

/** Worked out by hand from the rule. */
function guessAfter(sprints: readonly SprintMoment[], now: SprintMoment): number {
  const rule = new FinishShareRule();
  for (const each of sprints) rule.learn(each);
  return rule.guessPoints(now);
}

test('what is finished, and of the open work the usual share', () => {
  // Of the open 10, 16 and 20 points 4, 12 and 12 got finished: 0.4, 0.75 and 0.6.
  const past = [sprint(1, 10, 14), sprint(1, 4, 16), sprint(1, 0, 12)];
  expect(guessAfter(past, sprint(1, 5, 0))).toBe(5 + 15 * 0.6);
});

test('only the latest twelve of the team count', () => {
  const past = [...Array.from({ length: 12 }, () => 0), ...Array.from({ length: 12 }, () => 10)];
  const guess = guessAfter(
    past.map((delivered) => sprint(1, 0, delivered)),
    sprint(1, 0, 0),
  );
  expect(guess).toBe(10);
});

test('with fewer than three sprints of its own a team borrows from all, and without any all gets finished', () => {
  const others = [sprint(2, 0, 2), sprint(2, 0, 4), sprint(2, 0, 6), sprint(1, 0, 20), sprint(1, 0, 20)];
  expect(guessAfter(others, sprint(1, 0, 0))).toBe(6);
  expect(guessAfter([], sprint(1, 4, 0))).toBe(20);
});

test('a sprint with nothing open says nothing, and nothing open brings nothing', () => {
  expect(guessAfter([sprint(1, 20, 30)], sprint(1, 0, 0))).toBe(20);
  expect(guessAfter([sprint(1, 0, 10)], sprint(1, 20, 0))).toBe(20);
});
