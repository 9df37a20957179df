/** How many messages members get in a month of two sprints: at most one a working day, a reminder and a last call, on two teams as well. */
import { expect, test } from 'vitest';
import { harnessForEach, type PersonName } from '../../support/app-harness.ts';
import {
  BEFORE_THE_MONTH,
  type MessagesOfDay,
  playMonth,
  SPRINTS_OF_MONTH,
  WORKING_DAYS_OF_MONTH,
} from '../../support/month-of-messages.ts';

const harness = harnessForEach(BEFORE_THE_MONTH);

const LAST_DAYS = SPRINTS_OF_MONTH.map(({ endsOn }) => endsOn);
const FIRST_DAYS = SPRINTS_OF_MONTH.map(({ startsOn }) => startsOn);

const kindsOf = (got: readonly MessagesOfDay[], who: PersonName): string[] =>
  got.filter((message) => message.who === who).flatMap(({ kinds }) => kinds);

test('a member gets one message a working day, with a reminder if they are silent and a last call at the end', async () => {
  const got = await playMonth(harness());
  const weekend = ['2026-11-07', '2026-11-08', '2026-11-21', '2026-11-22'];
  for (const { who, day, kinds } of got) {
    const expected = weekend.includes(day)
      ? []
      : [
          'daily-prompt',
          ...(who === 'chi' && !FIRST_DAYS.includes(day) ? ['reminder'] : []),
          ...(LAST_DAYS.includes(day) ? ['last-call'] : []),
        ];
    expect([who, day, kinds]).toEqual([who, day, expected]);
  }
  const days = WORKING_DAYS_OF_MONTH;
  expect([kindsOf(got, 'ben').length, kindsOf(got, 'chi').length]).toEqual([days + 2, days + (days - 2) + 2]);
});

test('a member of two teams that ask at the same time gets no more', async () => {
  const got = await playMonth(harness(), ['C1', 'C2']);
  for (const { who, kinds } of got) if (who === 'chi') expect(kinds).toEqual([...new Set(kinds)]);
  const days = WORKING_DAYS_OF_MONTH;
  expect(kindsOf(got, 'chi')).toHaveLength(days + (days - 2) + 2);
});
