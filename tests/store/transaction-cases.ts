/** What the store promises of transactions; run by `queries.test.ts`. */
import { expect, it } from 'vitest';
import type { Database } from '../../src/store/database.ts';
import { aTeam } from './store-examples.ts';

export function transactionCases(database: () => Database): void {
  it('keeps nothing of a transaction whose work fails, and passes the error on', async () => {
    const team = aTeam();
    const failure = new Error('changed my mind');
    await expect(
      database().store.transaction(async (tx) => {
        await tx.write.teams.save(team);
        throw failure;
      }),
    ).rejects.toBe(failure);
    expect(await database().store.read((read) => read.teamById(team.id))).toBeUndefined();
  });

  it('answers a ping', async () => {
    await expect(database().ping()).resolves.toBeUndefined();
  });

  it.each(['40P01', '40001'])('runs the work again when the database gave it up with %s', async (code) => {
    let runs = 0;
    const result = await database().store.transaction(async () => {
      runs += 1;
      if (runs < 3) throw Object.assign(new Error('given up'), { code });
      return 'done';
    });
    expect([result, runs]).toEqual(['done', 3]);
  });

  it('gives up in the end, and at once when trying again is useless', async () => {
    let runs = 0;
    const failing = (code: string) =>
      database().store.transaction(async () => {
        runs += 1;
        throw Object.assign(new Error('refused'), { code });
      });
    await expect(failing('40P01')).rejects.toThrow('refused');
    expect(runs).toBe(5);
    await expect(failing('23505')).rejects.toThrow('refused');
    expect(runs).toBe(6);
  });
}
