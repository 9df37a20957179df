/** A database on a Postgres server, 15 or later. Any number of processes may use it at once. */
import { drizzle } from 'drizzle-orm/postgres-js';
import { migrate } from 'drizzle-orm/postgres-js/migrator';
import postgres, { type Sql } from 'postgres';
import { connectionError } from '../connection-error.ts';
import type { Database } from '../database.ts';
import { troubleOfServer } from '../database-trouble.ts';
import { IMPATIENT_LOCK_MS } from '../held-locks.ts';
import { MIGRATIONS, migrated } from '../migrate.ts';
import { preparing } from '../queries/prepared-statements.ts';
import type { SqlSession } from '../queries/sql-session.ts';
import { type BackgroundErrorListener, openJobSender, updateQueueTables } from '../queue/job-sender.ts';
import { storeOver } from '../store.ts';
import { StoreError } from '../store-error.ts';
import { QUEUE_CONNECTIONS, queueClient, queueDb } from './queue-connection.ts';
import { RenewedClient } from './renewed-client.ts';
import { type ServerAccess, type ServerAddress, serverAddress } from './server-address.ts';
import { TroubleWatch } from './trouble-watch.ts';
import { givingUpSilence } from './watched-socket.ts';

const OLDEST_VERSION = 15;

/** Any number will do, as long as every version of Loadline uses the same. */
const MIGRATION_LOCK = 5_623_461_723;

const CONNECTION_OPTIONS = {
  connect_timeout: 10,
  onnotice: () => undefined,
  connection: {
    application_name: 'loadline',
    TimeZone: 'UTC',
    // Set here: a server may have another default, and the locks count on this one.
    default_transaction_isolation: 'read committed',
  },
} satisfies postgres.Options<Record<string, never>>;

/** Connections of one process: for requests, and for prompts and deliveries. The queue has its own, and so have probes: one. */
const REQUEST_CONNECTIONS = 10;
const BULK_CONNECTIONS = 4;

/** After so long the server ends a statement, and a moment later a connection is given up that stays silent. */
interface Patience {
  readonly statementMs: number;
  readonly silenceMs: number;
}
/** A connection that nobody uses is closed so long before it would count as silent. */
const IDLE_BEFORE_SILENCE_MS = 10_000;
const REQUEST_PATIENCE: Patience = { statementMs: 30_000, silenceMs: 40_000 };
/** A probe asks again every few seconds. */
const PROBE_PATIENCE: Patience = { statementMs: 5_000, silenceMs: 30_000 };
/** A statement may look through all jobs or prompts. */
const BULK_PATIENCE: Patience = { statementMs: 60_000, silenceMs: 70_000 };

/**
 * For what runs in transactions. The server ends one whose process has vanished, so that its locks do not keep a team
 * waiting until the network notices. A statement that hangs, or a server that has vanished, becomes an error.
 */
function workingOptions({ url, ssl }: ServerAddress, { statementMs, silenceMs }: Patience) {
  return {
    ...CONNECTION_OPTIONS,
    ssl,
    // Well before it would be given up as silent: a query could meet that moment.
    idle_timeout: (silenceMs - IDLE_BEFORE_SILENCE_MS) / 1_000,
    ...givingUpSilence(url, silenceMs),
    connection: {
      ...CONNECTION_OPTIONS.connection,
      statement_timeout: statementMs,
      idle_in_transaction_session_timeout: statementMs,
    },
  } satisfies postgres.Options<Record<string, never>>;
}

/** Of those that requests use: whoever finds a team held gives the connection back. */
function requestOptions(address: ServerAddress) {
  const working = workingOptions(address, REQUEST_PATIENCE);
  return {
    ...working,
    max: REQUEST_CONNECTIONS,
    connection: { ...working.connection, lock_timeout: IMPATIENT_LOCK_MS },
  } satisfies postgres.Options<Record<string, never>>;
}

/**
 * @param serverVersion `server_version_num`, e.g. 150004 for 15.4.
 * @throws StoreError `database-too-old`.
 */
