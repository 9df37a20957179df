import { expect, test } from 'vitest';
import type { Store, Transaction } from '../../src/app/ports/store.ts';
import { readOrWrite } from '../../src/app/read-or-write.ts';

function storeThatSays(said: string[]): Store {
  const read = { knowsEvent: async () => true };
  const events = { remember: async () => said.push('remembered') > 0 };
  return {
    read: (work: (own: typeof read) => Promise<unknown>) => {
      said.push('read');
      return work(read);
    },
    transaction: (work: (tx: unknown) => Promise<unknown>) => {
      said.push('transaction');
      return work({ read, events });
    },
  } as unknown as Store;
}

test('what only reads needs no transaction', async () => {
  const said: string[] = [];
  const known = await readOrWrite(storeThatSays(said), (tx) => tx.read.knowsEvent('Ev-1'));
  expect([known, said]).toEqual([true, ['read']]);
});

test('what wants to write runs again, in a transaction', async () => {
  const said: string[] = [];
  const work = async (tx: Transaction) =>
    (await tx.read.knowsEvent('Ev-1')) && tx.events.remember('Ev-1', new Date(0));
  expect(await readOrWrite(storeThatSays(said), work)).toBe(true);
  expect(said).toEqual(['read', 'transaction', 'remembered']);
});

test('what fails while it reads fails once', async () => {
  const said: string[] = [];
  const failure = new Error('the database went away');
  await expect(readOrWrite(storeThatSays(said), () => Promise.reject(failure))).rejects.toBe(failure);
  expect(said).toEqual(['read']);
});
