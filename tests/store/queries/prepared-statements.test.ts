import postgres from 'postgres';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { preparing } from '../../../src/store/queries/prepared-statements.ts';

let client: postgres.Sql;

beforeAll(() => {
  client = postgres(inject('postgresUrl'), { max: 1 });
});
afterAll(() => client.end());

async function preparedTexts(): Promise<string[]> {
  const rows = await client.unsafe('select statement from pg_prepared_statements');
  return rows.map((row) => String(row.statement));
}

test('a statement with parameters is prepared once and used again, in transactions as well', async () => {
  const text = 'select $1::text as said, 1 as one';
  const sql = preparing(client);
  const said = async (run: Pick<postgres.Sql, 'unsafe'>, word: string) =>
    (await run.unsafe(text, [word]))[0]?.said;
  expect(await said(sql, 'ebb')).toBe('ebb');
  expect(await sql.begin((tx) => said(tx, 'flood'))).toBe('flood');
  expect(await sql.begin((tx) => tx.savepoint((inner) => said(inner, 'slack')))).toBe('slack');
  expect((await preparedTexts()).filter((prepared) => prepared === text)).toHaveLength(1);
});

test('a statement over a long list is not kept prepared: there would be one for each length', async () => {
  const list = Array.from({ length: 41 }, (_, i) => `$${i + 1}::int`);
  const text = `select ${list.join(' + ')} as sum`;
  const [row] = await preparing(client).unsafe(
    text,
    list.map((_, i) => i),
  );
  expect(row?.sum).toBe(820);
  expect(await preparedTexts()).not.toContain(text);
});

test('what is rolled back through it leaves nothing behind', async () => {
  await client.unsafe('create temporary table tides (height int)');
  const failed = preparing(client).begin(async (tx) => {
    await tx.unsafe('insert into tides values ($1)', [3]);
    throw new Error('stop');
  });
  await expect(failed).rejects.toThrow('stop');
  expect(await client.unsafe('select * from tides')).toHaveLength(0);
});
