import { expect, it } from 'vitest';
import { promptContentOf } from '../../../src/app/answering/prompt-content.ts';
import { aSprint, aTeam } from '../../store/store-examples.ts';

// IANA tz 2025c: on 2026-11-01 New York goes back to UTC−5 at 06:00Z.
it.each([
  ['2026-10-30', '2026-10-30T13:15:00.000Z'],
  ['2026-11-02', '2026-11-02T14:15:00.000Z'],
])('a prompt knows when it was due, by the team’s own clock: %s', (day, dueAt) => {
  const team = aTeam({ promptAt: '09:15', timeZone: 'America/New_York' });
  const content = promptContentOf(
    team,
    aSprint(team.id),
    { userId: 'U-ana' },
    day,
    { cards: [], facts: [] },
    'asked',
  );
  expect(content.dueAt?.toISOString()).toBe(dueAt);
});
