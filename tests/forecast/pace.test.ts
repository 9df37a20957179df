import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PaceInput } from '../../src/forecast/pace.ts';
import { paceOf } from '../../src/forecast/pace.ts';

/** Halfway through a sprint of 20 points over ten days, going on evenly. */
const EVEN: PaceInput = {
  openLeftPoints: 10,
  workedPoints: 10,
  loadPoints: 20,
  workingDaysGone: 5,
  workingDaysLeft: 5,
};

function pace(change: Partial<PaceInput>): unknown {
  return paceOf({ ...EVEN, ...change });
}

describe('the load signal is the sprint’s pace so far, carried on to its end', () => {
  test('an even pace is on the line with nothing projected left', () => {
    expect(pace({})).toMatchObject({ signal: 'on the line', projectedLeftPoints: 0 });
  });

  test('projected left = left − worked ÷ days gone × days left', () => {
    expect(
      pace({ openLeftPoints: 18, workedPoints: 4, workingDaysGone: 2, workingDaysLeft: 8 }),
    ).toMatchObject({
      signal: 'on the line',
      projectedLeftPoints: 2,
    });
  });

  test('no amount is to be told of before half of the time is gone', () => {
    const isEarly = (gone: number, left: number) =>
      (pace({ workingDaysGone: gone, workingDaysLeft: left }) as { isEarly: boolean }).isEarly;
    expect([isEarly(2, 8), isEarly(4, 6), isEarly(5, 5), isEarly(6, 4)]).toEqual([true, true, false, false]);
  });

  // A tenth of the load either way is on the line: common practice, no published source.
  test.each<[number, string]>([
    [12.5, 'heavy'],
    [12, 'on the line'],
    [8, 'on the line'],
    [7.5, 'light'],
  ])(
    'with %s points left of a load of 20 and 10 to be expected the signal is %s',
    (openLeftPoints, signal) => {
      expect(pace({ openLeftPoints })).toMatchObject({ signal, projectedLeftPoints: openLeftPoints - 10 });
    },
  );

  test('work that nobody has begun is heavy', () => {
    expect(pace({ openLeftPoints: 20, workedPoints: 0 })).toMatchObject({
      signal: 'heavy',
      projectedLeftPoints: 20,
    });
  });

  test('on the last day only what is left counts', () => {
    expect(pace({ workingDaysGone: 10, workingDaysLeft: 0, openLeftPoints: 3 })).toMatchObject({
      signal: 'heavy',
      projectedLeftPoints: 3,
    });
  });

  test('all work done early leaves room', () => {
    expect(pace({ openLeftPoints: 0, workedPoints: 20 })).toMatchObject({
      signal: 'light',
      projectedLeftPoints: -20,
    });
  });
});

describe('there is no signal', () => {
  test('without work', () => {
    expect(pace({ loadPoints: 0, openLeftPoints: 0, workedPoints: 0 })).toMatchObject({
      signal: undefined,
      because: { code: 'no-work-yet' },
    });
  });

  test.each([0, 1])('after %i working days', (workingDaysGone) => {
    expect(pace({ workingDaysGone })).toMatchObject({
      signal: undefined,
      because: { code: 'few-days', needed: 2 },
    });
  });

  test('but there is one after two', () => {
    expect(pace({ workingDaysGone: 2 })).toMatchObject({ signal: expect.any(String) });
  });
});

test('more left never makes a sprint lighter', () => {
  const order = ['light', 'on the line', 'heavy'];
  const half = fc.integer({ min: 0, max: 400 }).map((halves) => halves / 2);
  fc.assert(
    fc.property(
      half,
      half,
      half,
      fc.integer({ min: 2, max: 20 }),
      fc.nat(20),
      (left, more, worked, gone, ahead) => {
        const at = (openLeftPoints: number): number => {
          const { signal } = paceOf({
            openLeftPoints,
            workedPoints: worked,
            loadPoints: 100,
            workingDaysGone: gone,
            workingDaysLeft: ahead,
          });
          return order.indexOf(signal as string);
        };
        expect(at(left)).toBeGreaterThanOrEqual(0);
        expect(at(left + more)).toBeGreaterThanOrEqual(at(left));
      },
    ),
  );
});
