/**
 * Somebody who is erased has the bot's messages to them deleted, in the stand-in workspace with everything real but the
 * platform. What it says where a message can't be deleted is from its documented table of codes
 * (docs.slack.dev/reference/methods/chat.delete): `cant_delete_message`, `message_not_found`; and a deleted message with
 * replies leaves a placeholder.
 */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { TEAM_CHANNEL_ID } from '../../src/rehearsal/cast.ts';
import type { Rehearsal } from '../../src/rehearsal/rehearsal.ts';
import type { SeenMessage } from '../../src/rehearsal/stand-in/page-state.ts';
import { playedSample } from './played-rehearsal.ts';

let rehearsal: Rehearsal;
let petra: string;
/** What the platform answers to the deletion of one message, by its ts, in place of carrying it out. */
const refused = new Map<string, string>();
let isCut = false;

beforeAll(async () => {
  rehearsal = await playedSample('kept', {
    faultFor: (method, sent) => {
      if (method !== 'chat.delete') return undefined;
      if (isCut) {
        isCut = false;
        return { dropConnection: 'before' };
      }
      const error = refused.get(new URLSearchParams(sent).get('ts') ?? '');
      return error === undefined ? undefined : { body: { ok: false, error } };
    },
  });
  petra = rehearsal.cast.userIdOf('petra');
}, 120_000);

afterAll(() => rehearsal?.stop());

const said = (userId: string, place = 'dm'): SeenMessage[] => rehearsal.standIn.messagesOf(userId, place);
const byBot = (messages: readonly SeenMessage[]) => messages.filter((message) => message.byBot);
const texts = (messages: readonly SeenMessage[]) => messages.map(({ text }) => text);

async function aMinuteLater(): Promise<void> {
  await rehearsal.moveTo(new Date(rehearsal.deps.clock.now().getTime() + 60_000));
  await rehearsal.settle();
}

it('deletes what it may, says how many stay, and touches nothing else', async () => {
  const { conversation, standIn, cast } = rehearsal;
  await conversation.say(petra, 'privacy');
  await aMinuteLater();
  const [first, second, third] = byBot(said(petra)) as [SeenMessage, SeenMessage, SeenMessage];
  // Under the first one there is a talk; the workspace keeps the second, the third is said to be gone. One call is cut off.
  await standIn.say(petra, 'dm', 'Thanks, that was a long day', first.ts);
  refused.set(second.ts, 'cant_delete_message');
  refused.set(third.ts, 'message_not_found');
  isCut = true;
  const before = byBot(said(petra)).filter(({ threadTs }) => threadTs === undefined);
  const replies = said(petra).filter(({ threadTs }) => threadTs !== undefined);
  expect(replies.length).toBeGreaterThanOrEqual(1);
  const own = texts(said(petra).filter((message) => !message.byBot));
  const others = ['odd', 'petra'].map((key) => texts(said(cast.userIdOf(key), TEAM_CHANNEL_ID)));
  const toOdd = texts(said(cast.userIdOf('odd')));

  await conversation.formAfter(petra, async () => {
    await conversation.press(petra, 'open-erase-form');
  });
  await conversation.submit(petra, { messages: ['remove'] });
  expect(said(petra).at(-1)?.text).toContain('I am deleting my messages to you here');
  for (let minute = 0; minute < 5; minute += 1) {
    await aMinuteLater();
  }

  const after = said(petra);
  expect(texts(byBot(after)).at(-1)).toBe(
    `Done: ${before.length - 2} of my messages to you are deleted.\n1 more stays: your workspace doesn’t let me delete it. Somebody who administers the workspace can.`,
  );
  // Still there: what could not be deleted, what stands in threads, and the two that tell what was done.
  const left = byBot(after).filter(({ ts }) => before.some((one) => one.ts === ts));
  expect(left.map(({ ts }) => ts)).toEqual([second.ts, third.ts]);
  expect(after.find(({ ts }) => ts === first.ts)).toMatchObject({
    byBot: false,
    text: 'This message was deleted.',
  });
  for (const reply of replies) expect(texts(after)).toContain(reply.text);
  for (const text of own) expect(texts(after)).toContain(text);
  expect(['odd', 'petra'].map((key) => texts(said(cast.userIdOf(key), TEAM_CHANNEL_ID)))).toEqual(others);
  expect(texts(said(cast.userIdOf('odd')))).toEqual(toOdd);
});
