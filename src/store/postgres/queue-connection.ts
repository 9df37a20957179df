/** Lets pg-boss use a postgres.js client; PGlite has an adapter of pg-boss's own. */
import type { Db } from 'pg-boss';
import type { Sql } from 'postgres';
import postgres from 'postgres';
import { isPrepared } from '../queries/prepared-statements.ts';
import type { RenewedClient } from './renewed-client.ts';

/** For fetching and settling jobs. */
const QUEUE_CONNECTIONS = 3;

/** JSON type ids of Postgres. */
const JSON_OID = 114;
const JSONB_OID = 3802;

/**
 * A client of its own for the queue, so that its maintenance never waits for a connection that an
 * application's transaction holds, nor the other way round.
 */
export function queueClient(databaseUrl: string, options: postgres.Options<Record<string, never>>): Sql {
  return postgres(databaseUrl, {
    ...options,
    max: QUEUE_CONNECTIONS,
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

export function queueDb(client: RenewedClient): Db {
  return {
    async executeSql(text, values = []) {
      if (values.length > 0) return run(client.current, text, values);
      // It may be a script with a transaction of its own, which needs one connection from beginning to end.
      const reserved = await client.current.reserve();
      try {
        return await run(reserved, text, values);
      } catch (error) {
        // Otherwise the next to use the connection would find a failed transaction on it.
        await reserved.unsafe('ROLLBACK').catch(() => undefined);
        throw error;
      } finally {
        reserved.release();
      }
    },
  };
}
