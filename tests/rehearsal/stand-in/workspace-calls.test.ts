/** People, conversations, history and files with the real client. docs.slack.dev/reference/methods */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { many, PNG, refusal, type Scene, startScene, TestClock, TOKEN, uploadPicture } from './fixture.ts';

let scene: Scene;
beforeEach(async () => {
  scene = await startScene();
});
afterEach(() => scene.stop());

describe('people', () => {
  test('a person comes with their zone and its offset at the simulated time', async () => {
    const { user } = await scene.client.users.info({ user: 'U3CLEO0000' });
    // Kathmandu is at +5:45 (IANA tz 2025c).
    expect(user).toMatchObject({ tz: 'Asia/Kathmandu', tz_offset: 20_700, name: 'cleo' });
    // New York leaves summer time on 2026-11-01 at 06:00Z (IANA tz 2025c).
    scene.calendar.ms = Date.UTC(2026, 9, 31);
    expect((await scene.client.users.info({ user: 'U2BEN0000' })).user?.tz_offset).toBe(-4 * 3600);
    scene.calendar.ms = Date.UTC(2026, 10, 2);
    expect((await scene.client.users.info({ user: 'U2BEN0000' })).user?.tz_offset).toBe(-5 * 3600);
  });

  test('everybody is listed, page by page, the gone ones marked', async () => {
    const found: { id?: string; deleted?: boolean }[] = [];
    for await (const page of scene.client.paginate('users.list', { limit: 2 })) {
      found.push(...(page as unknown as { members: { id: string }[] }).members);
    }
    expect(found.map((one) => one.id)).toEqual([
      'U1ANA0000',
      'U2BEN0000',
      'U3CLEO0000',
      'U9GONE0000',
      'U0LOADLINE',
      'USLACKBOT',
    ]);
    expect(found.filter((one) => one.deleted).map((one) => one.id)).toEqual(['U9GONE0000']);
  });

  test('a large workspace is listed only by pages', async () => {
    const users = many(1000, (at) => ({ id: `U1${at}`, name: `person-${at}` }));
    const { client, stop } = await startScene({ users, channels: [] });
    expect((await refusal(client.users.list({}))).error).toBe('limit_required');
    expect((await client.users.list({ limit: 200 })).members).toHaveLength(200);
    await stop();
  });

  test('strangers are not found', async () => {
    expect((await refusal(scene.client.users.info({ user: 'U404' }))).error).toBe('user_not_found');
  });
});

describe('conversations', () => {
  test('members and facts of a channel', async () => {
    const { members } = await scene.client.conversations.members({ channel: 'C1TEAM0000' });
    expect(members).toEqual(['U1ANA0000', 'U2BEN0000', 'U0LOADLINE']);
    const { channel } = await scene.client.conversations.info({ channel: 'C1TEAM0000' });
    expect(channel).toMatchObject({ name: 'team-harbour', is_private: false });
    const hidden = scene.client.conversations.members({ channel: 'C4SECRET0000' });
    expect((await refusal(hidden)).error).toBe('channel_not_found');
  });

  test('a direct message is opened by a person, once', async () => {
    const first = await scene.client.conversations.open({ users: 'U1ANA0000' });
    const second = await scene.client.conversations.open({ users: 'U1ANA0000' });
    expect(first.channel?.id).toBe(second.channel?.id);
    expect(first).not.toHaveProperty('already_open');
    expect(second).toMatchObject({ ok: true, already_open: true, no_op: true });
    expect((await refusal(scene.client.conversations.open({ users: 'U9GONE0000' }))).error).toBe(
      'user_disabled',
    );
    expect((await refusal(scene.client.conversations.open({ users: 'U404' }))).error).toBe('user_not_found');
  });
});

describe('joining', () => {
  test('the bot joins public channels only, and may do it again', async () => {
    const { client, stop } = await startScene({ scopes: ['channels:join', 'channels:read'] });
    const join = (channel: string) => client.conversations.join({ channel });
    expect(await join('C2OTHER0000')).toMatchObject({ ok: true, channel: { is_member: true } });
    expect(await join('C2OTHER0000')).toMatchObject({ ok: true, warning: 'already_in_channel' });
    expect((await refusal(join('C4SECRET0000'))).error).toBe('method_not_supported_for_channel_type');
    expect((await refusal(join('C3OLD0000'))).error).toBe('is_archived');
    expect((await refusal(join('C404'))).error).toBe('channel_not_found');
    await stop();
  });
});

