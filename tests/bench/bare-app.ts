/**
 * The least that a Bolt app on Postgres can do, as the measure for the bot: a form is one INSERT and its acknowledgement,
 * a command is its acknowledgement, one SELECT and an answer. A process of its own; knows nothing of Loadline.
 */
import type { AddressInfo } from 'node:net';
import { App, HTTPReceiver, LogLevel } from '@slack/bolt';
import postgres from 'postgres';

const { DATABASE_URL = '', LOADLINE_BOT_TOKEN = '', LOADLINE_SIGNING_SECRET = '' } = process.env;

const sql = postgres(DATABASE_URL, { max: 10, onnotice: () => undefined });
await sql`create table if not exists bare_answers (
  id bigint generated always as identity primary key, user_id text not null, said text not null)`;
await sql`create table if not exists bare_status (channel_id text primary key, words text not null)`;

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

app.view({ type: 'view_submission' }, async ({ ack, body, view }) => {
  await sql`insert into bare_answers (user_id, said) values (${body.user.id}, ${JSON.stringify(view.state.values)})`;
  await ack();
});

app.command('/loadline', async ({ ack, command, respond }) => {
  await ack();
  const [row] = await sql`select words from bare_status where channel_id = ${command.channel_id}`;
  await respond({ response_type: 'ephemeral', text: String(row?.words ?? 'Nothing yet.') });
});

const server = await app.start(0);
console.log(JSON.stringify({ port: (server.address() as AddressInfo).port, msg: 'The bare app is running' }));

process.once('SIGTERM', () => process.exit(0));
