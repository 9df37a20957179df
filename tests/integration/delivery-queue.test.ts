import { sql } from 'drizzle-orm';
import { afterEach, beforeEach, describe, expect, it, onTestFinished, vi } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import type { DeliveryHandler, DeliveryQueue } from '../../src/store/queue/delivery-queue.ts';
import { openQueue } from '../../src/store/queue/delivery-queue.ts';
import { queueState } from '../../src/store/queue/queue-state.ts';
import { sendAgain } from '../../src/store/queue/set-aside-posts.ts';
import { aPost, savedSprint } from '../store/store-examples.ts';
import { describeOnBoth } from '../support/databases.ts';
import { rowsOf } from '../support/rows-of.ts';

const DONE = { done: true } as const;

async function postsAdded(database: Database, count: number): Promise<string[]> {
  const { sprint } = await savedSprint(database);
  const posts = Array.from({ length: count }, () => aPost(sprint.id));
  await database.store.transaction((tx) => tx.write.posts.add(posts));
  return posts.map((post) => post.id);
}

/** Lets a retry that waits for its time fall due now. */
async function letTimePass(database: Database): Promise<void> {
  await database.session.execute(
    sql`update pgboss.job set start_after = now() where name = 'delivery' and state in ('created', 'retry')`,
  );
}

const failedOnce = (database: Database): Promise<unknown[]> =>
  rowsOf(database, sql`select id from pgboss.job where name = 'delivery' and state = 'retry'`);

/** A handler that notes what it delivers, for `work`. */
function noting(): {
  handler: DeliveryHandler;
  delivered: string[];
  until: (count: number) => Promise<void>;
} {
  const delivered: string[] = [];
  const waiting: { count: number; resolve: () => void }[] = [];
  return {
    delivered,
    handler: async (postId) => {
      delivered.push(postId);
      for (const { count, resolve } of waiting) if (delivered.length >= count) resolve();
      return DONE;
    },
    until: (count) =>
      delivered.length >= count
        ? Promise.resolve()
        : new Promise((resolve) => waiting.push({ count, resolve })),
  };
}

