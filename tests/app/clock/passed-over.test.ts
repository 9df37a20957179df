/** A row of one team that makes the clock's work fail, as a defect or a damaged disk may leave it, holds up no other team. */
import { sql } from 'drizzle-orm';
import { describe, expect, it, test } from 'vitest';
import { runDueWork } from '../../../src/app/clock/ask-members.ts';
import { portions } from '../../../src/app/in-portions.ts';
import { StoreTrouble } from '../../../src/app/ports/store-trouble.ts';
import { letGoOfOld } from '../../../src/app/privacy/ended-teams.ts';
import { type Harness, harnessForEach } from '../../support/app-harness.ts';
import { rowsOf } from '../../support/rows-of.ts';

const harness = harnessForEach('2026-10-30T12:00:00Z');

/** Two teams with the same sprint, the first of which is damaged. */
async function twoTeams(h: Harness) {
  const planned = async (channelId: string, name: string) => {
    const team = await h.setUpTeam({ channelId, name });
    return { team, sprint: (await h.plan(team)).sprint };
  };
  const [damaged, whole] = [await planned('C1', 'Damaged'), await planned('C2', 'Whole')];
  const ids: string[] = [];
  return {
    damaged,
    whole,
    /** Of what was passed over. */
    ids,
    async tick(at: string) {
      h.set(at);
      await runDueWork(h.deps, (id) => ids.push(id));
    },
    async letGo(at: string) {
      h.set(at);
      while ((await letGoOfOld(h.deps, (id) => ids.push(id))) > 0);
    },
  };
}

const askedIn = async (h: Harness): Promise<string[]> =>
  (await rowsOf<{ id: string }>(h.database, sql`select distinct sprint_id as id from loadline.prompts`)).map(
    ({ id }) => id,
  );

/** What a team or a member can't be served with; each was tried on the columns of every table. */
const DAMAGES = [
  sql`update loadline.teams set time_zone = 'Mars/Base' where channel_id = 'C1'`,
  sql`update loadline.teams set days_off = 'null' where channel_id = 'C1'`,
  sql`update loadline.members set days_off = '{}' from loadline.teams as t where t.id = team_id and channel_id = 'C1'`,
  sql`update loadline.sprints set ends_on = '9999-12-31' from loadline.teams as t where t.id = team_id and channel_id = 'C1'`,
  sql`update loadline.members set guest_in = '{}' from loadline.teams as t where t.id = team_id and channel_id = 'C1'`,
];

describe('a damaged row of one team', () => {
  it.each(DAMAGES)('lets the others be asked and their sprints end: %#', async (damage) => {
    const h = harness();
    const { damaged, whole, ids, tick } = await twoTeams(h);
    await h.database.session.execute(damage);
    await tick('2026-11-02T09:15:00Z');
    expect(await askedIn(h)).toEqual([whole.sprint.id]);
    expect(new Set(ids)).toEqual(new Set([damaged.sprint.id]));
    await tick('2026-11-13T17:00:00Z');
    expect((await h.sprint(whole.sprint.id)).state).toBe('closed');
    expect((await h.sprint(damaged.sprint.id)).state).toBe('open');
  });

  test('is made up for once it is mended', async () => {
    const h = harness();
    const { damaged, tick, ids } = await twoTeams(h);
    await h.database.session.execute(DAMAGES[0] as (typeof DAMAGES)[0]);
    await tick('2026-11-02T09:15:00Z');
    const before = ids.length;
    await h.database.session.execute(
      sql`update loadline.teams set time_zone = 'Europe/Lisbon' where channel_id = 'C1'`,
    );
    await tick('2026-11-02T09:16:00Z');
    expect(await askedIn(h)).toContain(damaged.sprint.id);
    expect(ids).toHaveLength(before);
  });

  test('lets what others have be reduced by their retention', async () => {
    const h = harness();
    const { damaged, whole, ids, tick, letGo } = await twoTeams(h);
    await tick('2026-11-13T17:00:00Z');
    await h.database.session.execute(
      sql`update loadline.past_sprints set cards = 'null' where sprint_id = ${damaged.sprint.id}`,
    );
    await letGo('2028-02-01T03:00:00Z');
    const reduced = await rowsOf<{ id: string }>(
      h.database,
      sql`select id from loadline.sprints where reduced_at is not null`,
    );
    expect(reduced).toEqual([{ id: whole.sprint.id }]);
    expect(new Set(ids)).toEqual(new Set([damaged.sprint.id]));
  });
});

describe('portions', () => {
  const answering = { read: async () => false } as never;

  /** Work on ids of which some fail. */
  async function done(ids: readonly string[], failing: readonly string[], mostAtOnce: number) {
    const left = new Set(ids);
    const passedOver: string[] = [];
    let tries = 0;
    const next = portions(
      answering,
      mostAtOnce,
      async ({ portion: { limit, except = [] }, claimed }) => {
        tries += 1;
        const some = [...left].filter((id) => !except.includes(id)).slice(0, limit);
        claimed(some);
        if (some.some((id) => failing.includes(id))) throw new Error('damaged');
        for (const id of some) left.delete(id);
        return some.length;
      },
      (id) => passedOver.push(id),
    );
    while ((await next()) > 0);
    return { left: [...left], passedOver, tries };
  }

  it('pass over what fails, wherever it stands, and do all else, in few tries', async () => {
    const ids = Array.from({ length: 1_000 }, (_, i) => `s${i}`);
    const failing = ['s0', 's499', 's500', 's999'];
    const result = await done(ids, failing, 500);
    expect({ left: result.left, passedOver: result.passedOver }).toEqual({
      left: failing,
      passedOver: failing,
    });
    expect(result.tries).toBeLessThan(80);
  });

  it('take a database that has no room, or does not answer, for no fault of a row', async () => {
    for (const [store, error] of [
      [answering, new StoreTrouble('database-full', { isAlone: true, cause: undefined })],
      [{ read: () => Promise.reject(new Error('gone')) } as never, new Error('CONNECTION_CLOSED')],
    ] as const) {
      let tries = 0;
      const next = portions(
        store,
        500,
        async ({ claimed }) => {
          tries += 1;
          claimed(['a', 'b']);
          throw error;
        },
        () => expect.unreachable(),
      );
      await expect(next()).rejects.toBe(error);
      expect(tries).toBe(1);
    }
  });
});
