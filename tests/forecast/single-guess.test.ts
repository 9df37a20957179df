import { expect, test } from 'vitest';
import { singleGuess, usualOutcome } from '../../src/forecast/single-guess.ts';
import { weightedPoints } from '../../src/forecast/weighted-points.ts';

const EVEN = weightedPoints([0, 10, 20, 30, 40], [1, 1, 1, 1, 1]);

function past(team: string, velocityPoints: number, cardPoints = 20, finishedPoints = 0) {
  return { team, velocityPoints, soFar: { cardPoints, finishedPoints, underwayPoints: 0 } };
}

const NOW = { cardPoints: 50, finishedPoints: 10, underwayPoints: 0 };

test('the middle of what past sprints say is the mean of its middle fifth', () => {
  expect(singleGuess(EVEN, 5, undefined)).toBeCloseTo(20, 12);
  // Half of the middle fifth lies on each side of the even chance.
  expect(singleGuess(weightedPoints([10, 20], [1, 1]), 5, undefined)).toBeCloseTo(15, 12);
});

test('what is usual counts for a half where no sprint is alike, and the less, the more are', () => {
  const guesses = [0, 0.25, 1, 1e9].map((alike) => singleGuess(EVEN, alike, 40));
  // ½·¼ ÷ (¼ + alike) of the way from 20 to 40.
  for (const [i, expected] of [30, 25, 22, 20].entries()) expect(guesses[i]).toBeCloseTo(expected, 6);
});

test('what is usual draws the guess no further than any past sprint says', () => {
  expect(singleGuess(EVEN, 0, 4000)).toBe(singleGuess(EVEN, 0, 40));
  expect(singleGuess(EVEN, 0, -100)).toBe(singleGuess(EVEN, 0, 0));
});

test('the usual share is the median of the team’s latest twelve sprints, of what was open then', () => {
  const older = Array.from({ length: 20 }, () => past('A', 0));
  // 5 of 10 open points each, six times, and all of them six times.
  const latest = [
    ...Array.from({ length: 6 }, () => past('A', 15, 20, 10)),
    ...Array.from({ length: 6 }, () => past('A', 20, 20, 10)),
  ];
  expect(usualOutcome([...older, ...latest], 'A', NOW)).toBe(10 + 0.75 * 40);
  expect(usualOutcome([...latest, ...older], 'A', NOW)).toBe(10);
});

test('with fewer than three sprints of its own the share is that of all teams', () => {
  const others = [0.1, 0.2, 0.3, 0.4].map((share) => past('B', 20 * share));
  const own = [past('A', 20), past('A', 20)];
  expect(usualOutcome([...others, ...own], 'A', NOW)).toBeCloseTo(10 + 0.35 * 40, 12);
  expect(usualOutcome([...others, ...own, past('A', 20)], 'A', NOW)).toBe(50);
});

test('sprints with nothing open and those that nobody watched say nothing of it', () => {
  const unwatched = { team: 'A', velocityPoints: 20, soFar: { cardPoints: 20, elapsedShare: 0.5 } };
  const nothingOpen = past('A', 20, 20, 20);
  expect(usualOutcome([unwatched, unwatched, unwatched, nothingOpen], 'A', NOW)).toBeUndefined();
  expect(usualOutcome([past('A', 5), past('A', 5), unwatched, nothingOpen], 'A', NOW)).toBeUndefined();
});
