/**
 * A small real Bolt app on a stand-in workspace, for tests of the page: its command posts one of each block,
 * opens a form, or repeats hostile text.
 */
import { once } from 'node:events';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { createCanvas } from '@napi-rs/canvas';
import { App, type BlockAction, HTTPReceiver, LogLevel } from '@slack/bolt';
import { type StandIn, startStandIn } from '../../../src/rehearsal/stand-in/stand-in.ts';
import type { StandInOptions } from '../../../src/rehearsal/stand-in/stand-in-options.ts';
import {
  everyBlock,
  everyInput,
  fileForm,
  pictureBlock,
  secondForm,
  withNoteField,
} from './sample-blocks.ts';

const SIGNING_SECRET = 'sample-signing-secret';
const CHANNEL = 'C0HARBOUR';

export const HOSTILE_TEXT = [
  '<img src=x onerror="window.broken=1">',
  '<script>window.broken=2</script>',
  '<javascript:window.broken=3|press me>',
  '<data:text/html,hello|and me>',
].join('\n');

/** Long, and with signs that mean something in addresses and markup. */
export const SHARED_NAME = 'sprints of team <b>harbour & quay</b>, the whole year to date.csv';

export interface SampleApp {
  standIn: StandIn;
  /** What the app received: ids of actions with their values, and submitted values. */
  heard: unknown[];
  stop(): Promise<void>;
}

export async function startSampleApp(more: Partial<StandInOptions> = {}): Promise<SampleApp> {
  const standIn = await startStandIn({
    signingSecret: SIGNING_SECRET,
    botToken: 'xoxb-sample',
    users: [
      { id: 'U0ANA0000', name: 'ana', realName: 'Ana', timeZone: 'Europe/Lisbon' },
      { id: 'U0BO00000', name: 'bo', realName: 'Bo', timeZone: 'Europe/Lisbon' },
    ],
    channels: [{ id: CHANNEL, name: 'harbour', memberIds: ['U0ANA0000', 'U0BO00000'] }],
    now: () => new Date('2026-11-02T09:15:00Z'),
    ...more,
  });
  const receiver = new HTTPReceiver({ signingSecret: SIGNING_SECRET, logLevel: LogLevel.ERROR });
  const app = new App({
    token: 'xoxb-sample',
    receiver,
    clientOptions: { slackApiUrl: `${standIn.url}/api/` },
    logLevel: LogLevel.ERROR,
  });
  const heard: unknown[] = [];
  listen(app, heard);
  const server = (await app.start({ port: 0, host: '127.0.0.1' })) as Server;
  if (!server.listening) await once(server, 'listening');
  standIn.connectBot(`http://127.0.0.1:${(server.address() as AddressInfo).port}/slack/events`);
  return {
    standIn,
    heard,
    stop: async () => {
      await app.stop();
      await standIn.stop();
    },
  };
}

