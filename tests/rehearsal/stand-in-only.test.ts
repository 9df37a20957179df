/** The stand-in without the bot, as a stranger meets it: the printed line, then plain HTTP calls. */
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openStandIn, type StandInFacts } from '../../src/rehearsal/open-stand-in.ts';
import type { StandIn } from '../../src/rehearsal/stand-in/stand-in.ts';

let standIn: StandIn;
let facts: StandInFacts;
beforeAll(async () => {
  ({ standIn, facts } = await openStandIn());
});
afterAll(() => standIn.stop());

async function call(method: string, body: object): Promise<Record<string, unknown>> {
  const headers = { 'content-type': 'application/json', authorization: `Bearer ${facts.botToken}` };
  const answer = await fetch(`${facts.apiUrl}${method}`, {
    method: 'POST',
    headers,
    body: JSON.stringify(body),
  });
  return (await answer.json()) as Record<string, unknown>;
}

test('the command prints one line of JSON and stays up until it is stopped', async () => {
  const main = new URL('../../src/main.js', import.meta.url).pathname;
  const child = spawn(process.execPath, [main, 'rehearse', '--stand-in-only'], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const lines: string[] = [];
  const exited = new Promise((resolve) => child.once('exit', resolve));
  for await (const line of createInterface({ input: child.stdout })) {
    lines.push(line);
    const { apiUrl, botToken } = JSON.parse(line) as StandInFacts;
    const answer = await fetch(`${apiUrl}auth.test?token=${botToken}`);
    expect(await answer.json()).toMatchObject({ ok: true, user: 'loadline' });
    child.kill();
  }
  await exited;
  expect(lines).toHaveLength(1);
  expect(Object.keys(JSON.parse(lines[0] as string))).toEqual(Object.keys(facts));
});

test('ids have the shape of the platform’s', async () => {
  for (const id of [facts.channelId, facts.privateChannelId]) expect(id).toMatch(/^[CG][A-Z0-9]{8,}$/);
  for (const id of [facts.memberId, facts.deactivatedId]) expect(id).toMatch(/^[UW][A-Z0-9]{8,}$/);
  const { channel } = await call('chat.postMessage', { channel: facts.memberId, text: 'hello' });
  expect(channel).toMatch(/^D[A-Z0-9]{8,}$/);
});

test('the bot posts in the channel, and knows nothing of the private one', async () => {
  expect(await call('chat.postMessage', { channel: facts.channelId, text: 'hello' })).toMatchObject({
    ok: true,
    channel: facts.channelId,
  });
  for (const method of ['chat.postMessage', 'conversations.info', 'conversations.history']) {
    const answer = await call(method, { channel: facts.privateChannelId, text: 'hello' });
    expect(answer).toMatchObject({ ok: false, error: 'channel_not_found' });
  }
});

test('one person has been deactivated', async () => {
  expect(await call('users.info', { user: facts.deactivatedId })).toMatchObject({ user: { deleted: true } });
  expect(await call('users.info', { user: facts.memberId })).toMatchObject({ user: { deleted: false } });
});

test('arguments may stand in the address, and slashes may be doubled', async () => {
  const headers = { authorization: `Bearer ${facts.botToken}` };
  const answer = await fetch(`${facts.apiUrl}/conversations.info?channel=${facts.channelId}`, { headers });
  expect(await answer.json()).toMatchObject({ ok: true, channel: { id: facts.channelId } });
});
