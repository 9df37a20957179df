import { expect, test } from 'vitest';
import type { PlanWarning } from '../../src/app/planning/plan-warnings.ts';
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
    '• Cards 2, 3, 1004 have no owner yet, so nobody is asked about them until somebody takes them.',
  ],
])('a warning about a plan names its cards: %o', (warning, words) => {
  expect(planWarning(warning)).toBe(words);
});