describeOnBoth('the delivery queue', (database) => {
  let queue: DeliveryQueue;
  beforeEach(async () => {
    queue = await openQueue(database());
    await database().session.execute(sql`delete from pgboss.job`);
  });
  afterEach(() => queue.stop({ graceful: true }));
  const givenUpCount = async () => (await queueState(database().session)).givenUpCount;

  describe('drained', () => {
    it('delivers every post once, in the order recorded, and then has nothing left', async () => {
      const ids = [...(await postsAdded(database(), 250)), ...(await postsAdded(database(), 3))];
      const delivered: string[] = [];
      const attempts = await queue.drain(async (postId) => {
        delivered.push(postId);
        return DONE;
      });
      expect(attempts).toBe(253);
      expect(delivered.slice(-3)).toEqual(ids.slice(-3));
      expect(new Set(delivered)).toEqual(new Set(ids));
      expect(await queue.drain(async () => DONE)).toBe(0);
    });

    it('keeps the order of one transaction', async () => {
      const ids = await postsAdded(database(), 100);
      // Rewritten rows move in the table, which must not matter.
      await database().session.execute(
        sql`update pgboss.job set priority = 0 where data ->> 'postId' in (${ids[0]}, ${ids[50]})`,
      );
      const delivered: string[] = [];
      await queue.drain(async (postId) => {
        delivered.push(postId);
        return DONE;
      });
      expect(delivered).toEqual(ids);
    });

    it('delivers what a delivery adds', async () => {
      const [first] = await postsAdded(database(), 1);
      const added: string[] = [];
      const attempts = await queue.drain(async (postId) => {
        if (postId === first) added.push(...(await postsAdded(database(), 2)));
        return DONE;
      });
      expect([attempts, added.length]).toEqual([3, 2]);
    });

    it('never delivers a post whose transaction was rolled back', async () => {
      const { sprint } = await savedSprint(database());
      const failure = new Error('the sprint was not planned after all');
      await expect(
        database().store.transaction(async (tx) => {
          await tx.write.posts.add([aPost(sprint.id)]);
          throw failure;
        }),
      ).rejects.toBe(failure);
      expect(await queue.drain(async () => DONE)).toBe(0);
    });

    it('tells the workers of what is committed, not of what is rolled back nor of what owes nobody a post', async () => {
      const { promise: heard, resolve } = Promise.withResolvers<void>();
      const hear = vi.fn(() => resolve());
      onTestFinished(database().onJobsCommitted(hear));
      const { sprint } = await savedSprint(database());
      const undone = database().store.transaction(async (tx) => {
        await tx.write.posts.add([aPost(sprint.id)]);
        throw new Error('undone');
      });
      await expect(undone).rejects.toThrow('undone');
      await database().store.transaction(async (tx) => {
        await tx.write.posts.add([aPost(sprint.id)]);
        expect(hear).not.toHaveBeenCalled();
      });
      // First whoever waits for the commit goes on.
      expect(hear).not.toHaveBeenCalled();
      await heard;
      expect(hear).toHaveBeenCalledOnce();
      expect(await queue.drain(async () => DONE)).toBe(1);
    });

    it('delivers a refreshed post again', async () => {
      const [postId = ''] = await postsAdded(database(), 1);
      await queue.drain(async () => DONE);
      await database().store.transaction((tx) => tx.write.posts.refresh(postId));
      const delivered: string[] = [];
      await queue.drain(async (id) => {
        delivered.push(id);
        return DONE;
      });
      expect(delivered).toEqual([postId]);
    });

    it('tries a failed delivery again when its time has come, and not before', async () => {
      const [postId] = await postsAdded(database(), 1);
      const attempts: string[] = [];
      const failing: DeliveryHandler = async (id) => {
        attempts.push(id);
        throw new Error('the platform hung up');
      };
      expect(await queue.drain(failing)).toBe(1);
      expect(await queue.drain(async () => DONE)).toBe(0);
      await letTimePass(database());
      expect(await queue.drain(async () => DONE)).toBe(1);
      expect(attempts).toEqual([postId]);
    });

    it('waits as long as a delivery asks, however often, without counting it as a failure', async () => {
      await postsAdded(database(), 1);
      for (let round = 0; round < 15; round += 1) {
        expect(await queue.drain(async () => ({ retryAfterMs: 600_000 }))).toBe(1);
        expect(await queue.drain(async () => DONE)).toBe(0);
        const { rows } = (await database().queueConnection.db.executeSql(
          `select extract(epoch from start_after - now())::integer as seconds from pgboss.job
            where name = 'delivery' and state = 'created'`,
        )) as { rows: { seconds: number }[] };
        expect(rows).toHaveLength(1);
        expect(rows[0]?.seconds).toBeGreaterThan(500);
        expect(rows[0]?.seconds).toBeLessThanOrEqual(600);
        await letTimePass(database());
      }
      expect(await queue.drain(async () => DONE)).toBe(1);
      expect(await givenUpCount()).toBe(0);
    });

    it('gives up after the eleventh attempt, says so to the last one, and counts it', async () => {
      await postsAdded(database(), 1);
      const lasts: boolean[] = [];
      for (let round = 0; round < 12; round += 1) {
        await queue.drain(async (_postId, { isLast }) => {
          lasts.push(isLast);
          throw new Error('no use');
        });
        await letTimePass(database());
      }
      expect(lasts).toEqual([...Array<boolean>(10).fill(false), true]);
      expect(await givenUpCount()).toBe(1);
    });

    it('gives up after as many failures when the delivery was put off in between', async () => {
      await postsAdded(database(), 1);
      let failures = 0;
      for (let round = 0; round < 24; round += 1) {
        await queue.drain(async () => {
          if (round % 2 === 0) return { retryAfterMs: 1_000 };
          failures += 1;
          throw new Error('no use');
        });
        await letTimePass(database());
      }
      expect(failures).toBe(11);
      expect(await givenUpCount()).toBe(1);
      expect(await sendAgain(database(), ['all'])).toBe(1);
      expect(
        await queue.drain(async (_postId, { isLast }) => {
          expect(isLast).toBe(false);
          return DONE;
        }),
      ).toBe(1);
    });

    it('takes up again what was given up, with all its attempts, when it is told to', async () => {
      await postsAdded(database(), 2);
      for (let round = 0; round < 12; round += 1) {
        await queue.drain(() => Promise.reject(new Error('no use')));
        await letTimePass(database());
      }
      expect(await givenUpCount()).toBe(2);
      expect(await queue.drain(async () => DONE)).toBe(0);
      expect(await sendAgain(database(), ['all'])).toBe(2);
      expect(await givenUpCount()).toBe(0);
      const attempts: boolean[] = [];
      await queue.drain(async (_postId, { isLast }) => {
        attempts.push(isLast);
        return DONE;
      });
      expect(attempts).toEqual([false, false]);
      expect(await sendAgain(database(), ['all'])).toBe(0);
    });

    it('stores of an error its name, code and words only, for it may carry a token', async () => {
      await postsAdded(database(), 1);
      await queue.drain(async () => {
        throw Object.assign(new Error('refused'), { code: 'not_authed', config: { token: 'xoxb-invented' } });
      });
      const { rows } = await database().queueConnection.db.executeSql(
        `select output from pgboss.job where name = 'delivery'`,
      );
      expect(rows[0].output).toEqual({ name: 'Error', message: 'refused', code: 'not_authed' });
    });

    it('stores of a failed query no parameters, for they may be anybody’s id or words', async () => {
      await postsAdded(database(), 1);
      await queue.drain(async () => {
        await database().session.execute(sql`select ${'UBEN, wet\nrope'}::text::integer`);
        return DONE;
      });
      const { rows } = await database().queueConnection.db.executeSql(
        `select output from pgboss.job where name = 'delivery'`,
      );
      expect(rows[0].output.message).toContain('Failed query');
      expect(JSON.stringify(rows[0].output)).not.toMatch(/UBEN|rope/);
    });
  });

  describe('working in the background', () => {
    it('is woken by a commit and delivers', async () => {
      const { handler, delivered, until } = noting();
      await queue.work(handler);
      const ids = await postsAdded(database(), 25);
      await until(25);
      expect(new Set(delivered)).toEqual(new Set(ids));
      expect(delivered).toHaveLength(25);
    });

    it('goes on at its pace when the clock of the machine is set back an hour', async () => {
      const { handler, delivered, until } = noting();
      const realNow = Date.now;
      onTestFinished(() => void vi.restoreAllMocks());
      await queue.work(async (postId, attempt) => {
        if (delivered.length > 0) return handler(postId, attempt);
        delivered.push(postId);
        vi.spyOn(Date, 'now').mockImplementation(() => realNow() - 3_600_000);
        return { retryAfterMs: 1_000 };
      });
      const [postId] = await postsAdded(database(), 1);
      await until(2);
      expect(delivered).toEqual([postId, postId]);
    });

    it('tries again what failed, beside what did not', async () => {
      const [bad, good] = await postsAdded(database(), 2);
      const { handler, delivered, until } = noting();
      let failures = 0;
      await queue.work(async (postId, attempt) => {
        if (postId === bad && failures === 0) {
          failures += 1;
          throw new Error('the platform hung up');
        }
        return handler(postId, attempt);
      });
      await until(1);
      expect(delivered).toEqual([good]);
      // Not before the failure is recorded: only what waits for another try can fall due.
      await expect.poll(() => failedOnce(database())).toHaveLength(1);
      await letTimePass(database());
      await until(2);
      expect(delivered).toEqual([good, bad]);
    });

    it('finishes what is in hand when stopped gracefully', async () => {
      await postsAdded(database(), 1);
      const begun = Promise.withResolvers<void>();
      const finish = Promise.withResolvers<void>();
      let finished = false;
      await queue.work(async () => {
        begun.resolve();
        await finish.promise;
        finished = true;
        return DONE;
      });
      await begun.promise;
      const stopped = queue.stop({ graceful: true });
      finish.resolve();
      await stopped;
      expect(finished).toBe(true);
      queue = await openQueue(database());
      await letTimePass(database());
      expect(await queue.drain(async () => DONE)).toBe(0);
    });

    it('hands back what is in hand when stopped at once', async () => {
      const [postId] = await postsAdded(database(), 1);
      const begun = Promise.withResolvers<void>();
      const never = Promise.withResolvers<typeof DONE>();
      await queue.work(() => {
        begun.resolve();
        return never.promise;
      });
      await begun.promise;
      await queue.stop({ graceful: false });
      queue = await openQueue(database());
      await letTimePass(database());
      const delivered: string[] = [];
      await queue.drain(async (id) => {
        delivered.push(id);
        return DONE;
      });
      never.resolve(DONE);
      expect(delivered).toEqual([postId]);
    });
  });

  it('lets transactions and the upkeep of the queue go on side by side', async () => {
    const { handler, delivered, until } = noting();
    await queue.work(handler);
    await Promise.all(Array.from({ length: 20 }, () => postsAdded(database(), 2)));
    await until(40);
    expect(delivered).toHaveLength(40);
  });
});
