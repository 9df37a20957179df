/** Connections to the database on which the other side falls silent, through a wire that can do so. */
import { setTimeout as wait } from 'node:timers/promises';
import postgres, { type Sql } from 'postgres';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { isLostConnection } from '../../src/store/connection-error.ts';
import { givingUpSilence } from '../../src/store/postgres/watched-socket.ts';
import { TcpProxy } from '../chaos/tcp-proxy.ts';
import { withPostgres } from '../support/databases.ts';

const LIMIT_MS = 400;

describe('a connection to the database', () => {
  let own: Awaited<ReturnType<typeof withPostgres>>;
  let wire: TcpProxy;
  let address: string;
  let client: Sql | undefined;

  beforeAll(async () => {
    own = await withPostgres();
    const direct = new URL(own.databaseUrl);
    wire = new TcpProxy(Number(direct.port));
    direct.port = String(await wire.listen());
    address = direct.href;
  });

  afterEach(async () => {
    wire.setSilent(false);
    await client?.end({ timeout: 1 });
  });

  afterAll(async () => {
    await wire.stop();
    await own.drop();
  });

  const connect = (more: postgres.Options<never> = {}): Sql => {
    client = postgres(address, { max: 1, ...givingUpSilence(address, LIMIT_MS), ...more }) as Sql;
    return client;
  };

  it('is given up when it stays silent, and another one made', async () => {
    const sql = connect();
    expect(await sql`select 1 as one`).toEqual([{ one: 1 }]);
    wire.setSilent(true);
    const error: unknown = await sql`select 2 as two`.catch((cause: unknown) => cause);
    expect(isLostConnection(error)).toBe(true);
    wire.setSilent(false);
    expect(await sql`select 3 as three`).toEqual([{ three: 3 }]);
  });

  it('that nobody used for long is made again without anybody noticing', async () => {
    const sql = connect();
    const backend = async () => (await sql`select pg_backend_pid() as pid`)[0]?.pid;
    const first = await backend();
    await wait(2 * LIMIT_MS);
    expect(await backend()).not.toBe(first);
  });

  it('is kept as long as something comes or goes', async () => {
    const sql = connect();
    const backends = new Set<unknown>();
    for (let looks = 0; looks < 6; looks += 1) {
      backends.add((await sql`select pg_backend_pid() as pid`)[0]?.pid);
      await wait(LIMIT_MS / 3);
    }
    expect(backends.size).toBe(1);
  });

  it('is kept when the process was too busy to read what came', async () => {
    const sql = connect();
    await sql`select 1`;
    const answer = sql`select 2 as two, pg_sleep(0.3)`.then((rows) => rows[0]?.two);
    await wait(LIMIT_MS / 2);
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 2 * LIMIT_MS);
    expect(await answer).toBe(2);
  });

  it('that can not be made says where it was to go', async () => {
    wire.setAway(true);
    const error = await connect()`select 1`.catch((cause: Error) => cause);
    wire.setAway(false);
    expect(isLostConnection(error)).toBe(true);
  });

  it('that the machine refuses to make at once is an error for who asked, and nobody else', async () => {
    // An address to all is no address of a server: the operating system says so at once.
    const nowhere = 'postgres://loadline@255.255.255.255:5432/loadline';
    client = postgres(nowhere, { max: 1, ...givingUpSilence(nowhere, LIMIT_MS) }) as Sql;
    const error: unknown = await client`select 1`.catch((cause: unknown) => cause);
    expect((error as { code: string }).code).toMatch(/^(ENETUNREACH|EACCES|EPERM|EHOSTUNREACH|ENOTSUP)$/);
  });

  it('is the driver’s own business when there are several hosts', () => {
    expect(givingUpSilence('postgres://loadline@first,second:5432/loadline', LIMIT_MS)).toEqual({});
    expect(givingUpSilence(address, LIMIT_MS)).toHaveProperty('socket');
  });
});
