/**
 * A database that answers and takes nothing in: without room, as a trigger refuses it that fails like a full disk
 * (SQLSTATE 53100), and read-only, as a server is that was the primary before a failover (25006).
 */
import postgres, { type Sql } from 'postgres';

const TABLES = `select format('%I.%I', schemaname, tablename) as name from pg_tables where
  (schemaname = 'loadline' and tablename <> 'migrations') or (schemaname = 'pgboss' and tablename in ('job', 'queue'))`;

const PREPARE = `
  create schema chaos;
  create table chaos.disk (full_share float8 not null);
  insert into chaos.disk values (0);
  create function chaos.write() returns trigger language plpgsql as $$
    begin
      if random() < (select full_share from chaos.disk) then
        raise exception 'could not extend file: No space left on device' using errcode = '53100';
      end if;
      return null;
    end $$;`;

export class DatabaseFaults {
  readonly #url: string;

  constructor(databaseUrl: string) {
    this.#url = databaseUrl;
  }

  /** Once its tables are there. */
  async prepare(): Promise<void> {
    await this.#as(async (sql) => {
      await sql.unsafe(PREPARE);
      // The bots are at work: two tables locked at once could block them and be blocked by them.
      for (const { name } of await sql.unsafe(TABLES)) {
        await sql.unsafe(`create trigger chaos before insert or update on ${name}
          for each statement execute function chaos.write()`);
      }
    });
  }

  /** @param share of the statements that write */
  async setFull(share: number): Promise<void> {
    await this.#as((sql) => sql`update chaos.disk set full_share = ${share}`);
  }

  /** Who has a connection keeps it when the server is writable again, and is left with a server that is not. */
  async setReadOnly(isReadOnly: boolean): Promise<void> {
    await this.#as(async (sql) => {
      const name = sql(new URL(this.#url).pathname.slice(1));
      if (!isReadOnly) return sql`alter database ${name} reset default_transaction_read_only`;
      await sql`alter database ${name} set default_transaction_read_only = on`;
      return sql`select pg_terminate_backend(pid) from pg_stat_activity
        where datname = current_database() and pid <> pg_backend_pid()`;
    });
  }

  async end(): Promise<void> {
    await this.setFull(0);
    await this.setReadOnly(false);
  }

  async #as(work: (sql: Sql) => PromiseLike<unknown>): Promise<void> {
    const sql = postgres(this.#url, {
      max: 1,
      onnotice: () => undefined,
      // The driver would leave a plain false out.
      connection: { default_transaction_read_only: 'off' as never },
    });
    try {
      await work(sql);
    } finally {
      await sql.end();
    }
  }
}
