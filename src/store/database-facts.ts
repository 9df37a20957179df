/**
 * What can be learned of a database without changing it, for finding out why the bot doesn't run. Must
 * never bring a database up to date, nor leave anything in it.
 */
import { access, constants } from 'node:fs/promises';
import { join } from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import { isNotNull, sql } from 'drizzle-orm';
import { readMigrationFiles } from 'drizzle-orm/migrator';
import { drizzle as drizzleOverPglite } from 'drizzle-orm/pglite';
import { drizzle as drizzleOverPostgres } from 'drizzle-orm/postgres-js';
import postgres from 'postgres';
import { connectionError } from './connection-error.ts';
import { lockDataFolder } from './embedded/data-folder-lock.ts';
import { refuseFullDisk } from './embedded/disk-room.ts';
import { MIGRATIONS } from './migrate.ts';
import { refuseOldServer } from './postgres/postgres-database.ts';
import { type Encryption, type ServerAccess, serverAddress } from './postgres/server-address.ts';
import type { SqlSession } from './queries/sql-session.ts';
import { QUEUE_SCHEMA } from './queue/job-sender.ts';
import { type QueueState, queueState } from './queue/queue-state.ts';
import { type SetAsidePost, setAsidePosts } from './queue/set-aside-posts.ts';
import { installations } from './schema.ts';
import { StoreError } from './store-error.ts';
import { writeRefusal } from './write-probe.ts';

interface MigrationFacts {
  readonly appliedCount: number;
  /** Those of this version that the next start will apply. */
  readonly pendingCount: number;
  /** A version of Loadline that knows more migrations than this one has been here. */
  readonly isAhead: boolean;
  /** What was applied is not what this version holds for it: one of the two was changed. */
  readonly isForeign: boolean;
}

export interface DatabaseFacts {
  /** E.g. 18 for 18.4. */
  readonly serverVersion: number;
  /** The database's clock, and this process's when it was read, halfway through the question. */
  readonly databaseNow: Date;
  readonly ownNow: Date;
  readonly encoding: string;
  /** Undefined before the first start. */
  readonly migrations: MigrationFacts | undefined;
  /** The SQLSTATE with which writing was refused; undefined when it was not. Before the first start: creating. */
  readonly writeRefusal: string | undefined;
  /** Of the way to the server; undefined where there is none. */
  readonly encryption: Encryption | undefined;
  /** Connections that the server has left for everybody; undefined where there is no server. */
  readonly freeConnections: number | undefined;
  /** Undefined before the first start. */
  readonly queue: QueueState | undefined;
  readonly setAside: readonly SetAsidePost[];
  /** Names of the keys under which tokens of workspaces are stored; undefined before there is a table for them. */
  readonly tokenKeyNames?: readonly string[] | undefined;
}

/** @throws StoreError when the server can't be used, with what to do about it. */
export async function postgresFacts(access: ServerAccess): Promise<DatabaseFacts> {
  const { url, ssl, encryption } = serverAddress(access);
  const client = postgres(url, {
    ssl,
    max: 1,
    connect_timeout: 10,
    onnotice: () => undefined,
    connection: { application_name: 'loadline doctor', TimeZone: 'UTC', statement_timeout: 10_000 },
  });
  try {
    const [row] = await client`select current_setting('server_version_num')::integer as version`;
    refuseOldServer(row?.version as number);
    const session = drizzleOverPostgres(client) as unknown as SqlSession;
    return { ...(await factsOf(session)), encryption, freeConnections: await freeConnections(session) };
  } catch (error) {
    throw connectionError(error, access.databaseUrl);
  } finally {
    await client.end({ timeout: 5 });
  }
}

/**
 * Holds the folder's lock while it looks.
 *
 * @returns undefined when there is no database in the folder yet
 * @throws StoreError `data-folder-full`, `data-folder-in-use` while a bot runs on it, `data-folder-damaged`
 */
