/** Counts the statements that a database carries out, on the server itself. */
import postgres from 'postgres';

/** Settings of the server that make it count. */
export const COUNTING_STATEMENTS = { shared_preload_libraries: 'pg_stat_statements' };

/**
 * How many statements the database carries out meanwhile, with those that begin and end transactions, and without those by
 * which the server checks references itself.
 */
export async function statementsDuring(databaseUrl: string, work: () => Promise<unknown>): Promise<number> {
  const client = postgres(databaseUrl, { max: 1, onnotice: () => undefined });
  try {
    await client`create extension if not exists pg_stat_statements`;
    await client`select pg_stat_statements_reset()`;
    await work();
    // A commit that is prepared is counted by the server only the first time; there is one for each begin.
    const [counted] = await client`select sum(calls * case when query ilike 'begin%' then 2
        when query ilike 'commit%' then 0 else 1 end)::int as statements from pg_stat_statements
      where query not like '%pg_stat_statements%' and query not like '%FOR KEY SHARE OF x'
        and dbid = (select oid from pg_database where datname = current_database())`;
    return counted?.statements as number;
  } finally {
    await client.end();
  }
}
