/** Records of one person beyond what is read at once: whole, in order and rightly summed up, on both kinds of database. */
import { sql } from 'drizzle-orm';
import { expect, test } from 'vitest';
import type { Actor } from '../../src/app/team/team.ts';
import { describeOnBoth } from '../support/databases.ts';
import { savedSprint } from './store-examples.ts';

const MANY = 2_345;

describeOnBoth('the records of one person', (database) => {
  /** Cards of three days, recorded in an order that has nothing to do with their numbers. */
  async function cardsOf(count: number): Promise<Actor> {
    const { team, sprint } = await savedSprint(database());
    const actor = { workspaceId: team.workspaceId, userId: `U-${sprint.id}` };
    await database().session.execute(sql`insert into loadline.cards
      (id, sprint_id, number, key, title, estimate_points, origin, entered_on, added_by)
      select ${sprint.id} || n, ${sprint.id}, n, 'K' || n, 'Buoy', 0.5, 'pulled-in', ${sprint.startsOn}::date + n % 3, ${actor.userId}
      from (select 1000 + (n * 7919) % ${count} as n from generate_series(1, ${count}) n) as mixed`);
    return actor;
  }

  test.each([3, 1_000, 1_001, MANY])('come by day and number, %i of them', async (count) => {
    const actor = await cardsOf(count);
    const { records, again, sums } = await database().store.read(async (read) => ({
      records: await read.personalRecords(actor, 'cardsAdded'),
      again: await read.personalRecords(actor, 'cardsAdded'),
      sums: await read.personalSums(actor),
    }));
    const days = [...new Set(records.map(({ on }) => on as string))];
    expect(days).toEqual(days.toSorted());
    const places = records.map(({ on, card }) => `${on} ${String(card).padStart(5, '0')}`);
    expect(places).toEqual(places.toSorted());
    expect(new Set(places).size).toBe(count);
    expect(again).toEqual(records);
    expect(records[0]).toEqual({
      team: expect.any(String),
      on: days[0],
      sprint: expect.any(String),
      card: expect.stringMatching(/^K/),
      title: 'Buoy',
      link: null,
      estimate: 0.5,
    });
    expect(sums).toEqual([
      { kind: 'cardsAdded', count, from: days[0], to: days.at(-1), teamNames: [records[0]?.team] },
    ]);
  });

  test('are nobody’s in another workspace', async () => {
    const actor = { ...(await cardsOf(MANY)), workspaceId: 'W-other' };
    await database().store.read(async (read) => {
      expect(await read.personalRecords(actor, 'cardsAdded')).toEqual([]);
      expect(await read.personalSums(actor)).toEqual([]);
    });
  });
});
