/** What is stored about me, a copy and an erasure, in the stand-in workspace with everything real but the platform. */
import { afterAll, beforeAll, expect, it } from 'vitest';
import { FACILITATOR_ID, TEAM_CHANNEL_ID } from '../../src/rehearsal/cast.ts';
import type { Rehearsal } from '../../src/rehearsal/rehearsal.ts';
import { playedSample } from './played-rehearsal.ts';

let rehearsal: Rehearsal;
let petra: string;

beforeAll(async () => {
  rehearsal = await playedSample('kept');
  petra = rehearsal.cast.userIdOf('petra');
}, 120_000);

afterAll(() => rehearsal?.stop());

/** What the bot said last to somebody, in the channel or directly. */
function lastTo(userId: string, place: string = TEAM_CHANNEL_ID): string {
  const messages = rehearsal.standIn.messagesOf(userId, place).filter(({ byBot }) => byBot);
  return messages.at(-1)?.text ?? '';
}

/** The latest file in somebody's direct messages. */
function fileTo(userId: string): string {
  const message = rehearsal.standIn.messagesOf(userId, 'dm').findLast(({ files }) => files.length > 0);
  return rehearsal.standIn.fileOf(message?.files[0]?.id ?? '')?.toString('utf8') ?? '';
}

it('shows a member what is stored about them, so that only they see it', async () => {
  await rehearsal.conversation.command(petra, 'privacy');
  expect(lastTo(petra)).toMatch(/^What is stored about you\n.*answers about cards, with their notes/s);
  expect(lastTo(petra)).toContain('13 months after its end');
  expect(lastTo(rehearsal.cast.userIdOf('odd'))).not.toContain('What is stored about you');
});

it('sends them a copy in their direct messages, with their words and nobody else’s id', async () => {
  await rehearsal.conversation.say(petra, 'privacy');
  expect(await rehearsal.conversation.press(petra, 'send-my-copy')).toBe(true);
  const copy = fileTo(petra);
  expect(JSON.parse(copy)).toMatchObject({ userId: petra, memberships: [{ name: 'petra' }] });
  expect(copy).toContain('Multihulls pay by width as well');
  const others = rehearsal.cast.users.map(({ id }) => id).filter((id) => id !== petra);
  for (const id of others) expect(copy).not.toContain(id);
});

it('dates what the bot wrote to them by the rehearsal’s calendar, also what is about no day', async () => {
  const { messagesToYou } = JSON.parse(fileTo(petra)) as {
    messagesToYou: { kind: string; on: string; recordedAt: string }[];
  };
  expect(messagesToYou.map(({ kind }) => kind)).toContain('role-given');
  for (const { on, recordedAt } of messagesToYou) {
    for (const day of [on, recordedAt].map((at) => at.slice(0, 10)))
      expect(day).toMatch(/^2026-11-(0[2-9]|1[0-3])$/);
  }
});

it('erases them when they confirm, and knows them no more', async () => {
  const { conversation, deps, workspaceId } = rehearsal;
  const form = await conversation.formAfter(petra, async () => {
    await conversation.press(petra, 'open-erase-form');
  });
  expect(JSON.stringify(form)).toContain('This can’t be undone');
  await conversation.submit(petra, {});
  expect(lastTo(petra, 'dm')).toMatch(/^You are erased: \d+ records no longer refer to you\./);
  await conversation.command(petra, 'privacy');
  expect(lastTo(petra)).toContain('Nothing is stored under your id');
  await conversation.command(petra, 'history');
  expect(lastTo(petra)).toContain('Only members of Quayside');
  const teams = await deps.store.read((read) => read.teamsOfPerson({ workspaceId, userId: petra }));
  expect(teams).toEqual([]);
});

it('erases the last facilitator too, and tells those who stay that each of them may facilitate', async () => {
  const { conversation, cast } = rehearsal;
  await conversation.say(FACILITATOR_ID, 'privacy');
  expect(lastTo(FACILITATOR_ID, 'dm')).toContain('Erase me');
  await conversation.formAfter(FACILITATOR_ID, async () => {
    await conversation.press(FACILITATOR_ID, 'open-erase-form');
  });
  await conversation.submit(FACILITATOR_ID, {});
  expect(lastTo(FACILITATOR_ID, 'dm')).toMatch(/^You are erased/);
  await rehearsal.settle();
  const told = rehearsal.standIn.messagesOf(cast.userIdOf('odd'), 'dm').map(({ text }) => text);
  expect(told).toContainEqual(expect.stringContaining('Quayside has no facilitator any more'));
});
