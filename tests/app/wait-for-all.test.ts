import { expect, it } from 'vitest';
import { waitForAll } from '../../src/app/wait-for-all.ts';

function settable() {
  const { promise, resolve, reject } = Promise.withResolvers<string>();
  return { promise, resolve, reject };
}

it('gives what each came to, in their order, and takes what needs no waiting', async () => {
  expect(await waitForAll([Promise.resolve('first'), 2, undefined, Promise.resolve(true)])).toEqual([
    'first',
    2,
    undefined,
    true,
  ]);
});

it('waits for all of them when one fails', async () => {
  const slow = settable();
  let isOver = false;
  const all = waitForAll([Promise.reject(new Error('refused')), slow.promise]).catch((error: Error) => {
    isOver = true;
    return error.message;
  });
  await new Promise(setImmediate);
  expect(isOver).toBe(false);
  slow.resolve('written');
  expect(await all).toBe('refused');
});

it('fails with what failed first, at any place in the list', async () => {
  const [one, two] = [settable(), settable()];
  const all = waitForAll([one.promise, two.promise]);
  two.reject(new Error('the cause'));
  await new Promise(setImmediate);
  one.reject(new Error('what followed from it'));
  await expect(all).rejects.toThrow('the cause');
});

it('fails with the cause where word of what followed from it comes first', async () => {
  const [lock, rows] = [settable(), settable()];
  const all = waitForAll([lock.promise, rows.promise]);
  const aborted = Object.assign(new Error('current transaction is aborted'), { code: '25P02' });
  rows.reject(new Error('Failed query', { cause: aborted }));
  lock.reject(new Error('another holds it'));
  await expect(all).rejects.toThrow('another holds it');
});
