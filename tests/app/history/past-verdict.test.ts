import { describe, expect, test } from 'vitest';
import { pastVerdict } from '../../../src/app/history/past-sprint.ts';
import { DEFAULT_THRESHOLDS } from '../../../src/sprint/thresholds.ts';
import { type Amounts, pastSprint } from '../../charts/past-examples.ts';

const verdict = (amounts: Amounts, change = {}) =>
  pastVerdict(pastSprint(0, amounts), { thresholds: { ...DEFAULT_THRESHOLDS, ...change } });

describe('how a past sprint came out', () => {
  test('follows both tests of the verdict', () => {
    expect(verdict({ commitment: 20, committedFinished: 16, surprise: 4 })).toBe('kept');
    expect(verdict({ commitment: 20, committedFinished: 15.5, surprise: 4 })).toBe('missed');
    expect(verdict({ commitment: 20, committedFinished: 16, surprise: 4.5 })).toBe('missed');
  });

  test('follows the thresholds of today', () => {
    expect(verdict({ commitment: 20, committedFinished: 16, surprise: 0 }, { keptShareAtLeast: 0.9 })).toBe(
      'missed',
    );
  });

  test('is by the kept share alone when the surprise work was not recorded', () => {
    expect(verdict({ commitment: 20, committedFinished: 16 })).toBe('kept');
    expect(verdict({ commitment: 20, committedFinished: 10 })).toBe('missed');
  });

  test('is not known when it was not recorded what was finished of the commitment', () => {
    expect(verdict({ commitment: 20, velocity: 20, surprise: 0 })).toBe('not-known');
  });

  test('is no plan without a commitment', () => {
    expect(verdict({ commitment: 0, pulledIn: 12 })).toBe('no plan');
  });
});
