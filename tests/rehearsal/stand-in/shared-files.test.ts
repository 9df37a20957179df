import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { BOT, refusal, type Scene, startScene } from './fixture.ts';

const CSV = Buffer.from('name,first day\nHarbour 1,2026-11-02\n');
let scene: Scene;
beforeEach(async () => {
  scene = await startScene();
});
afterEach(() => scene.stop());

async function upload(filename: string, bytes = CSV): Promise<string> {
  const ticket = await scene.client.files.getUploadURLExternal({ filename, length: bytes.length });
  await fetch(String(ticket.upload_url), { method: 'POST', body: new Uint8Array(bytes) });
  return String(ticket.file_id);
}

const complete = (ids: readonly string[], more: object) =>
  scene.client.apiCall('files.completeUploadExternal', { files: ids.map((id) => ({ id })), ...more });

async function directWith(users: string): Promise<string> {
  const { channel } = await scene.client.conversations.open({ users });
  return String(channel?.id);
}

describe('files shared with a conversation', () => {
  test('several of one call are one message by the bot, seen by who is there and nobody else', async () => {
    const channel = await directWith('U1ANA0000');
    const ids = [await upload('sprints.csv'), await upload('cards.csv')];
    await complete(ids, { channel_id: channel, initial_comment: 'All that is kept.' });
    const files = [
      { id: ids[0], name: 'sprints.csv', sizeBytes: CSV.length },
      { id: ids[1], name: 'cards.csv', sizeBytes: CSV.length },
    ];
    expect(scene.standIn.messagesOf('U1ANA0000', 'dm')).toMatchObject([
      { user: BOT, byBot: true, text: 'All that is kept.', files },
    ]);
    expect(scene.standIn.messagesOf('U2BEN0000', 'dm')).toEqual([]);
    expect(scene.standIn.allPosts()).toMatchObject([
      { memberId: 'U1ANA0000', text: 'All that is kept.', files },
    ]);
  });

  test('are in the history and know where they are shared', async () => {
    const [id, cabin] = [await upload('sprints.csv'), 'C5CABIN0000'];
    await complete([id], { channel_id: cabin });
    const { messages } = await scene.client.conversations.history({ channel: cabin });
    expect(messages).toMatchObject([
      { text: '', files: [{ id, name: 'sprints.csv', mimetype: 'text/csv' }] },
    ]);
    const { file } = await scene.client.files.info({ file: id });
    expect(file).toMatchObject({ channels: [], groups: [cabin], ims: [], user: BOT });
  });

  test('stay private when no conversation is named', async () => {
    const id = await upload('sprints.csv');
    await complete([id], { initial_comment: 'Nobody sees this.' });
    expect(scene.standIn.allPosts()).toEqual([]);
    expect((await scene.client.files.info({ file: id })).file).toMatchObject({ channels: [], ims: [] });
  });

  test('can not be sent by the id of a person: their direct messages are opened first', async () => {
    const id = await upload('sprints.csv');
    const { error, messages } = await refusal(complete([id], { channel_id: 'U1ANA0000' }));
    expect(error).toBe('invalid_arguments');
    // Words of the platform: github.com/slackapi/bolt-js/issues/2115
    expect(messages.join()).toMatch(/input must match regex pattern: .* \[json-pointer:\/channel_id\]/);
    await complete([id], { channel_id: await directWith('U1ANA0000') });
    expect(scene.standIn.messagesOf('U1ANA0000', 'dm')).toHaveLength(1);
  });

  test.each([
    ['a channel without the bot, even a public one', 'C2OTHER0000', 'not_in_channel'],
    ['a private channel without the bot', 'C4SECRET0000', 'channel_not_found'],
    ['an archived channel', 'C3OLD0000', 'is_archived'],
    ['a channel that is not there', 'C404000000', 'channel_not_found'],
  ])('to %s are refused, and may be completed elsewhere after that', async (_what, channel, code) => {
    const id = await upload('sprints.csv');
    expect((await refusal(complete([id], { channel_id: channel }))).error).toBe(code);
    expect(scene.standIn.allPosts()).toEqual([]);
    expect((await complete([id], { channel_id: 'C1TEAM0000' })).ok).toBe(true);
  });

  test('are all refused when one of them was not uploaded, or is named twice', async () => {
    const id = await upload('sprints.csv');
    const { file_id: empty } = await scene.client.files.getUploadURLExternal({ filename: 'a', length: 1 });
    for (const ids of [
      [id, String(empty)],
      [id, id],
    ]) {
      const { error } = await refusal(complete(ids, { channel_id: 'C1TEAM0000' }));
      expect(error).toBe('file_update_failed');
    }
    expect(scene.standIn.allPosts()).toEqual([]);
    expect((await complete([id], { channel_id: 'C1TEAM0000' })).ok).toBe(true);
  });

  test.each([
    ['thread_ts', '1.2'],
    ['channels', 'C1TEAM0000'],
    ['blocks', '[]'],
  ])('with %s, which a rehearsal can not show, are refused', async (name, value) => {
    const call = complete([await upload('sprints.csv')], { channel_id: 'C1TEAM0000', [name]: value });
    expect((await refusal(call)).messages.join()).toContain(`[json-pointer:/${name}]`);
  });
});