describe('history', () => {
  const history = (more: object = {}) =>
    scene.client.conversations.history({ channel: 'C1TEAM0000', ...more });

  beforeEach(async () => {
    for (const index of many(5, (at) => at)) {
      const metadata = { event_type: 'key', event_payload: { index } };
      await scene.client.chat.postMessage({ channel: 'C1TEAM0000', text: `post ${index}`, metadata });
      scene.calendar.ms += 60_000;
    }
  });

  test('the newest comes first, page by page', async () => {
    const first = await history({ limit: 2 });
    expect(first.messages?.map((one) => one.text)).toEqual(['post 4', 'post 3']);
    expect(first.has_more).toBe(true);
    const second = await history({ limit: 3, cursor: first.response_metadata?.next_cursor });
    expect(second.messages?.map((one) => one.text)).toEqual(['post 2', 'post 1', 'post 0']);
    expect(second.has_more).toBe(false);
    expect((await refusal(history({ cursor: 'bm9wZQ' }))).error).toBe('invalid_cursor');
  });

  test('a page has 100 messages unless asked otherwise, and never more than 999', async () => {
    const { client, stop } = await startScene();
    for (const index of many(1000, (at) => at))
      await client.chat.postMessage({ channel: 'C1TEAM0000', text: `post ${index}` });
    const sizeOf = async (more: object) =>
      (await client.conversations.history({ channel: 'C1TEAM0000', ...more })).messages?.length;
    expect(await sizeOf({})).toBe(100);
    expect(await sizeOf({ limit: 5000 })).toBe(999);
    await stop();
  });

  test('an app sold outside the marketplace reads 15 messages once a minute', async () => {
    const { client, calendar, stop } = await startScene({
      isHistoryRestricted: true,
      rateLimits: 'enforced',
    });
    for (const index of many(20, (at) => at)) {
      await client.chat.postMessage({ channel: 'C1TEAM0000', text: `post ${index}` });
      calendar.ms += 60_000;
    }
    const read = () => client.conversations.history({ channel: 'C1TEAM0000', limit: 200 });
    expect((await read()).messages).toHaveLength(15);
    await expect(read()).rejects.toMatchObject({ retryAfter: 60 });
    calendar.ms += 60_000;
    expect((await read()).messages).toHaveLength(15);
    await stop();
  });

  test('bounds are left out unless they are asked for', async () => {
    const stamps = (await history()).messages?.map((one) => String(one.ts)) ?? [];
    const bounds = { oldest: stamps[3], latest: stamps[1] };
    expect((await history(bounds)).messages).toHaveLength(1);
    expect((await history({ ...bounds, inclusive: true })).messages).toHaveLength(3);
  });

  test('the payload of metadata comes only when asked for, its type always', async () => {
    expect((await history({ limit: 1 })).messages?.[0]?.metadata).toEqual({ event_type: 'key' });
    const [newest] = (await history({ limit: 1, include_all_metadata: true })).messages ?? [];
    expect(newest?.metadata).toEqual({ event_type: 'key', event_payload: { index: 4 } });
  });

  test('the bot must be in the channel, and ephemeral messages are not kept', async () => {
    await scene.client.chat.postEphemeral({ channel: 'C1TEAM0000', user: 'U1ANA0000', text: 'psst' });
    expect((await history()).messages).toHaveLength(5);
    const uninvited = scene.client.conversations.history({ channel: 'C2OTHER0000' });
    expect((await refusal(uninvited)).error).toBe('not_in_channel');
  });
});

describe('scopes', () => {
  test.each([
    ['chat:write', (one: Scene) => one.client.chat.postMessage({ channel: 'C1TEAM0000', text: 'a' })],
    ['users:read', (one: Scene) => one.client.users.info({ user: 'U1ANA0000' })],
    ['channels:read', (one: Scene) => one.client.conversations.info({ channel: 'C1TEAM0000' })],
    ['groups:read', (one: Scene) => one.client.conversations.info({ channel: 'C5CABIN0000' })],
    ['channels:history', (one: Scene) => one.client.conversations.history({ channel: 'C1TEAM0000' })],
    ['groups:history', (one: Scene) => one.client.conversations.history({ channel: 'C5CABIN0000' })],
    ['im:history', (one: Scene) => one.client.conversations.history({ channel: 'D1ANA0000' })],
    ['im:write', (one: Scene) => one.client.conversations.open({ users: 'U1ANA0000' })],
    ['files:write', (one: Scene) => one.client.files.getUploadURLExternal({ filename: 'a', length: 1 })],
    ['files:read', (one: Scene) => one.client.files.info({ file: 'F1' })],
  ])('without %s the call is refused and says so', async (scope, call) => {
    const bare = await startScene({ scopes: ['commands'] });
    const { error, data } = await refusal(call(bare));
    expect([error, data.needed, data.provided]).toEqual(['missing_scope', scope, 'commands']);
    await bare.stop();
  });
});

