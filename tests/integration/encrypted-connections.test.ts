/** The way to a Postgres server: encrypted and verified, or refused with what to do. Real servers, with and without TLS. */
import { generate } from 'selfsigned';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { checkDatabase } from '../../src/doctor/check-database.ts';
import { findingWords } from '../../src/doctor/finding.ts';
import { postgresFacts } from '../../src/store/database-facts.ts';
import { openDatabase } from '../../src/store/open-database.ts';
import { StoreError } from '../../src/store/store-error.ts';
import { sayCode } from '../../src/words/say.ts';
import { type PostgresProcess, startPostgres } from '../support/postgres-process.ts';

const SAN = 'subjectAltName';

/** An authority, and a certificate that it signed for a server of this name and address. */
async function certificates(names: { readonly name: string; readonly ip: string }) {
  const authority = await generate([{ name: 'commonName', value: 'Authority of the tests' }], {
    algorithm: 'sha256',
    extensions: [
      { name: 'basicConstraints', cA: true, critical: true },
      { name: 'keyUsage', keyCertSign: true, critical: true },
    ],
  });
  const server = await generate([{ name: 'commonName', value: names.name }], {
    algorithm: 'sha256',
    ca: { key: authority.private, cert: authority.cert },
    extensions: [
      {
        name: SAN,
        altNames: [
          { type: 2, value: names.name },
          { type: 7, ip: names.ip },
        ],
      },
    ],
  });
  return { ca: authority.cert, key: server.private, cert: server.cert };
}

const startWithTls = async ({ key, cert }: { key: string; cert: string }): Promise<PostgresProcess> =>
  startPostgres({ ssl: 'on' }, { 'server.key': key, 'server.crt': cert });

async function refusalOf(databaseUrl: string, databaseCa?: string): Promise<StoreError> {
  const error: unknown = await postgresFacts({ databaseUrl, databaseCa }).catch(
    (refusal: unknown) => refusal,
  );
  expect(error).toBeInstanceOf(StoreError);
  return error as StoreError;
}

describe('a server with TLS', () => {
  let made: Awaited<ReturnType<typeof certificates>>;
  let server: PostgresProcess;
  beforeAll(async () => {
    made = await certificates({ name: 'localhost', ip: '127.0.0.1' });
    server = await startWithTls(made);
  });
  afterAll(() => server?.remove());

  it.each(['127.0.0.1', 'localhost'])(
    'is spoken to encrypted when its authority is trusted (%s)',
    async (host) => {
      const databaseUrl = `${server.urlOf().replace('127.0.0.1', host)}?sslmode=verify-full`;
      const database = await openDatabase({ databaseUrl, databaseCa: made.ca });
      try {
        expect(database.encryption).toBe('verified');
        const rows = await database.session.execute(
          "select count(*)::integer as all, count(*) filter (where ssl)::integer as encrypted from pg_stat_ssl join pg_stat_activity using (pid) where application_name = 'loadline'",
        );
        const [count] = [...(rows as unknown as { all: number; encrypted: number }[])];
        expect(count?.all).toBeGreaterThan(0);
        expect(count?.encrypted).toBe(count?.all);
      } finally {
        await database.close();
      }
    },
  );

  it('is refused when nobody trusted vouches for it, also where the client library of Postgres would not look', async () => {
    const error = await refusalOf(`${server.urlOf()}?sslmode=require`);
    expect(error.code).toBe('database-certificate-refused');
    expect(sayCode('start', error.problem)).toContain('LOADLINE_DATABASE_CA_FILE');
    expect(error.message).not.toContain('only-for-tests');
  });

  it('tells the doctor that it is encrypted, or that it need not be', async () => {
    const look = async (databaseUrl: string) =>
      (await checkDatabase({ databaseUrl, databaseCa: made.ca, dataFolder: 'unused' })).map(findingWords);
    expect(await look(`${server.urlOf()}?sslmode=verify-full`)).toContain(
      'The way to it is encrypted, and its certificate was checked.',
    );
    expect(await look(server.urlOf())).toContain(
      'It is on this machine; the way to it is not encrypted and need not be.',
    );
  });
});

it('a certificate for another name is refused', async () => {
  const made = await certificates({ name: 'db.example.org', ip: '192.0.2.7' });
  const server = await startWithTls(made);
  try {
    const error = await refusalOf(`${server.urlOf()}?sslmode=verify-full`, made.ca);
    expect(error.problem).toMatchObject({
      code: 'database-certificate-refused',
      reason: 'ERR_TLS_CERT_ALTNAME_INVALID',
    });
  } finally {
    await server.remove();
  }
});

it('a server without TLS is refused where it is asked for, and nothing is sent to it', async () => {
  const error = await refusalOf(`${inject('postgresUrl')}?sslmode=verify-full`);
  expect(error.code).toBe('database-unencrypted');
});
