import { expect, test } from 'vitest';
import type { Transaction, Writing } from '../../src/app/ports/store.ts';
import { withPorts, writingBy } from '../../src/app/writing-by.ts';

const WRITE = {} as Writing;

function transaction(): { tx: Transaction; writesMade: () => number } {
  let made = 0;
  const tx = {
    read: {},
    get write() {
      made += 1;
      return WRITE;
    },
  };
  return { tx: tx as unknown as Transaction, writesMade: () => made };
}

test('other means of writing are made once, and not for a transaction that only reads', () => {
  const { tx, writesMade } = transaction();
  const seen: Writing[] = [];
  const note = (write: Writing): Writing => {
    seen.push(write);
    return { ...write };
  };
  const outer = writingBy(writingBy(tx, note), note);
  expect(outer.read).toBe(tx.read);
  expect([writesMade(), seen.length]).toEqual([0, 0]);
  const { write } = outer;
  expect(outer.write).toBe(write);
  expect(write).not.toBe(WRITE);
  expect([writesMade(), seen.length]).toEqual([1, 2]);
});

test('a port is changed when it is asked for, and the others are as they were', () => {
  const made: string[] = [];
  const port = (name: string) => ({
    get: () => {
      made.push(name);
      return { saved: name };
    },
  });
  const write = Object.defineProperties({}, { teams: port('teams'), posts: port('posts') });
  const changed = withPorts(write as unknown as Writing, {
    teams: (teams) => Object.assign(teams, { noted: true }),
  });
  expect(made).toEqual([]);
  expect(changed.teams).toEqual({ saved: 'teams', noted: true });
  expect(made).toEqual(['teams']);
  expect(changed.posts).toEqual({ saved: 'posts' });
});
