/** One team that somebody holds must not use up the connections of all, nor make the bot look unready. */
import postgres from 'postgres';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Database } from '../../../src/store/database.ts';
import { type OwnPostgres, withPostgres } from '../../support/databases.ts';
import { aTeam } from '../store-examples.ts';

/** More than there are connections. */
const MEMBERS = 25;

let own: OwnPostgres;
let database: Database;
let holder: postgres.Sql;
beforeAll(async () => {
  own = await withPostgres();
  database = await own.open();
  holder = postgres(own.databaseUrl, { max: 2 });
});
afterAll(async () => {
  await holder.end();
  await database.close();
  await own.drop();
});

const held = aTeam({ id: 'team-held', channelId: 'C-held' });
const other = aTeam({ id: 'team-other', channelId: 'C-other' });

async function waitingInDatabase(): Promise<number> {
  const [row] = await holder`select count(*)::int as waiting from pg_stat_activity
    where datname = current_database() and wait_event_type = 'Lock'`;
  return row?.waiting as number;
}

describe('a team that somebody holds', () => {
  it('keeps one connection waiting, while other teams and probes are answered; then everybody has their turn', async () => {
    await database.store.transaction(async (tx) => {
      await tx.write.teams.save(held);
      await tx.write.teams.save(other);
    });
    const letGo = Promise.withResolvers<void>();
    const isHeld = Promise.withResolvers<void>();
    const holding = holder.begin(async (sql) => {
      await sql`select id from loadline.teams where id = ${held.id} for no key update`;
      isHeld.resolve();
      await letGo.promise;
    });
    await isHeld.promise;
    const served: string[] = [];
    const members = Array.from({ length: MEMBERS }, (_, member) =>
      database.store.transaction(async (tx) => {
        await tx.lock.team(held.id);
        served.push(`member ${member}`);
      }),
    );
    await database.store.transaction(async (tx) => {
      await tx.lock.team(other.id);
      served.push('the other team');
    });
    await database.ping();
    expect(served).toEqual(['the other team']);
    // Those who waited in the database at first have given up; the first in line tries again.
    await expect.poll(waitingInDatabase, { timeout: 20_000 }).toBe(1);
    letGo.resolve();
    await Promise.all([holding, ...members]);
    expect(new Set(served).size).toBe(MEMBERS + 1);
  });

  it('lets no line grow without end: who comes too late hears so at once', async () => {
    const letGo = Promise.withResolvers<void>();
    const isHeld = Promise.withResolvers<void>();
    const holding = holder.begin(async (sql) => {
      await sql`select id from loadline.teams where id = ${held.id} for no key update`;
      isHeld.resolve();
      await letGo.promise;
    });
    await isHeld.promise;
    let refused = 0;
    const outcomes = Array.from({ length: 40 }, () =>
      database.store
        .transaction((tx) => tx.lock.team(held.id))
        .then(
          () => 'had it',
          (error: { code?: string }) => {
            refused += 1;
            if (refused === 10) letGo.resolve();
            return error.code;
          },
        ),
    );
    const counts = Map.groupBy(await Promise.all(outcomes), (outcome) => outcome);
    await holding;
    expect([...counts.keys()].sort()).toEqual(['had it', 'held-up']);
    expect(counts.get('had it')?.length).toBe(30);
  });
});
