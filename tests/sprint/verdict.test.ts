import { describe, expect, test } from 'vitest';
import { DEFAULT_THRESHOLDS } from '../../src/sprint/thresholds.ts';
import { undefinedBecause } from '../../src/sprint/undefined-value.ts';
import { verdictOf } from '../../src/sprint/verdict.ts';

function verdict(keptShare: number, surpriseRatio: number) {
  return verdictOf({ keptShare, surpriseRatio }, { thresholds: DEFAULT_THRESHOLDS });
}

describe('the verdict', () => {
  test('is kept when both values lie on their thresholds', () => {
    expect(verdict(0.8, 0.2)).toEqual({ verdict: 'kept', failedTests: [] });
  });

  test('is missed when the kept share lies a hair below its floor', () => {
    const justBelow = 0.8 - 2 ** -53;
    expect(verdict(justBelow, 0)).toMatchObject({
      verdict: 'missed',
      failedTests: [{ id: 'keptShare', value: justBelow, threshold: 0.8 }],
    });
  });

  test('is missed when the surprise ratio lies a hair above its ceiling', () => {
    const justAbove = 0.2 + 2 ** -55;
    expect(verdict(1, justAbove)).toMatchObject({
      verdict: 'missed',
      failedTests: [{ id: 'surpriseRatio', value: justAbove, threshold: 0.2 }],
    });
  });

  test('names each failed test with its number and its distance', () => {
    expect(verdict(0.5, 0.25)).toEqual({
      verdict: 'missed',
      failedTests: [
        { id: 'keptShare', value: 0.5, threshold: 0.8, distance: expect.closeTo(0.3, 12) },
        { id: 'surpriseRatio', value: 0.25, threshold: 0.2, distance: expect.closeTo(0.05, 12) },
      ],
    });
  });

  test('is no plan when there was no commitment', () => {
    const none = undefinedBecause('no-commitment');
    expect(verdictOf({ keptShare: none, surpriseRatio: none }, { thresholds: DEFAULT_THRESHOLDS })).toEqual({
      verdict: 'no plan',
      failedTests: [],
    });
  });

  test("goes by the team's own thresholds", () => {
    const rules = { thresholds: { keptShareAtLeast: 0.5, surpriseRatioAtMost: 0 } };
    expect(verdictOf({ keptShare: 0.5, surpriseRatio: 0 }, rules).verdict).toBe('kept');
    expect(verdictOf({ keptShare: 0.5, surpriseRatio: 0.01 }, rules).verdict).toBe('missed');
  });

  test('leaves surprise work out where the team says so', () => {
    const rules = { thresholds: DEFAULT_THRESHOLDS, surpriseInVerdict: false };
    expect(verdictOf({ keptShare: 0.8, surpriseRatio: 3 }, rules)).toEqual({
      verdict: 'kept',
      failedTests: [],
    });
    expect(verdictOf({ keptShare: 0.7, surpriseRatio: 3 }, rules).failedTests.map(({ id }) => id)).toEqual([
      'keptShare',
    ]);
  });

  test('a share that equals its threshold as a fraction equals it as a number', () => {
    // 0.8 and 0.2 have no exact binary form, so this would fail for a formula that rounds on the way.
    for (let commitment = 0.5; commitment <= 500; commitment += 0.5) {
      const share = (commitment * 4) / (commitment * 5);
      const ratio = commitment / (commitment * 5);
      expect(verdict(share, ratio).verdict).toBe('kept');
    }
  });
});
