/** Commands, messages and Home pages, with a real Bolt app as the bot. */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { App, SlashCommand } from '@slack/bolt';
import { afterEach, describe, expect, test } from 'vitest';
import type { JsonObject } from '../../../src/rehearsal/stand-in/page-state.ts';
import type { StandInOptions } from '../../../src/rehearsal/stand-in/stand-in-options.ts';
import { type Scene, startScene, TestClock } from './fixture.ts';

let scene: Scene;
afterEach(() => scene.stop());

async function play(listen: (app: App) => void, options: Partial<StandInOptions> = {}): Promise<void> {
  scene = await startScene(options, listen);
}

interface BareBot {
  url: string;
  got: JsonObject[];
  heads: JsonObject[];
  /** Settles once the first request has come. */
  first: Promise<void>;
  stop(): void;
}

/** A bot that is no Bolt app: answers every request as it is set to and keeps what it got. */
async function bareBot(
  status: (attempt: number) => number,
  answer = '',
  headers: Record<string, string> = {},
): Promise<BareBot> {
  const [got, heads]: [JsonObject[], JsonObject[]] = [[], []];
  const { promise: first, resolve: came } = Promise.withResolvers<void>();
  const server = createServer((request, response) => {
    request.setEncoding('utf8');
    let body = '';
    request.on('data', (chunk: string) => {
      body += chunk;
    });
    request.on('end', () => {
      got.push(JSON.parse(body) as JsonObject);
      heads.push({ ...request.headers });
      response.writeHead(status(got.length), headers).end(answer);
      came();
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/slack/events`;
  scene.standIn.connectBot(url);
  const stop = () => {
    server.close();
    server.closeAllConnections();
  };
  return { url, got, heads, first, stop };
}

describe('commands', () => {
  test('a command arrives with who, where and what; names become mentions, marks are escaped', async () => {
    let got: SlashCommand | undefined;
    await play((app) =>
      app.command('/loadline', async ({ command, ack }) => {
        got = command;
        await ack();
      }),
    );
    expect(
      await scene.standIn.command('U1ANA0000', 'C1TEAM0000', '/loadline  pull A & B <x>, 5, @ben @nobody'),
    ).toEqual({ ok: true });
    expect(got).toMatchObject({
      command: '/loadline',
      text: 'pull A &amp; B &lt;x&gt;, 5, <@U2BEN0000|ben> @nobody',
      user_id: 'U1ANA0000',
      channel_id: 'C1TEAM0000',
      channel_name: 'team-harbour',
    });
    expect(got).not.toHaveProperty('thread_ts');
    await scene.standIn.command('U1ANA0000', 'dm', '/loadline');
    expect(got).toMatchObject({ text: '', channel_id: 'D1ANA0000', channel_name: 'directmessage' });
    expect(scene.standIn.messagesOf('U1ANA0000', 'C1TEAM0000')).toEqual([]);
  });

  test('an answer is seen by the caller only, unless it is for the channel', async () => {
    await play((app) =>
      app.command('/loadline', ({ command, ack }) =>
        command.text === 'aloud' ? ack({ response_type: 'in_channel', text: 'for all' }) : ack('for you'),
      ),
    );
    await scene.standIn.command('U1ANA0000', 'C1TEAM0000', '/loadline');
    await scene.standIn.command('U1ANA0000', 'C1TEAM0000', '/loadline aloud');
    expect(scene.standIn.messagesOf('U1ANA0000', 'C1TEAM0000').map((one) => one.text)).toEqual([
      'for you',
      'for all',
    ]);
    expect(scene.standIn.messagesOf('U2BEN0000', 'C1TEAM0000').map((one) => one.text)).toEqual(['for all']);
  });

  test('an answer that the platform refuses is reported', async () => {
    await play((app) =>
      app.command('/loadline', ({ ack }) => ack({ blocks: [{ type: 'header' }] as never })),
    );
    const outcome = await scene.standIn.command('U1ANA0000', 'C1TEAM0000', '/loadline');
    expect(outcome).toMatchObject({ ok: false, reason: expect.stringContaining('invalid_blocks') });
  });

  test('an unknown command, a place one is not in, and a missing scope are refused', async () => {
    await play(() => {}, { scopes: [] });
    expect(await scene.standIn.command('U1ANA0000', 'C1TEAM0000', '/other')).toMatchObject({
      reason: expect.stringContaining('/other is not a command'),
    });
    expect(await scene.standIn.command('U3CLEO0000', 'C1TEAM0000', '/loadline')).toMatchObject({
      reason: 'You are not in that channel.',
    });
    expect(await scene.standIn.command('U1ANA0000', 'C1TEAM0000', '/loadline')).toMatchObject({
      reason: 'The app may not have commands here.',
    });
  });

  test('an app that does not answer in time is reported', async () => {
    await play((app) => app.command('/loadline', async () => {}), { ackLimitMs: 60 });
    const outcome = await scene.standIn.command('U1ANA0000', 'C1TEAM0000', '/loadline');
    expect(outcome).toEqual({ ok: false, reason: 'The app did not answer in time.' });
  });

  test('an app that is not there, or is not connected, is reported', async () => {
    scene = await startScene();
    expect(await scene.standIn.command('U1ANA0000', 'C1TEAM0000', '/loadline')).toMatchObject({
      reason: 'No app is connected.',
    });
    const bot = await bareBot(() => 200);
    bot.stop();
    expect(await scene.standIn.command('U1ANA0000', 'C1TEAM0000', '/loadline')).toMatchObject({
      reason: 'The app can not be reached.',
    });
  });
});

describe('response URLs', () => {
  test('they work five times, for thirty minutes, and check what is posted', async () => {
    // Signed requests must be near the real time, so this clock starts there.
    const clock = new TestClock(Date.now());
    const urls: string[] = [];
    await play(
      (app) =>
        app.command('/loadline', async ({ command, ack }) => {
          urls.push(command.response_url);
          await ack();
        }),
      { realNowMs: clock.nowMs },
    );
    const respond = async (url: string | undefined, body: object | string) => {
      const text = typeof body === 'string' ? body : JSON.stringify(body);
      const response = await fetch(String(url), { method: 'POST', body: text });
      return [response.status, ((await response.json()) as JsonObject).error];
    };
    await scene.standIn.command('U1ANA0000', 'C1TEAM0000', '/loadline');
    await scene.standIn.command('U1ANA0000', 'C1TEAM0000', '/loadline');
    expect(await respond(urls[0], '{')).toEqual([400, 'invalid_payload']);
    expect(await respond(urls[0], { text: '' })).toEqual([400, 'no_text']);
    for (const text of ['2', '3', '4', '5'])
      expect(await respond(urls[0], { text })).toEqual([200, undefined]);
    expect(await respond(urls[0], { text: '6' })).toEqual([404, 'used_url']);
    expect(scene.standIn.messagesOf('U1ANA0000', 'C1TEAM0000').map((one) => one.text)).toEqual([
      '2',
      '3',
      '4',
      '5',
    ]);
    clock.ms += 30 * 60_000;
    expect(await respond(urls[1], { text: 'late' })).toEqual([200, undefined]);
    clock.ms += 1;
    expect(await respond(urls[1], { text: 'too late' })).toEqual([404, 'expired_url']);
    expect(await respond(`${scene.standIn.url}/respond/none`, { text: 'a' })).toEqual([404, 'invalid_url']);
  });
});

describe('messages', () => {
  test('the app hears direct messages and channels it was invited to, and can answer', async () => {
    const heard: JsonObject[] = [];
    await play((app) =>
      app.message(async ({ message, say }) => {
        heard.push(message as unknown as JsonObject);
        await say('noted');
      }),
    );
    await scene.standIn.say('U1ANA0000', 'dm', '2: 3 <worked 1> @ben');
    await scene.standIn.say('U1ANA0000', 'C1TEAM0000', 'hello');
    await scene.standIn.say('U1ANA0000', 'C2OTHER0000', 'unheard');
    expect(heard).toMatchObject([
      {
        channel: 'D1ANA0000',
        channel_type: 'im',
        user: 'U1ANA0000',
        text: '2: 3 &lt;worked 1&gt; <@U2BEN0000>',
      },
      { channel: 'C1TEAM0000', channel_type: 'channel', text: 'hello' },
    ]);
    expect(scene.standIn.messagesOf('U1ANA0000', 'dm').map((one) => [one.user, one.text])).toContainEqual([
      'U0LOADLINE',
      'noted',
    ]);
  });

  test('without the scope to read direct messages the app does not hear them', async () => {
    let heard = 0;
    const count = (app: App) =>
      app.message(async () => {
        heard += 1;
      });
    await play(count, { scopes: ['chat:write', 'channels:history'] });
    await scene.standIn.say('U1ANA0000', 'dm', 'a');
    await scene.standIn.say('U1ANA0000', 'C1TEAM0000', 'b');
    expect(heard).toBe(1);
  });

  test('an event that failed is sent again at once with the same id, and then counts as delivered', async () => {
    scene = await startScene();
    const bot = await bareBot((attempt) => (attempt === 1 ? 500 : 200));
    expect(await scene.standIn.say('U1ANA0000', 'dm', 'a')).toEqual({ ok: true });
    expect(bot.got).toHaveLength(2);
    expect(bot.got[0]?.event_id).toBe(bot.got[1]?.event_id);
    expect(bot.heads[0]).not.toHaveProperty('x-slack-retry-num');
    expect(bot.heads[1]).toMatchObject({ 'x-slack-retry-num': '1', 'x-slack-retry-reason': 'http_error' });
    bot.stop();
  });

  test('an event counts as delivered after any answer of success', async () => {
    scene = await startScene();
    const bot = await bareBot(() => 204);
    expect(await scene.standIn.say('U1ANA0000', 'dm', 'a')).toEqual({ ok: true });
    expect(bot.got).toHaveLength(1);
    bot.stop();
  });

  test('an event follows two redirects, and no third', async () => {
    scene = await startScene({ eventRetryDelaysMs: [] });
    const end = await bareBot(() => 200);
    const second = await bareBot(() => 307, '', { location: end.url });
    const first = await bareBot(() => 307, '', { location: second.url });
    const before = await bareBot(() => 307, '', { location: first.url });
    scene.standIn.connectBot(first.url);
    expect(await scene.standIn.say('U1ANA0000', 'dm', 'a')).toEqual({ ok: true });
    expect(end.got).toHaveLength(1);
    scene.standIn.connectBot(before.url);
    expect(await scene.standIn.say('U1ANA0000', 'dm', 'b')).toMatchObject({ ok: false });
    expect(end.got).toHaveLength(1);
    for (const bot of [end, second, first, before]) bot.stop();
  });

  test('an event is not sent again when the app asks for that', async () => {
    scene = await startScene();
    const bot = await bareBot(() => 500, '', { 'x-slack-no-retry': '1' });
    expect(await scene.standIn.say('U1ANA0000', 'dm', 'a')).toMatchObject({ ok: false });
    expect(bot.got).toHaveLength(1);
    bot.stop();
  });

  test('stopping ends the retries that still wait', async () => {
    scene = await startScene({ eventRetryDelaysMs: [60_000] });
    const bot = await bareBot(() => 500);
    expect(await scene.standIn.say('U1ANA0000', 'dm', 'a')).toMatchObject({
      reason: 'The app answered with status 500.',
    });
    await scene.standIn.stop();
    expect(bot.got).toHaveLength(1);
    bot.stop();
    scene = await startScene();
  });
});

describe('addresses and Home pages', () => {
  test('a new address must send the challenge back', async () => {
    await play(() => {});
    expect(await scene.standIn.verifyBot()).toEqual({ ok: true });
    const bot = await bareBot(() => 200, 'something else');
    expect(await scene.standIn.verifyBot()).toMatchObject({ ok: false });
    bot.stop();
  });

  test('a wrong signing secret is turned away by the app', async () => {
    await play((app) => app.command('/loadline', ({ ack }) => ack()), { signingSecret: 'another-secret' });
    const outcome = await scene.standIn.command('U1ANA0000', 'C1TEAM0000', '/loadline');
    expect(outcome).toMatchObject({ reason: 'The app answered with status 401.' });
  });

  test('opening Home tells the app, which can publish the page', async () => {
    await play((app) =>
      app.event('app_home_opened', async ({ event, client }) => {
        const blocks = [{ type: 'header', text: { type: 'plain_text', text: 'Hello' } }] as never;
        await client.views.publish({ user_id: event.user, view: { type: 'home', blocks } });
      }),
    );
    const seen = new Promise<void>((resolve) => {
      scene.standIn.on('change', () => scene.standIn.homeOf('U2BEN0000') && resolve());
    });
    expect(await scene.standIn.openHome('U2BEN0000')).toEqual({ ok: true });
    await seen;
    expect(scene.standIn.homeOf('U2BEN0000')?.blocks).toMatchObject([{ type: 'header' }]);
    expect(scene.standIn.homeOf('U1ANA0000')).toBeUndefined();
  });

  test('opening the direct messages tells the app of that tab, without what the page shows', async () => {
    const heard: unknown[] = [];
    await play((app) => app.event('app_home_opened', async ({ event }) => void heard.push(event)));
    expect(await scene.standIn.openHome('U2BEN0000', 'messages')).toEqual({ ok: true });
    await expect.poll(() => heard).toMatchObject([{ user: 'U2BEN0000', tab: 'messages' }]);
    expect(heard[0]).not.toHaveProperty('view');
  });

  test('a shortcut brings a trigger, and neither a channel nor an address to answer to', async () => {
    const heard: Record<string, unknown>[] = [];
    await play((app) =>
      app.shortcut('anything', async ({ ack, body }) => {
        heard.push(body as never);
        await ack();
      }),
    );
    expect(await scene.standIn.shortcut('U2BEN0000', 'anything')).toEqual({ ok: true });
    expect(heard).toMatchObject([
      {
        type: 'shortcut',
        callback_id: 'anything',
        user: { id: 'U2BEN0000' },
        trigger_id: expect.any(String),
      },
    ]);
    for (const field of ['channel', 'response_url', 'message']) expect(heard[0]).not.toHaveProperty(field);
  });
});