export function refuseOldServer(serverVersion: number): void {
  const version = Math.floor(serverVersion / 10_000);
  if (version >= OLDEST_VERSION) return;
  const oldest = String(OLDEST_VERSION);
  throw new StoreError({ code: 'database-too-old', version: String(version), oldest });
}

/** One process at a time brings the database up to date; the others wait and find it done. */
async function migrateAlone(
  { url, ssl }: ServerAddress,
  onBackgroundError: BackgroundErrorListener,
): Promise<void> {
  const client = postgres(url, { ...CONNECTION_OPTIONS, ssl, max: 1 });
  try {
    const [row] = await client`select current_setting('server_version_num')::integer as version`;
    refuseOldServer(row?.version as number);
    await client`select pg_advisory_lock(${MIGRATION_LOCK})`;
    // The lock belongs to the connection and goes with it.
    await migrated(() => migrate(drizzle(client), MIGRATIONS));
    // Over connections without a limit of time.
    const forQueue = new RenewedClient(() => queueClient(url, { ...CONNECTION_OPTIONS, ssl }));
    await updateQueueTables({ db: queueDb([forQueue]), backend: 'postgres' }, onBackgroundError).finally(() =>
      forQueue.end(),
    );
  } finally {
    await client.end();
  }
}

/** @throws StoreError when the server can't be used, with what to do about it. */
export async function openPostgres(
  access: ServerAccess,
  onBackgroundError: BackgroundErrorListener,
): Promise<Database> {
  const address = serverAddress(access);
  const bulk = workingOptions(address, BULK_PATIENCE);
  const requests = workingClient(() => postgres(address.url, requestOptions(address)));
  const inBulk = workingClient(() => postgres(address.url, { ...bulk, max: BULK_CONNECTIONS }));
  // Whether the database answers must not depend on how many wait for it.
  const probes = workingClient(() =>
    postgres(address.url, { ...workingOptions(address, PROBE_PATIENCE), max: 1 }),
  );
  const forQueue = Array.from(
    { length: QUEUE_CONNECTIONS },
    () => new RenewedClient(() => queueClient(address.url, bulk)),
  );
  const clients = [requests.client, inBulk.client, probes.client, ...forQueue];
  const end = () => Promise.all(clients.map((client) => client.end()));
  const watch = new TroubleWatch(() => {
    for (const client of clients) client.renew();
  });
  const onQueueError = (error: Error): void => {
    watch.note(troubleOfServer(error));
    onBackgroundError(error);
  };
  try {
    await migrateAlone(address, onBackgroundError);
    const queueConnection = { db: queueDb(forQueue), backend: 'postgres' as const };
    const sender = await openJobSender(queueConnection, onQueueError);
    const host = { sender, troubleOf: troubleOfServer, isAlone: false, onTrouble: watch.note };
    let closing: Promise<void> | undefined;
    return {
      kind: 'postgres',
      encryption: address.encryption,
      store: storeOver({ ...host, session: requests.session }),
      bulkStore: storeOver({ ...host, session: inBulk.session }),
      get session() {
        return requests.session();
      },
      queueConnection,
      onJobsCommitted: sender.onCommitted,
      onBackgroundError: onQueueError,
      async ping() {
        await probes.client.current`select 1`;
      },
      state: (how) => watch.look(probes.session(), how),
      close() {
        closing ??= sender.stop().then(async () => void (await end()));
        return closing;
      },
    };
  } catch (error) {
    await end();
    throw connectionError(error, access.databaseUrl);
  }
}

/** With the session of its connections of the moment. */
function workingClient(make: () => Sql): { client: RenewedClient; session: () => SqlSession } {
  const client = new RenewedClient(make);
  let session = drizzle(preparing(client.current)) as unknown as SqlSession;
  client.onRenewed(() => {
    session = drizzle(preparing(client.current)) as unknown as SqlSession;
  });
  return { client, session: () => session };
}
