/** Lets pg-boss use a postgres.js client; PGlite has an adapter of pg-boss's own. */
import type { Db } from 'pg-boss';
import type { Sql } from 'postgres';
import postgres from 'postgres';
import { isPrepared } from '../queries/prepared-statements.ts';
import type { RenewedClient } from './renewed-client.ts';

/** For fetching and settling jobs. */
export const QUEUE_CONNECTIONS = 3;

/** JSON type ids of Postgres. */
const JSON_OID = 114;
const JSONB_OID = 3802;

/**
 * A client of the queue's own, with one connection, so that its maintenance never waits for a connection that an
 * application's transaction holds, nor the other way round.
 */
export function queueClient(databaseUrl: string, options: postgres.Options<Record<string, never>>): Sql {
  return postgres(databaseUrl, {
    ...options,
    max: 1,
    types: {
      // pg-boss hands over JSON that is text already; the driver would quote it a second time.
      json: {
        to: JSON_OID,
        from: [JSON_OID, JSONB_OID],
        serialize: (value: unknown) => (typeof value === 'string' ? value : JSON.stringify(value)),
        parse: (text: string) => JSON.parse(text) as unknown,
      },
    } as never,
  }) as unknown as Sql;
}

type Runner = Pick<Sql, 'unsafe'>;

async function run(runner: Runner, text: string, values: readonly unknown[]): Promise<{ rows: unknown[] }> {
  const result: unknown = await runner.unsafe(text, values.map((value) => value ?? null) as never[], {
    prepare: isPrepared(values),
  });
  // Of several statements in one text, which are only allowed without parameters, each has rows.
  const rows = result as unknown[];
  return { rows: rows.some(Array.isArray) ? rows.flat() : [...rows] };
}

/**
 * Each statement has a connection to itself. The driver could reserve one, but what it can't connect for it forgets to take off
 * its list: with the server back, each connection went to somebody long gone, and the queue stood still.
 *
 * @param clients with one connection each
 */
export function queueDb(clients: readonly RenewedClient[]): Db {
  const free = [...clients];
  const waiting: ((client: RenewedClient) => void)[] = [];
  const take = async (): Promise<RenewedClient> =>
    free.pop() ?? new Promise<RenewedClient>((resolve) => waiting.push(resolve));
  const giveBack = (client: RenewedClient): void => {
    const next = waiting.shift();
    if (next) next(client);
    else free.push(client);
  };
  return {
    async executeSql(text, values = []) {
      const taken = await take();
      const client = taken.current;
      try {
        return await run(client, text, values);
      } catch (error) {
        // It may be a script with a transaction of its own: the next would find that failed. A lost connection has none.
        const isScript = values.length === 0 && error instanceof postgres.PostgresError;
        if (isScript) await client.unsafe('ROLLBACK').catch(() => undefined);
        throw error;
      } finally {
        giveBack(taken);
      }
    },
  };
}
