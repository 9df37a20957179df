/** Buttons in messages and on Home pages, with a real Bolt app as the bot. */
import type { BlockAction, ButtonAction, RespondArguments } from '@slack/bolt';
import { afterEach, expect, test } from 'vitest';
import { plain, type Scene, startScene } from './fixture.ts';

let scene: Scene;
afterEach(() => scene.stop());

const button = (more: object = {}) => ({ type: 'button', action_id: 'go', text: plain('Go'), ...more });
const actions = (...elements: object[]) => ({ type: 'actions', elements });

/** A bot that keeps every click. */
async function play(): Promise<BlockAction[]> {
  const clicks: BlockAction[] = [];
  scene = await startScene({}, (app) => {
    app.action(/.*/, async ({ ack, body }) => {
      clicks.push(body as BlockAction);
      await ack();
    });
  });
  return clicks;
}

async function post(blocks: object[], channel = 'C1TEAM0000'): Promise<{ ts: string; channel: string }> {
  const answer = await scene.client.chat.postMessage({ channel, text: 'a', blocks: blocks as never });
  return { ts: String(answer.ts), channel: String(answer.channel) };
}

test('a click carries the button, the message, the place and who clicked', async () => {
  const clicks = await play();
  const where = await post([{ ...actions(button({ value: 'card-1' })), block_id: 'b' }]);
  expect(await scene.standIn.click('U2BEN0000', where, 'go')).toEqual({ ok: true });
  expect(clicks).toMatchObject([
    {
      user: { id: 'U2BEN0000', username: 'ben' },
      channel: { id: 'C1TEAM0000' },
      container: { type: 'message', message_ts: where.ts, is_ephemeral: false },
      message: { ts: where.ts, blocks: [{ block_id: 'b' }] },
      actions: [{ type: 'button', action_id: 'go', block_id: 'b', value: 'card-1' }],
      trigger_id: expect.any(String),
    },
  ]);
});

test('several buttons of one name need a block or a value', async () => {
  const clicks = await play();
  const where = await post([
    { ...actions(button({ value: 'one' })), block_id: 'first' },
    { ...actions(button({ value: 'two' })), block_id: 'second' },
  ]);
  expect(await scene.standIn.click('U1ANA0000', where, 'go')).toMatchObject({
    reason: expect.stringContaining('several'),
  });
  await scene.standIn.click('U1ANA0000', where, 'go', { blockId: 'second' });
  await scene.standIn.click('U1ANA0000', where, 'go', { value: 'one' });
  expect(clicks.map((one) => (one.actions[0] as { value?: string }).value)).toEqual(['two', 'one']);
});

test('what is not there, or not for this person, can not be clicked', async () => {
  const clicks = await play();
  const where = await post([actions(button())]);
  const whisper = await scene.client.chat.postEphemeral({
    channel: 'C1TEAM0000',
    user: 'U1ANA0000',
    text: 'psst',
    blocks: [actions(button())] as never,
  });
  const hidden = { channel: 'C1TEAM0000', ts: String(whisper.message_ts) };
  expect(await scene.standIn.click('U1ANA0000', where, 'stop')).toMatchObject({
    reason: expect.stringContaining('nothing called stop'),
  });
  expect(await scene.standIn.click('U2BEN0000', hidden, 'go')).toMatchObject({
    reason: expect.stringContaining('not there'),
  });
  expect(await scene.standIn.click('U3CLEO0000', where, 'go')).toMatchObject({
    reason: expect.stringContaining('not there'),
  });
  expect(await scene.standIn.click('U1ANA0000', hidden, 'go')).toEqual({ ok: true });
  expect(clicks).toMatchObject([{ container: { is_ephemeral: true } }]);
  expect(clicks[0]).not.toHaveProperty('message');
  expect(await scene.standIn.click('U1ANA0000', { channel: 'C1TEAM0000', ts: '1.0' }, 'go')).toMatchObject({
    reason: expect.stringContaining('not there'),
  });
});

test('an answer in place replaces, deletes, or adds for one person or all', async () => {
  const answers: Record<string, RespondArguments> = {
    replace: { replace_original: true, text: 'replaced' },
    remove: { delete_original: true } as RespondArguments,
    whisper: { text: 'whispered' },
    shout: { response_type: 'in_channel', text: 'shouted' },
  };
  scene = await startScene({}, (app) => {
    app.action(/.*/, async ({ action, respond, ack }) => {
      await respond(answers[(action as ButtonAction).action_id] ?? 'unknown');
      await ack();
    });
  });
  const named = (action_id: string) => button({ action_id });
  const replaced = await post([actions(named('replace'))]);
  const removed = await post([actions(named('remove'), named('whisper'), named('shout'))]);
  await scene.standIn.click('U1ANA0000', replaced, 'replace');
  for (const name of ['whisper', 'shout', 'remove']) await scene.standIn.click('U1ANA0000', removed, name);
  const texts = (user: string) => scene.standIn.messagesOf(user, 'C1TEAM0000').map((one) => one.text);
  expect(texts('U1ANA0000')).toEqual(['replaced', 'whispered', 'shouted']);
  expect(texts('U2BEN0000')).toEqual(['replaced', 'shouted']);
});

test('a Home page is clicked like a form', async () => {
  const clicks = await play();
  const view = { type: 'home', blocks: [actions(button())] } as never;
  const { view: home } = await scene.client.views.publish({ user_id: 'U1ANA0000', view });
  expect(await scene.standIn.click('U1ANA0000', { viewId: String(home?.id) }, 'go')).toEqual({ ok: true });
  expect(clicks).toMatchObject([{ container: { type: 'view' }, view: { type: 'home', id: home?.id } }]);
  expect(clicks[0]).not.toHaveProperty('response_url');
  expect(await scene.standIn.click('U2BEN0000', { viewId: String(home?.id) }, 'go')).toMatchObject({
    ok: false,
  });
});
