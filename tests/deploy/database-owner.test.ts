/**
 * The database user that the compose file makes is no superuser and owns one database: the bot comes up with it, works, and
 * is found well by the doctor. (`npm run check:deploy` dumps and restores with it, where Postgres' own tools are.)
 */
import { randomUUID } from 'node:crypto';
import postgres from 'postgres';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import type { StandIn } from '../../src/rehearsal/stand-in/stand-in.ts';
import { openDatabase } from '../../src/store/open-database.ts';
import {
  type BotProcess,
  MAIN,
  patientStandIn,
  settingsFor,
  startedLine,
  startProcess,
} from '../support/bot-process.ts';
import { contentOf, fillDatabase } from '../support/filled-database.ts';
import { ownerStatements } from './owner-sql.ts';

const WAITS = { timeout: 90_000 };

const name = `owner_${randomUUID().replaceAll('-', '')}`;
let admin: postgres.Sql;
let databaseUrl: string;
let platform: StandIn;

beforeAll(async () => {
  const server = new URL(inject('postgresUrl'));
  admin = postgres(server.href, { max: 1 });
  for (const statement of ownerStatements(name, 'only-for-tests')) await admin.unsafe(statement);
  Object.assign(server, { username: name, password: 'only-for-tests', pathname: `/${name}` });
  databaseUrl = server.href;
  platform = await patientStandIn();
});
afterAll(async () => {
  await platform.stop();
  await admin.unsafe(`drop database ${name} with (force)`);
  await admin.unsafe(`drop role ${name}`);
  await admin.end();
});

function start(...args: string[]): BotProcess {
  return startProcess([MAIN, ...args], { ...settingsFor(platform), DATABASE_URL: databaseUrl });
}

it('may do nothing that the bot doesn’t need', async () => {
  const [role] = await admin`
    select rolsuper, rolcreatedb, rolcreaterole, rolreplication, rolbypassrls from pg_roles where rolname = ${name}`;
  expect(role).toEqual({
    rolsuper: false,
    rolcreatedb: false,
    rolcreaterole: false,
    rolreplication: false,
    rolbypassrls: false,
  });
  const [reach] = await admin`
    select has_database_privilege(${name}, 'postgres', 'connect') as "goesElsewhere",
      has_database_privilege('public', ${name}, 'connect') as "letsOthersIn"`;
  expect(reach).toEqual({ goesElsewhere: false, letsOthersIn: false });
});

it('brings the database up to date, fills it and reads it', async () => {
  const database = await openDatabase({ databaseUrl });
  await fillDatabase(database);
  const content = await contentOf(database);
  await database.close();
  expect(content.sprints).toHaveLength(1);
  expect(content.queue).toHaveLength(2);
});

it('runs the bot, with its queue, its clock and its commands', { timeout: 3 * WAITS.timeout }, async () => {
  const bot = start();
  try {
    await expect.poll(() => startedLine(bot), WAITS).toBeDefined();
    const port = startedLine(bot)?.port;
    expect((await fetch(`http://127.0.0.1:${port}/readyz`)).status).toBe(200);
    platform.connectBot(`http://127.0.0.1:${port}/slack/events`);
    expect(await platform.command('U0ANA', 'C0TEAM', '/loadline setup')).toEqual({ ok: true });
    // What was queued by then is taken up.
    const owner = postgres(databaseUrl, { max: 1 });
    const untouched = () => owner`select id from pgboss.job where state = 'created' and data ? 'postId'`;
    await expect.poll(async () => (await untouched()).length, WAITS).toBe(0);
    await owner.end();
    const doctor = start('doctor');
    expect([await doctor.ended, doctor.output().match(/^fix.*$/gm)]).toEqual([0, null]);
    expect(doctor.output()).toMatch(/^ok +database/m);
    expect(await start('posts', 'list').ended).toBe(0);
    expect(bot.output()).not.toMatch(/permission denied|must be owner/);
  } finally {
    bot.child.kill('SIGTERM');
    await bot.ended;
  }
});