function listen(app: App, heard: unknown[]): void {
  app.command('/loadline', async ({ ack, command, client, respond }) => {
    await ack();
    switch (command.text) {
      case 'blocks':
        await client.chat.postMessage({
          channel: command.channel_id,
          text: 'What is left on your cards? In words.',
          blocks: everyBlock(await uploadPicture(client)),
        });
        return;
      case 'words and picture':
        await respond({ text: 'Six days, 8.5 points left.', response_type: 'ephemeral' });
        await respond({
          text: 'Burndown',
          blocks: [pictureBlock(await uploadPicture(client))],
          response_type: 'ephemeral',
        });
        return;
      case 'form':
        await client.views.open({ trigger_id: command.trigger_id, view: everyInput() });
        return;
      case 'files':
        await client.views.open({ trigger_id: command.trigger_id, view: fileForm() });
        return;
      case 'share':
        await shareFiles(client, command.channel_id);
        return;
      case 'hostile':
        await client.chat.postMessage({ channel: command.channel_id, text: HOSTILE_TEXT });
        return;
      case 'direct':
        await client.chat.postMessage({ channel: 'U0BO00000', text: 'Good morning, Bo.' });
        return;
      default:
        await respond({ text: `I don’t know “${command.text}”.`, response_type: 'ephemeral' });
    }
  });
  app.action<BlockAction>(/.*/, async ({ ack, action, body, client }) => {
    await ack();
    heard.push(action);
    if (body.message && body.channel && action.type === 'button') {
      const text = `Noted: ${action.value}.`;
      await client.chat.update({ channel: body.channel.id, ts: body.message.ts, text, blocks: [] });
    }
  });
  app.view('plan', async ({ ack, view }) => {
    const values = view.state.values;
    heard.push(values);
    const cards = values.cards?.text?.value;
    if (cards === 'one more field') return ack({ response_action: 'update', view: withNoteField() });
    if (cards === 'one more form') return ack({ response_action: 'push', view: secondForm() });
    if (cards?.includes(',')) return ack();
    return ack({ response_action: 'errors', errors: { cards: 'Line 1 has no estimate.' } });
  });
  app.view('files', async ({ ack, view }) => {
    const { main, more } = view.state.values;
    const named = [...(main?.files?.files ?? []), ...(more?.files?.files ?? [])].map(({ name }) => name);
    heard.push(named);
    if (named.includes('bad.csv'))
      return ack({ response_action: 'errors', errors: { main: 'Line 2 is bad.' } });
    return ack();
  });
  app.event('app_mention', async ({ event, client }) => {
    const { channel, user = '', thread_ts } = event;
    const text = `You asked: ${event.text.replace(/<@\w+>\s*/, '')}`;
    await client.chat.postEphemeral({ channel, user, text, ...(thread_ts ? { thread_ts } : {}) });
  });
  app.shortcut('pull-message-in', async ({ ack, body, client }) => {
    await ack();
    const said = (body as unknown as { message: { text: string } }).message.text;
    const text = { type: 'plain_text' as const, text: `A card of: ${said}` };
    const title = { type: 'plain_text' as const, text: 'Pull in' };
    const view = { type: 'modal' as const, title, blocks: [{ type: 'section' as const, text }] };
    await client.views.open({ trigger_id: body.trigger_id, view });
  });
  app.event('app_home_opened', async ({ event, client }) => {
    const text = { type: 'mrkdwn' as const, text: `Home of <@${event.user}>` };
    await client.views.publish({
      user_id: event.user,
      view: { type: 'home', blocks: [{ type: 'section', text }] },
    });
  });
}

async function uploadPicture(client: App['client']): Promise<string> {
  const canvas = createCanvas(320, 160);
  const context = canvas.getContext('2d');
  context.fillStyle = '#0c4a60';
  context.fillRect(20, 20, 280, 120);
  const bytes = canvas.toBuffer('image/png');
  const id = await sendBytes(client, 'burndown.png', bytes);
  await client.files.completeUploadExternal({ files: [{ id }] });
  return id;
}

/** Shares two files in one message; one of them would be a page with a script if a browser showed it. */
async function shareFiles(client: App['client'], channel: string): Promise<void> {
  const files = [
    { id: await sendBytes(client, SHARED_NAME, Buffer.from('name,first day\n'.repeat(100))) },
    { id: await sendBytes(client, 'page.html', Buffer.from('<script>window.broken=4</script>')) },
  ] as const;
  const initial_comment = 'All that is kept.';
  await client.apiCall('files.completeUploadExternal', { files, channel_id: channel, initial_comment });
}

async function sendBytes(client: App['client'], filename: string, bytes: Buffer): Promise<string> {
  const { upload_url: url, file_id: id } = await client.files.getUploadURLExternal({
    filename,
    length: bytes.length,
  });
  if (!url || !id) throw new Error('the stand-in gave no address for the upload');
  await fetch(url, { method: 'POST', body: new Uint8Array(bytes) });
  return id;
}
