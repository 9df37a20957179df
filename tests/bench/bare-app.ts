/**
 * The least that a Bolt app on Postgres can do, as the measure for the bot: a form is one INSERT and its acknowledgement,
 * and where `BARE_APP_SHOWS` is set an update of the message in the person's direct messages after it; a command is its
 * acknowledgement, one SELECT and an answer. A process of its own; knows nothing of Loadline.
 */
import postgres from 'postgres';
import { bareApp, serve } from './bare-server.ts';

const { DATABASE_URL = '', BARE_APP_SHOWS } = process.env;

const sql = postgres(DATABASE_URL, { max: 10, onnotice: () => undefined });
await sql`create table if not exists bare_answers (
  id bigint generated always as identity primary key, user_id text not null, said text not null)`;
await sql`create table if not exists bare_status (channel_id text primary key, words text not null)`;

const app = bareApp();

app.view({ type: 'view_submission' }, async ({ ack, body, view, client }) => {
  await sql`insert into bare_answers (user_id, said) values (${body.user.id}, ${JSON.stringify(view.state.values)})`;
  await ack();
  if (BARE_APP_SHOWS === undefined) return;
  const channel = body.user.id.replace(/^U/, 'D');
  await client.chat.update({ channel, ts: '1790000000.000001', text: 'You have answered.' });
});

app.command('/loadline', async ({ ack, command, respond }) => {
  await ack();
  const [row] = await sql`select words from bare_status where channel_id = ${command.channel_id}`;
  await respond({ response_type: 'ephemeral', text: String(row?.words ?? 'Nothing yet.') });
});

await serve(app);
