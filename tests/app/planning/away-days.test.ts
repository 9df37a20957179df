import { expect, it } from 'vitest';
import { whyNotAwayDays } from '../../../src/app/planning/away-days.ts';

it.each([0, 0.5, 30])('%d days off and away of 3 members in 10 working days are possible', (awayDays) => {
  expect(whyNotAwayDays(awayDays, 10, 3)).toBeUndefined();
});

it('no more than all days of all members can be off or away', () => {
  expect(whyNotAwayDays(30.5, 10, 3)).toEqual({
    code: 'too-many-away-days',
    members: 3,
    workingDays: 10,
    most: 30,
    given: 30.5,
  });
});
