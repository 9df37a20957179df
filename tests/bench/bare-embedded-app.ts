/** The least that a Bolt app on an embedded database can do before it is ready. A process of its own, as `bare-app.ts`. */
import { mkdir } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { PGlite } from '@electric-sql/pglite';
import { App, HTTPReceiver, LogLevel } from '@slack/bolt';

const { LOADLINE_DATA_FOLDER = '', LOADLINE_BOT_TOKEN = '', LOADLINE_SIGNING_SECRET = '' } = process.env;

await mkdir(LOADLINE_DATA_FOLDER, { recursive: true });
const database = await PGlite.create(LOADLINE_DATA_FOLDER);
await database.exec('create table if not exists bare_answers (user_id text not null, said text not null)');

const receiver = new HTTPReceiver({
  signingSecret: LOADLINE_SIGNING_SECRET,
  endpoints: '/slack/events',
  port: 0,
  logLevel: LogLevel.ERROR,
});
const app = new App({
  receiver,
  authorize: async () => ({ botToken: LOADLINE_BOT_TOKEN, botId: 'B0BOT', botUserId: 'U0BOT' }),
  logLevel: LogLevel.ERROR,
  convoStore: false,
});

const server = await app.start(0);
console.log(JSON.stringify({ port: (server.address() as AddressInfo).port, msg: 'The bare app is running' }));

process.once('SIGTERM', () => {
  void database.close().then(() => process.exit(0));
});
