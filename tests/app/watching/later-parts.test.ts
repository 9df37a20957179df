import { describe, expect, test } from 'vitest';
import { laterParts } from '../../../src/app/watching/later-parts.ts';
import { aPastSprint, finishing, missing, pastSprintsOf } from '../past-sprints.ts';

/** Everything finished evenly over ten working days. */
function evenly(points: number) {
  const trace = Array.from({ length: 11 }, (_, i) => ({
    cardPoints: points,
    finishedPoints: (points * i) / 10,
    underwayPoints: 0,
  }));
  return { ...finishing(points, 0), trace };
}

describe('what past sprints did from a moment on', () => {
  const time = { elapsedShare: 0.4, total: 10, memberDays: 30 };

  test('is what they finished after it, and whether they had time to spare', () => {
    const half = aPastSprint({
      ...missing(20, 15),
      trace: [
        { cardPoints: 20, finishedPoints: 0, underwayPoints: 0 },
        { cardPoints: 20, finishedPoints: 9, underwayPoints: 0 },
        { cardPoints: 20, finishedPoints: 15, underwayPoints: 0 },
      ],
    });
    expect(laterParts([half], { elapsedShare: 0.5, total: 10, memberDays: 30 }, 3)).toEqual([
      { workedPoints: 6, evenPoints: 7.5, openPoints: 11, hadTimeToSpare: false, isWatched: true },
    ]);
    expect(laterParts([aPastSprint(evenly(20))], time, 3)).toEqual([
      { workedPoints: 12, evenPoints: 12, openPoints: 12, hadTimeToSpare: true, isWatched: true },
    ]);
  });

  test('has no time to spare where work was pulled in after it', () => {
    const trace = [
      { cardPoints: 20, finishedPoints: 0, underwayPoints: 0 },
      { cardPoints: 25, finishedPoints: 25, underwayPoints: 0 },
    ];
    const [part] = laterParts(
      [aPastSprint({ ...finishing(20, 5), trace })],
      { elapsedShare: 0, total: 10, memberDays: 30 },
      3,
    );
    expect(part).toMatchObject({ workedPoints: 25, hadTimeToSpare: false });
  });

  test('is taken to have gone evenly where nobody watched, and is unknown without a velocity', () => {
    const [imported] = laterParts([aPastSprint(missing(20, 15))], time, 3);
    expect(imported).toEqual({
      workedPoints: 9,
      evenPoints: 9,
      openPoints: 20,
      hadTimeToSpare: false,
      isWatched: false,
    });
    expect(laterParts([aPastSprint(finishing(20, 0))], time, 3)[0]?.hadTimeToSpare).toBe(true);
    expect(laterParts([aPastSprint({ velocityPoints: undefined })], time, 3)).toEqual([]);
  });

  test('is scaled to the length of this sprint, and looks at the latest twelve', () => {
    const past = pastSprintsOf(Array.from({ length: 15 }, (_, i) => missing(20, i)));
    const later = laterParts(past, { elapsedShare: 0, total: 5, memberDays: 15 }, 3);
    expect(later.map(({ workedPoints }) => workedPoints)).toEqual(
      Array.from({ length: 12 }, (_, i) => (i + 3) / 2),
    );
  });
});
