import { describe, expect, test } from 'vitest';
import type { SetReading } from '../../src/app/advice/set-advice.ts';
import type { PlanWarning } from '../../src/app/planning/plan-warnings.ts';
import { planTimeLines } from '../../src/words/days-off.ts';
import { planSetWords } from '../../src/words/plan-advice.ts';
import { planWarning } from '../../src/words/planning.ts';

test.each<[PlanWarning, string]>([
  [
    { code: 'off-scale', cardNumbers: [2], scale: [1, 2.5, 5] },
    '• The estimate of card 2 isn’t on your scale (1, 2.5, 5), so the on-scale share can never count it.',
  ],
  [
    { code: 'off-scale', cardNumbers: [1, 2], scale: [1, 2] },
    '• The estimates of cards 1, 2 aren’t on your scale (1, 2), so the on-scale share can never count them.',
  ],
  [
    { code: 'no-owner', cardNumbers: [4] },
    '• Card 4 has no owner yet, so nobody is asked about it until somebody takes it.',
  ],
  [
    { code: 'no-owner', cardNumbers: [2, 3, 1004] },
    '• Cards 2, 3 and 1004 have no owner yet, so nobody is asked about them until somebody takes them.',
  ],
])('a warning about a plan names its cards: %o', (warning, words) => {
  expect(planWarning(warning)).toBe(words);
});

describe('the chances of a plan’s own cards', () => {
  const set: SetReading = {
    points: 23,
    floor: 0.8,
    chance: { kept: 0.7, all: 0.5 },
    isAllNeeded: false,
    endangering: undefined,
    sprints: 8,
  };

  test('say why they are worse than those of as many points in any cards', () => {
    expect(planSetWords(set, 0.9)).toContain(
      'In smaller cards the same points would be at about 9 in 10, for only whole cards count as finished.',
    );
    for (const same of [0.72, { undefined: { code: 'no-points' } } as const])
      expect(planSetWords(set, same)).not.toContain('smaller');
  });
});

test('days off and away that a plan names are taken off, and it is said how those count that nobody entered', () => {
  const time = { memberDays: 36, teamOff: [], people: [] };
  const lead = (namedDays: number, onlyNamedDays: number) =>
    planTimeLines({ ...time, namedDays, onlyNamedDays }).lead;
  expect(lead(0, 0)).toBe('36 working days of all members together.');
  expect(lead(4, 3)).toBe(
    '36 working days of all members together, the 4 off or away taken off. What nobody has entered with `/loadline off` (3) counts as spread over the whole sprint.',
  );
  expect(lead(4, 0)).toBe(
    '36 working days of all members together. The 4 off or away that you named are among the days off that are entered, and count once.',
  );
});
