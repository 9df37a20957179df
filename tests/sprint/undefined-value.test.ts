import { expect, test } from 'vitest';
import { isDefined, ratioOf, undefinedBecause } from '../../src/sprint/undefined-value.ts';

test('a ratio over 0 is the reason, even when the numerator is 0 as well', () => {
  expect(ratioOf(3, 0, 'no-load')).toEqual({ undefined: { code: 'no-load' } });
  expect(ratioOf(0, 0, 'no-card-of-size', { estimatePoints: 8 })).toEqual({
    undefined: { code: 'no-card-of-size', estimatePoints: 8 },
  });
});

test('0 over something is the number 0', () => {
  expect(ratioOf(0, 4, 'no-load')).toBe(0);
  expect(isDefined(0)).toBe(true);
  expect(isDefined(undefinedBecause('no-load'))).toBe(false);
});
