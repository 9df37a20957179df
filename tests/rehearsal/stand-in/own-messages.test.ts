/** The platform tells an app of its own messages, where it is subscribed to messages. */
import { afterEach, expect, test } from 'vitest';
import { type Recorder, startRecorder } from '../../platform/recorder.ts';
import { BOT, type Scene, startScene } from './fixture.ts';

let scene: Scene;
let recorder: Recorder;
afterEach(async () => {
  await scene.stop();
  await recorder.stop();
});

async function toldOf(scopes?: readonly string[]): Promise<unknown[]> {
  scene = await startScene(scopes ? { scopes } : {});
  recorder = await startRecorder();
  scene.standIn.connectBot(recorder.url);
  const { chat } = scene.client;
  const { channel, ts } = await chat.postMessage({ channel: 'U1ANA0000', text: 'one' });
  await chat.update({ channel: String(channel), ts: String(ts), text: 'two' });
  await chat.postMessage({ channel: 'C1TEAM0000', text: 'in the channel' });
  await scene.standIn.stop();
  return recorder.taken().map(({ event }) => event);
}

test('the app hears of what it posts and changes in direct messages, and of nothing in channels', async () => {
  const told = await toldOf();
  expect(told).toHaveLength(2);
  expect(told).toEqual(
    expect.arrayContaining([
      expect.objectContaining({
        type: 'message',
        channel_type: 'im',
        user: BOT,
        text: 'one',
        bot_id: expect.any(String),
      }),
      expect.objectContaining({
        subtype: 'message_changed',
        hidden: true,
        message: expect.objectContaining({ text: 'two', user: BOT }),
        previous_message: expect.objectContaining({ text: 'one' }),
      }),
    ]),
  );
});

test('without the right to read direct messages it hears of nothing', async () => {
  expect(await toldOf(['chat:write', 'im:write'])).toEqual([]);
});
