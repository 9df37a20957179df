import { sql } from 'drizzle-orm';
import { expect, it } from 'vitest';
import { HELD_BACK } from '../../src/app/posting/delivery-failure.ts';
import { openQueue } from '../../src/store/queue/delivery-queue.ts';
import { queueState, queueStateQuery } from '../../src/store/queue/queue-state.ts';
import { aPost, savedSprint } from '../store/store-examples.ts';
import { describeOnBoth } from '../support/databases.ts';
import { rowsOf } from '../support/rows-of.ts';

describeOnBoth('the state of the queue', (database) => {
  it('says how many deliveries wait and since when, and goes on counting when one is put off', async () => {
    const { session } = database();
    const none = { waitingCount: 0, oldestSeconds: 0, givenUpCount: 0, heldBackCount: 0 };
    expect(await queueState(session)).toEqual(none);
    const { sprint } = await savedSprint(database());
    await database().store.transaction((tx) => tx.write.posts.add([aPost(sprint.id)]));
    await session.execute(sql`update pgboss.job set created_on = created_on - interval '10 minutes'
      where name = 'delivery' and state = 'created'`);
    const before = await queueState(session);
    expect(before.waitingCount).toBe(1);
    expect(before.oldestSeconds).toBeGreaterThanOrEqual(600);
    expect(before.oldestSeconds).toBeLessThan(660);
    const queue = await openQueue(database());
    expect(await queue.drain(async () => ({ retryAfterMs: 60_000 }))).toBe(1);
    const putOff = await queueState(session);
    expect(putOff.waitingCount).toBe(1);
    expect(putOff.oldestSeconds).toBeGreaterThanOrEqual(before.oldestSeconds);
    // Twice put off: the first time counts still.
    await session.execute(sql`update pgboss.job set start_after = now() where state = 'created'`);
    expect(await queue.drain(async () => ({ retryAfterMs: 60_000 }))).toBe(1);
    expect((await queueState(session)).oldestSeconds).toBeGreaterThanOrEqual(putOff.oldestSeconds);
    await session.execute(sql`update pgboss.job set start_after = now() where state = 'created'`);
    expect(await queue.drain(async () => ({ done: true }))).toBe(1);
    expect(await queueState(session)).toEqual(none);
    await queue.stop({ graceful: false });
  });

  it('counts what is held back, until it goes out or is dropped', async () => {
    const { session, store } = database();
    const { sprint } = await savedSprint(database());
    const held = aPost(sprint.id);
    await store.transaction((tx) => tx.write.posts.add([held, aPost(sprint.id)]));
    const update = (change: Parameters<typeof store.single.updatePost>[1]) =>
      store.single.updatePost(held.id, change);
    const count = async () => (await queueState(session)).heldBackCount;
    await update({ state: 'pending', lastError: HELD_BACK });
    expect(await count()).toBe(1);
    await update({ state: 'sent', sentVersion: 1, postedAt: { channelId: 'C1', ts: '1.0' } });
    expect(await count()).toBe(0);
    await store.transaction((tx) => tx.write.posts.refresh(held.id));
    await update({ state: 'skipped' });
    expect(await count()).toBe(0);
  });

  it('is read by the indexes of what waits, however much has been delivered', async () => {
    const { session } = database();
    await session.execute(sql`insert into pgboss.job (name, state, data, completed_on)
      select 'delivery', 'completed', '{}'::jsonb, now() from generate_series(1, 20000)`);
    await session.execute(sql`insert into loadline.posts
        (id, workspace_id, channel_id, kind, reason, state, wanted_version, sent_version)
      select gen_random_uuid(), 'T0NORTH', 'C0NORTH', 'messages-removed', '', 'skipped', 1, 0
      from generate_series(1, 20000)`);
    await session.execute(sql`analyze pgboss.job`);
    await session.execute(sql`analyze loadline.posts`);
    const rows = await rowsOf(database(), sql`explain ${queueStateQuery(session)}`);
    expect(JSON.stringify(rows)).toContain('Index');
    expect(JSON.stringify(rows)).not.toContain('Seq Scan');
  });
});
