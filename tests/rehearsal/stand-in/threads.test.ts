/** Mentions of the app, replies, and what one person alone sees in a thread, with a real Bolt app as the bot. */
import type { App } from '@slack/bolt';
import { afterEach, describe, expect, test } from 'vitest';
import type { JsonObject } from '../../../src/rehearsal/stand-in/page-state.ts';
import type { StandInOptions } from '../../../src/rehearsal/stand-in/stand-in-options.ts';
import { BOT, refusal, type Scene, startScene } from './fixture.ts';

const ANA = 'U1ANA0000';
const TEAM = 'C1TEAM0000';

let scene: Scene;
afterEach(() => scene.stop());

/** @returns the mentions that the app hears */
async function listening(options: Partial<StandInOptions> = {}): Promise<JsonObject[]> {
  const heard: JsonObject[] = [];
  const listen = (app: App) =>
    app.event('app_mention', async ({ event }) => {
      heard.push(event as unknown as JsonObject);
    });
  scene = await startScene(options, listen);
  return heard;
}

const seenBy = (userId: string) => scene.standIn.messagesOf(userId, TEAM);

describe('a mention of the app', () => {
  test('is told with who, where and what', async () => {
    const heard = await listening();
    await scene.standIn.say(ANA, TEAM, '@loadline status');
    const [said] = seenBy(ANA);
    expect(heard).toEqual([
      {
        type: 'app_mention',
        user: ANA,
        text: `<@${BOT}> status`,
        team: 'T0STANDIN',
        ts: said?.ts,
        channel: TEAM,
        event_ts: said?.ts,
      },
    ]);
  });

  test('in a reply names the thread', async () => {
    const heard = await listening();
    await scene.standIn.say(ANA, TEAM, 'Who knows the tides?');
    const first = seenBy(ANA)[0]?.ts as string;
    await scene.standIn.say('U2BEN0000', TEAM, '@loadline cards', first);
    expect(heard).toMatchObject([{ thread_ts: first, user: 'U2BEN0000' }]);
    // A reply to a reply belongs to the same thread.
    const reply = seenBy(ANA)[1]?.ts as string;
    await scene.standIn.say(ANA, TEAM, '@loadline cards', reply);
    expect(seenBy(ANA).map(({ threadTs }) => threadTs)).toEqual([undefined, first, first]);
  });

  test('is not told in direct messages, uninvited, or without the scope', async () => {
    const heard = await listening();
    await scene.standIn.say(ANA, 'dm', '@loadline status');
    await scene.standIn.say(ANA, 'C2OTHER0000', '@loadline status');
    expect(heard).toEqual([]);
    await scene.stop();
    const deaf = await listening({ scopes: ['chat:write', 'channels:history'] });
    await scene.standIn.say(ANA, TEAM, '@loadline status');
    expect(deaf).toEqual([]);
  });
});

describe('an answer for one person in a thread', () => {
  test('is seen where the thread has replies, and nowhere else', async () => {
    await listening();
    await scene.standIn.say(ANA, TEAM, 'Who knows the tides?');
    const first = seenBy(ANA)[0]?.ts as string;
    const answer = { channel: TEAM, user: ANA, text: 'psst', thread_ts: first };
    expect(await scene.client.chat.postEphemeral(answer)).toMatchObject({ ok: true });
    expect(seenBy(ANA).map(({ text }) => text)).toEqual(['Who knows the tides?']);
    await scene.standIn.say('U2BEN0000', TEAM, 'I do', first);
    await scene.client.chat.postEphemeral(answer);
    expect(seenBy(ANA).map(({ text, ephemeral }) => [text, ephemeral])).toEqual([
      ['Who knows the tides?', false],
      ['I do', false],
      ['psst', true],
    ]);
    expect(seenBy('U2BEN0000')).toHaveLength(2);
  });

  test('has buttons that say in which thread they are', async () => {
    let pressed: JsonObject | undefined;
    scene = await startScene({}, (app) => {
      app.action('look', async ({ ack, body }) => {
        pressed = body as unknown as JsonObject;
        await ack();
      });
    });
    await scene.standIn.say(ANA, TEAM, 'Who knows the tides?');
    const first = seenBy(ANA)[0]?.ts as string;
    await scene.standIn.say(ANA, TEAM, 'Anybody?', first);
    const look = {
      type: 'button' as const,
      action_id: 'look',
      text: { type: 'plain_text' as const, text: 'Look' },
    };
    const blocks = [{ type: 'actions' as const, elements: [look] }];
    await scene.client.chat.postEphemeral({
      channel: TEAM,
      user: ANA,
      text: 'Look',
      blocks,
      thread_ts: first,
    });
    const shown = seenBy(ANA).at(-1)?.ts as string;
    await scene.standIn.click(ANA, { channel: TEAM, ts: shown }, 'look');
    expect(pressed?.container).toMatchObject({ thread_ts: first, message_ts: shown, is_ephemeral: true });
  });
});

test('nobody can reply to what is not there', async () => {
  await listening();
  expect(await scene.standIn.say(ANA, TEAM, 'hm', '1.000001')).toMatchObject({ ok: false });
});

describe('a message', () => {
  test('has an address, which names its thread', async () => {
    await listening();
    await scene.standIn.say(ANA, TEAM, 'Who knows the tides?');
    const first = seenBy(ANA)[0]?.ts as string;
    await scene.standIn.say(ANA, TEAM, 'Anybody?', first);
    const reply = seenBy(ANA)[1]?.ts as string;
    const link = async (message_ts: string, channel = TEAM) =>
      (await scene.client.chat.getPermalink({ channel, message_ts })).permalink;
    expect(await link(first)).toMatch(/^http.*\/archives\/C1TEAM0000\/p\d{16}$/);
    expect(await link(reply)).toMatch(/\?thread_ts=[\d.]+&cid=C1TEAM0000$/);
    expect((await refusal(link('1.000001'))).error).toBe('message_not_found');
    expect((await refusal(link(first, 'C4SECRET0000'))).error).toBe('channel_not_found');
  });

  test('has a menu with the app’s shortcut, which tells of message, place and person', async () => {
    let got: JsonObject | undefined;
    scene = await startScene({}, (app) => {
      app.shortcut('pull-message-in', async ({ ack, body }) => {
        got = body as unknown as JsonObject;
        await ack();
      });
    });
    await scene.standIn.say(ANA, TEAM, 'Who knows the tides?');
    const ts = seenBy(ANA)[0]?.ts as string;
    expect(await scene.standIn.messageShortcut(ANA, TEAM, ts, 'pull-message-in')).toEqual({ ok: true });
    expect(got).toMatchObject({
      type: 'message_action',
      user: { id: ANA },
      team: { id: 'T0STANDIN' },
      channel: { id: TEAM, name: 'team-harbour' },
      message_ts: ts,
      message: { text: 'Who knows the tides?', ts, user: ANA },
    });
  });
});