export async function dataFolderFacts(dataFolder: string): Promise<DatabaseFacts | undefined> {
  const folder = join(dataFolder, 'database');
  // Opening would make one, and a lock file with it.
  if (!(await exists(folder))) return undefined;
  // Even opening writes.
  refuseFullDisk(dataFolder);
  const unlock = await lockDataFolder(dataFolder);
  try {
    const open = await PGlite.create(folder).catch((cause: unknown) => {
      throw new StoreError({ code: 'data-folder-damaged', folder: dataFolder }, { cause });
    });
    try {
      const session = drizzleOverPglite(open) as unknown as SqlSession;
      return { ...(await factsOf(session)), encryption: undefined, freeConnections: undefined };
    } finally {
      await open.close();
    }
  } finally {
    unlock();
  }
}

async function factsOf(session: SqlSession): Promise<Omit<DatabaseFacts, 'encryption' | 'freeConnections'>> {
  const beganMs = Date.now();
  const [server] = await session
    .select({
      version: sql<number>`current_setting('server_version_num')::integer`,
      nowMs: sql<number>`(extract(epoch from clock_timestamp()) * 1000)::float8`,
      encoding: sql<string>`current_setting('server_encoding')`,
      hasMigrations: sql<boolean>`to_regclass('loadline.migrations') is not null`,
      hasQueue: sql<boolean>`to_regclass(${`${QUEUE_SCHEMA}.job`}) is not null`,
      hasInstallations: sql<boolean>`to_regclass('loadline.installations') is not null`,
    })
    .from(sql`(select 1) as one`);
  const ownNow = new Date((beganMs + Date.now()) / 2);
  if (!server) throw new Error('The database gave no row.');
  return {
    serverVersion: Math.floor(server.version / 10_000),
    databaseNow: new Date(server.nowMs),
    ownNow,
    encoding: server.encoding,
    writeRefusal: await writeRefusal(session, server.hasMigrations),
    migrations: server.hasMigrations ? await migrationFacts(session) : undefined,
    queue: server.hasQueue ? await queueState(session) : undefined,
    setAside: server.hasMigrations && server.hasQueue ? await setAsidePosts(session) : [],
    tokenKeyNames: server.hasInstallations ? await tokenKeyNames(session) : undefined,
  };
}

async function tokenKeyNames(session: SqlSession): Promise<string[]> {
  const { keyName } = installations;
  const rows = await session
    .selectDistinct({ keyName })
    .from(installations)
    .where(isNotNull(keyName))
    .orderBy(keyName);
  return rows.map((row) => row.keyName ?? '');
}

async function migrationFacts(session: SqlSession): Promise<MigrationFacts> {
  const applied = await session
    .select({ hash: sql<string>`hash`, madeAt: sql<number>`created_at::float8` })
    .from(sql`loadline.migrations`);
  const known = readMigrationFiles(MIGRATIONS);
  const latest = Math.max(...applied.map(({ madeAt }) => madeAt));
  const hashes = new Map(applied.map(({ hash, madeAt }) => [madeAt, hash]));
  return {
    appliedCount: applied.length,
    // As the migrator decides it.
    pendingCount: known.filter(({ folderMillis }) => folderMillis > latest).length,
    isAhead: latest > Math.max(...known.map(({ folderMillis }) => folderMillis)),
    isForeign: known.some(
      ({ folderMillis, hash }) => folderMillis <= latest && hashes.get(folderMillis) !== hash,
    ),
  };
}

async function freeConnections(session: SqlSession): Promise<number> {
  const [row] = await session
    .select({
      free: sql<number>`(current_setting('max_connections')::integer
        - current_setting('superuser_reserved_connections')::integer
        - count(*) filter (where backend_type = 'client backend'))::integer`,
    })
    .from(sql`pg_stat_activity`);
  return row?.free ?? 0;
}

async function exists(path: string): Promise<boolean> {
  return access(path, constants.F_OK).then(
    () => true,
    () => false,
  );
}
