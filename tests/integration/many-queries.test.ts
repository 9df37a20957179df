/** A process that has asked a million times must not be slower than a new one: with the driver as it is published it would be. */
import postgres from 'postgres';
import { afterEach, expect, inject, it, vi } from 'vitest';

const CONNECTIONS = 3;
const QUERIES = 600;
/** More than there are places until a list is shortened. */
const LONGEST = 200;

afterEach(() => {
  vi.restoreAllMocks();
});

it('the driver searches no list of connections that grows with the queries', async () => {
  const sql = postgres(inject('postgresUrl'), { max: CONNECTIONS });
  const query = () => sql`select 1 as one`;
  await Promise.all(Array.from({ length: CONNECTIONS }, () => sql.begin((tx) => tx`select pg_sleep(0.1)`)));
  const { indexOf } = Array.prototype;
  let [searches, longest] = [0, 0];
  vi.spyOn(Array.prototype, 'indexOf').mockImplementation(function (this: unknown[], ...given) {
    searches += 1;
    longest = Math.max(longest, this.length);
    return indexOf.apply(this, given);
  });
  // One at a time, so that two connections are always idle.
  for (let i = 0; i < QUERIES; i += 1) await query();
  vi.restoreAllMocks();
  await sql.end();
  expect(searches).toBeGreaterThan(QUERIES);
  expect(longest).toBeLessThan(LONGEST);
});
