/**
 * What one replica has claimed, another passes over at once. The other's connections give up a lock after a moment: a claim
 * that waited for one would fail here, where elsewhere it would take minutes.
 */
import { sql } from 'drizzle-orm';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Transaction } from '../../src/app/ports/store.ts';
import type { Database } from '../../src/store/database.ts';
import { aPost, savedSprint } from '../store/store-examples.ts';
import { type OwnPostgres, withPostgres } from '../support/databases.ts';

let own: OwnPostgres;
let one: Database;
let other: Database;
beforeAll(async () => {
  own = await withPostgres();
  one = await own.open();
  await one.session.execute(sql`do $$ begin
    execute format('alter database %I set lock_timeout = 50', current_database());
  end $$`);
  other = await own.open();
});
afterAll(async () => {
  await Promise.all([one.close(), other.close()]);
  await own.drop();
});

const AT = new Date('2026-11-13T17:00:00Z');
/** Long after the team keeps no details of a sprint that ended then. */
const YEARS_LATER = new Date('2036-01-01T00:00:00Z');

/** Due for all of the clock's work, and one that ended. */
beforeAll(async () => {
  await savedSprint(one, { nextPromptAt: AT, nextReminderAt: AT, lastCallAt: AT, closesAtInstant: AT });
  const { team } = await savedSprint(one, { state: 'closed', closedAt: AT });
  await one.store.transaction((tx) => tx.write.teams.save({ ...team, retentionMonths: 13 }));
});

type Claim = (tx: Transaction) => Promise<readonly unknown[]>;

it.each<[string, Claim]>([
  ['a due prompt', (tx) => tx.claim.promptsDue(AT, { limit: 10 })],
  ['a due reminder', (tx) => tx.claim.remindersDue(AT, { limit: 10 })],
  ['a due last call', (tx) => tx.claim.lastCallsDue(AT, { limit: 10 })],
  ['a due closing', (tx) => tx.claim.closingsDue(AT, { limit: 10 })],
  ['a sprint to reduce to its totals', (tx) => tx.claim.sprintsToReduce(YEARS_LATER, { limit: 10 })],
])('%s', async (_name, claim) => {
  await one.store.transaction(async (tx) => {
    expect(await claim(tx)).toHaveLength(1);
    expect(await other.store.transaction(claim)).toEqual([]);
  });
});

it('a post', async () => {
  const { sprint } = await savedSprint(one);
  const post = aPost(sprint.id);
  await one.store.transaction((tx) => tx.write.posts.add([post]));
  await one.store.transaction(async (tx) => {
    expect(await tx.claim.post(post.id, AT)).toMatchObject({ id: post.id });
    expect(await other.store.transaction((otherTx) => otherTx.claim.post(post.id, AT))).toBeUndefined();
  });
});