describe('files', () => {
  test('a picture is uploaded in three steps and read back', async () => {
    const id = await uploadPicture(scene.client);
    expect(scene.standIn.fileOf(id)?.equals(PNG)).toBe(true);
    const { file } = await scene.client.files.info({ file: id });
    expect(file).toMatchObject({ mimetype: 'image/png', title: 'Burndown', size: PNG.length });
    const headers = { authorization: `Bearer ${TOKEN}` };
    const read = await fetch(String(file?.url_private), { headers });
    expect(Buffer.from(await read.arrayBuffer()).equals(PNG)).toBe(true);
    // Seen on the platform: without a token comes a page to sign in, not an error.
    const stranger = await fetch(String(file?.url_private));
    expect(stranger.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(await stranger.text()).not.toContain('PNG');
  });

  test('a file of no bytes is refused', async () => {
    const empty = scene.client.files.getUploadURLExternal({ filename: 'a.png', length: 0 });
    expect((await refusal(empty)).error).toBe('missing_argument');
  });

  test('the description of an upload holds 1,000 characters, half of what an image block holds', async () => {
    const announce = (length: number) =>
      scene.client.apiCall('files.getUploadURLExternal', {
        filename: 'a.png',
        length: PNG.length,
        alt_txt: 'a'.repeat(length),
      });
    expect((await announce(1_000)).ok).toBe(true);
    expect((await refusal(announce(1_001))).error).toBe('alt_txt_too_large');
  });

  test("the client's own way of uploading works as well", async () => {
    const answer = await scene.client.files.uploadV2({ file: PNG, filename: 'a.png' });
    expect(answer.ok).toBe(true);
  });

  test('an upload of another length, to another address, or completed twice is refused', async () => {
    const ticket = await scene.client.files.getUploadURLExternal({ filename: 'a.png', length: PNG.length });
    const send = (url: string, bytes: Buffer) => fetch(url, { method: 'POST', body: new Uint8Array(bytes) });
    const complete = () =>
      scene.client.files.completeUploadExternal({ files: [{ id: String(ticket.file_id) }] });
    expect((await send(String(ticket.upload_url), Buffer.alloc(3))).status).toBe(400);
    expect((await send(`${ticket.upload_url}x`, PNG)).status).toBe(400);
    expect((await refusal(complete())).error).toBe('file_update_failed');
    expect((await send(String(ticket.upload_url), PNG)).status).toBe(200);
    expect((await complete()).ok).toBe(true);
    expect((await refusal(complete())).error).toBe('file_update_failed');
  });

  test('a file that is no picture can not be shown, a picture can', async () => {
    const show = (file: string) => {
      const blocks = [{ type: 'image', alt_text: 'a', slack_file: { id: file } }] as never;
      return scene.client.chat.postMessage({ channel: 'C1TEAM0000', text: 'a', blocks });
    };
    expect((await show(await uploadPicture(scene.client))).ok).toBe(true);
    const words = await uploadPicture(scene.client, Buffer.from('no picture'));
    expect((await refusal(show(words))).error).toBe('invalid_blocks');
  });

  test('a picture can be shown once the platform has worked on it', async () => {
    const clock = new TestClock(0);
    const slow = await startScene({ fileReadyAfterMs: 1000, realNowMs: clock.nowMs });
    const id = await uploadPicture(slow.client);
    const show = () => {
      const blocks = [{ type: 'image', alt_text: 'a', slack_file: { id } }] as never;
      return slow.client.chat.postMessage({ channel: 'C1TEAM0000', text: 'a', blocks });
    };
    expect((await refusal(show())).error).toBe('invalid_blocks');
    expect((await slow.client.files.info({ file: id })).file?.mimetype).toBe('');
    clock.ms = 1000;
    expect((await slow.client.files.info({ file: id })).file?.mimetype).toBe('image/png');
    expect((await show()).ok).toBe(true);
    await slow.stop();
  });
});

test('what the switched-off tabs of the app would show is refused', async () => {
  const { client, stop } = await startScene({ tabsOff: ['home', 'messages'] });
  const view = { type: 'home' as const, blocks: [] };
  expect((await refusal(client.views.publish({ user_id: 'U1ANA0000', view }))).error).toBe('not_enabled');
  const post = client.chat.postMessage({ channel: 'U1ANA0000', text: 'a' });
  expect((await refusal(post)).error).toBe('messages_tab_disabled');
  await stop();
});
