/** Between the statements of the embedded database everybody else has their turn. */
import { sql } from 'drizzle-orm';
import { expect, it } from 'vitest';
import type { SqlSession } from '../../../src/store/queries/sql-session.ts';
import { describeOnBoth } from '../../support/databases.ts';

const STATEMENTS = 20;

describeOnBoth('a chain of statements', (database, kind) => {
  /** Turns of the loop while they are carried out. */
  async function turnsDuring(work: () => Promise<void>): Promise<number> {
    let turns = 0;
    let isOver = false;
    const turning = (async () => {
      while (!isOver) {
        await new Promise((resolve) => setImmediate(resolve));
        turns += 1;
      }
    })();
    await work();
    isOver = true;
    await turning;
    return turns;
  }
  const all = async (session: SqlSession): Promise<void> => {
    for (let i = 0; i < STATEMENTS; i += 1) await session.execute(sql`select ${i}::int`);
  };

  it('lets the loop turn after each, in a transaction as well', async () => {
    const { session } = database();
    expect(await turnsDuring(() => all(session))).toBeGreaterThanOrEqual(STATEMENTS);
    const inTransaction = () => session.transaction((tx) => all(tx as unknown as SqlSession));
    expect(await turnsDuring(inTransaction)).toBeGreaterThanOrEqual(STATEMENTS);
  });

  it('lets the loop turn after each of those that are asked for at once', async () => {
    const { session } = database();
    const atOnce = async () => {
      await Promise.all(Array.from({ length: STATEMENTS }, (_, i) => session.execute(sql`select ${i}::int`)));
    };
    expect(await turnsDuring(atOnce)).toBeGreaterThanOrEqual(kind === 'PGlite' ? STATEMENTS : 1);
  });

  it('goes on after one that failed', async () => {
    const { session } = database();
    const [failed, fine] = await Promise.allSettled([
      session.execute(sql`select 1 / 0`),
      session.execute(sql`select 1`),
    ]);
    expect([failed.status, fine.status]).toEqual(['rejected', 'fulfilled']);
  });

  it('still rolls back what fails', async () => {
    const { session } = database();
    const failing = session.transaction(async (tx) => {
      await tx.execute(sql`create table loadline.left_behind (id int)`);
      throw new Error('changed my mind');
    });
    await expect(failing).rejects.toThrow('changed my mind');
    const rows = await session
      .select({ there: sql`to_regclass('loadline.left_behind')::text` })
      .from(sql`(select 1) as one`);
    expect(rows).toEqual([{ there: null }]);
  });
});