describe('a member at the page', () => {
  const address = (path: string) => `${scene.standIn.url}${path}`;
  const pick = (query: string, bytes: Buffer = CSV, type = 'application/octet-stream') =>
    fetch(address(`/page/pick-file?${query}`), {
      method: 'POST',
      body: new Uint8Array(bytes),
      headers: { 'content-type': type },
    });

  test('saves a file that was shared with them; it is never shown as a page', async () => {
    const id = await upload('<b>ü".html', Buffer.from('<script>1</script>'));
    await complete([id], { channel_id: await directWith('U1ANA0000') });
    const response = await fetch(address(`/page/download/${id}?as=U1ANA0000`));
    expect(await response.text()).toBe('<script>1</script>');
    expect(Object.fromEntries(response.headers)).toMatchObject({
      'content-type': 'application/octet-stream',
      'content-disposition': 'attachment; filename="<b>__.html"; filename*=UTF-8\'\'%3Cb%3E%C3%BC%22.html',
      'x-content-type-options': 'nosniff',
      'content-security-policy': expect.stringContaining("default-src 'none'"),
    });
  });

  test('gets neither a file that was shared elsewhere, nor a private one, nor one taken back', async () => {
    const [elsewhere, hidden, shared] = [await upload('a.csv'), await upload('b.csv'), await upload('c.csv')];
    await complete([elsewhere], { channel_id: await directWith('U2BEN0000') });
    await complete([hidden], {});
    await complete([shared], { channel_id: 'C1TEAM0000' });
    const seen = () => fetch(address(`/page/download/${shared}?as=U1ANA0000`));
    expect((await seen()).status).toBe(200);
    const ts = String(scene.standIn.messagesOf('U1ANA0000', 'C1TEAM0000')[0]?.ts);
    await scene.client.chat.delete({ channel: 'C1TEAM0000', ts });
    expect((await seen()).status).toBe(404);
    for (const query of [
      `${elsewhere}?as=U1ANA0000`,
      `${hidden}?as=U1ANA0000`,
      `${elsewhere}`,
      'F404?as=U1ANA0000',
    ])
      expect((await fetch(address(`/page/download/${query}`))).status).toBe(404);
  });

  test('picks a file, which only they can read back', async () => {
    const response = await pick(`as=U1ANA0000&name=${encodeURIComponent('past.csv')}`);
    const { id, ...rest } = (await response.json()) as { id: string };
    expect(rest).toEqual({ name: 'past.csv', sizeBytes: CSV.length });
    expect((await fetch(address(`/page/download/${id}?as=U1ANA0000`))).status).toBe(200);
    expect((await fetch(address(`/page/download/${id}?as=U2BEN0000`))).status).toBe(404);
  });

  test.each([
    ['nobody here', 'as=U404&name=a.csv', 'nobody here has the id U404'],
    ['the bot', `as=${BOT}&name=a.csv`, 'nobody here has the id'],
    ['no name', 'as=U1ANA0000', 'name'],
  ])('%s picks no file', async (_what, query, words) => {
    const response = await pick(query);
    expect(response.status).toBe(400);
    expect(((await response.json()) as { error: string }).error).toContain(words);
  });

  test('picks no file of more than 10 MB, and none through a form of another site', async () => {
    expect((await pick('as=U1ANA0000&name=a.csv', Buffer.alloc(10_000_001))).status).toBe(413);
    expect((await pick('as=U1ANA0000&name=a.csv', CSV, 'text/plain')).status).toBe(403);
    expect((await pick('as=U1ANA0000&name=a.csv', CSV, 'multipart/form-data')).status).toBe(403);
  });
});
