/** What somebody does in the very moment in which they are erased, on a real Postgres: it leaves nothing of them either. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { takeCards } from '../../src/app/cards/change-owners.ts';
import type { Store } from '../../src/app/ports/store.ts';
import { erasePerson } from '../../src/app/privacy/erase-person.ts';
import type { Database } from '../../src/store/database.ts';
import { actorOf, CHANNEL, Harness, PEOPLE } from '../support/app-harness.ts';
import { type OwnPostgres, withPostgres } from '../support/databases.ts';
import { rowsWith } from '../support/whole-database.ts';

let own: OwnPostgres;
let database: Database;
beforeAll(async () => {
  own = await withPostgres();
  database = await own.open();
});
afterAll(async () => {
  await database.close();
  await own.drop();
});

/** Something that happens once. */
function moment() {
  const { promise, resolve } = Promise.withResolvers<void>();
  return { comes: promise, hasCome: () => resolve() };
}

it('is erased too, though the person was seen on the team before and it was written after', async () => {
  const h = new Harness(database, '2026-10-30T12:00:00Z');
  const team = await h.setUpTeam();
  await h.plan(team);
  await h.pass('2026-11-02T09:15:00Z');
  const seen = moment();
  const erasedOnce = moment();
  const held = moment();
  const waitedFor = moment();

  // Taking a card has seen Ben on the team, and takes hold of the team only after he was erased.
  const taking: Store = {
    ...database.store,
    transaction: (work) =>
      database.store.transaction((tx) =>
        work({
          ...tx,
          lock: {
            ...tx.lock,
            team: async (teamId) => {
              seen.hasCome();
              await erasedOnce.comes;
              await tx.lock.team(teamId);
              held.hasCome();
            },
          },
          write: {
            ...tx.write,
            cards: {
              ...tx.write.cards,
              changeOwners: async (...given) => {
                await tx.write.cards.changeOwners(...given);
                await waitedFor.comes;
              },
            },
          },
        }),
      ),
  };
  let rounds = 0;
  const erasing: Store = {
    ...database.store,
    async transaction(work) {
      rounds += 1;
      if (rounds === 2) await held.comes;
      const done = await database.store.transaction((tx) =>
        work({
          ...tx,
          lock: {
            ...tx.lock,
            team: (teamId) => {
              if (rounds === 2) waitedFor.hasCome();
              return tx.lock.team(teamId);
            },
          },
          read: {
            ...tx.read,
            personalSums: async (actor) => {
              const sums = await tx.read.personalSums(actor);
              // Too early, if nothing was waited for before.
              if (rounds === 2) waitedFor.hasCome();
              return sums;
            },
          },
        }),
      );
      if (rounds === 1) erasedOnce.hasCome();
      return done;
    },
  };

  const taken = takeCards({ ...h.deps, store: taking }, actorOf('ben'), { place: CHANNEL, words: '1' });
  await seen.comes;
  await erasePerson({ ...h.deps, store: erasing }, actorOf('ben'));
  expect((await taken).cards[0]?.ownerIds).toContain(PEOPLE.ben);
  expect(await rowsWith(database, [PEOPLE.ben, 'Ben Ode'])).toEqual([]);
});
