import { expect, test } from 'vitest';
import { isDefined, ratioOf, undefinedBecause } from '../../src/sprint/undefined-value.ts';

test('a ratio over 0 is the reason, even when the numerator is 0 as well', () => {
  expect(ratioOf(3, 0, 'Why.')).toEqual({ undefined: 'Why.' });
  expect(ratioOf(0, 0, 'Why.')).toEqual({ undefined: 'Why.' });
});

test('0 over something is the number 0', () => {
  expect(ratioOf(0, 4, 'Why.')).toBe(0);
  expect(isDefined(0)).toBe(true);
  expect(isDefined(undefinedBecause('Why.'))).toBe(false);
});
