/** What the store promises of the clock; run by `queries.test.ts`. */
import { expect, it } from 'vitest';
import type { Claims } from '../../src/app/ports/locks.ts';
import type { Sprint } from '../../src/app/team/team.ts';
import type { Database } from '../../src/store/database.ts';
import { savedSprint } from './store-examples.ts';

type Claim = 'promptsDue' | 'remindersDue' | 'lastCallsDue' | 'closingsDue';

// Each in a year of its own, so that no test sees the sprints of another.
const CASES: readonly [Claim, keyof Sprint, string][] = [
  ['promptsDue', 'nextPromptAt', '2001'],
  ['remindersDue', 'nextReminderAt', '2002'],
  ['lastCallsDue', 'lastCallAt', '2003'],
  ['closingsDue', 'closesAtInstant', '2004'],
];

export function clockQueryCases(database: () => Database): void {
  const NOTHING_DUE = {
    nextPromptAt: undefined,
    nextReminderAt: undefined,
    lastCallAt: undefined,
    closesAtInstant: new Date('2099-01-01T00:00:00Z'),
  };
  const ids = (due: Awaited<ReturnType<Claims[Claim]>>) => due.map(({ sprint }) => sprint.id);

  it.each(CASES)(
    '%s gives open sprints whose time has come, earliest first, with their teams',
    async (claim, field, year) => {
      const at = (time: string) => ({ ...NOTHING_DUE, [field]: new Date(`${year}-05-04T${time}Z`) });
      const now = new Date(`${year}-05-04T09:15:00Z`);
      const justNow = await savedSprint(database(), at('09:15:00'));
      const earlier = await savedSprint(database(), at('08:00:00'));
      await savedSprint(database(), at('09:15:00.001'));
      await savedSprint(database(), { ...at('08:00:00'), state: 'closed', closedAt: now });
      await database().store.transaction(async (tx) => {
        expect(await tx.claim[claim](now, { limit: 10 })).toEqual([earlier, justNow]);
        expect(ids(await tx.claim[claim](now, { limit: 1 }))).toEqual([earlier.sprint.id]);
      });
      // Out of the way of the next case.
      await database().store.transaction(async (tx) => {
        for (const { sprint } of await tx.claim[claim](new Date(`${year}-12-31T00:00:00Z`), { limit: 10 })) {
          await tx.write.sprints.update({ ...sprint, ...NOTHING_DUE });
        }
      });
    },
  );

  it('knows when the clock has something of any kind to do next, for open sprints only', async () => {
    const nextAfter = async (sprint: Partial<Sprint>) => {
      await savedSprint(database(), { ...NOTHING_DUE, ...sprint });
      return database().store.read((read) => read.nextDueAt());
    };
    const at = (year: number) => new Date(Date.UTC(year, 0, 1));
    expect(await nextAfter({ closesAtInstant: at(1909) })).toEqual(at(1909));
    expect(await nextAfter({ lastCallAt: at(1908) })).toEqual(at(1908));
    expect(await nextAfter({ nextReminderAt: at(1907) })).toEqual(at(1907));
    expect(await nextAfter({ nextPromptAt: at(1906) })).toEqual(at(1906));
    expect(await nextAfter({ nextPromptAt: at(1905), state: 'closed', closedAt: at(1905) })).toEqual(
      at(1906),
    );
    // Out of the way of what comes after.
    await database().store.transaction(async (tx) => {
      for (const [claim] of CASES) {
        for (const { sprint } of await tx.claim[claim](at(1910), { limit: 10 })) {
          await tx.write.sprints.update({ ...sprint, ...NOTHING_DUE });
        }
      }
    });
  });
}
