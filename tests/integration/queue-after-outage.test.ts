/** A Postgres server that is away for longer than the queue asks it in between: when it is back, deliveries go on. */
import { setTimeout as wait } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { openDatabase } from '../../src/store/open-database.ts';
import { openQueue } from '../../src/store/queue/delivery-queue.ts';
import { aPost, savedSprint } from '../store/store-examples.ts';
import { startPostgres } from '../support/postgres-process.ts';

/** The queue asks a dozen times meanwhile, on each of its connections more than once. */
const AWAY_MS = 15_000;
/** The driver waits longer and longer before it connects again, twenty seconds at most. */
const PATIENCE = { timeout: 60_000, interval: 200 };

it('works on after an outage, and stops at once', { timeout: 150_000 }, async () => {
  const server = await startPostgres();
  const database = await openDatabase({ databaseUrl: server.urlOf(), onBackgroundError: () => undefined });
  try {
    const queue = await openQueue(database);
    const delivered: string[] = [];
    await queue.work(async (postId) => {
      delivered.push(postId);
      return { done: true };
    });
    const owe = async (): Promise<string> => {
      const { sprint } = await savedSprint(database);
      const post = aPost(sprint.id);
      await database.store.transaction((tx) => tx.write.posts.add([post]));
      return post.id;
    };
    const first = await owe();
    await expect.poll(() => delivered, PATIENCE).toEqual([first]);
    await server.halt('crash');
    await wait(AWAY_MS);
    await server.startAgain();
    const isBack = () => database.session.execute('select 1').then(Boolean, () => false);
    await expect.poll(isBack, PATIENCE).toBe(true);
    const second = await owe();
    await expect.poll(() => delivered, PATIENCE).toEqual([first, second]);
    const beganMs = performance.now();
    await queue.stop({ graceful: true });
    expect(performance.now() - beganMs).toBeLessThan(10_000);
  } finally {
    await Promise.race([database.close(), wait(5_000)]);
    await server.remove();
  }
});
