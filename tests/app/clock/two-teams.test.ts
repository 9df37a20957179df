import { describe, expect, test } from 'vitest';
import { answerInWords } from '../../../src/app/answering/answer-in-words.ts';
import type { PromptContent } from '../../../src/app/answering/prompt-content.ts';
import { recordUnchanged } from '../../../src/app/answering/record-answers.ts';
import { listCards } from '../../../src/app/cards/change-cards.ts';
import { closeSprint } from '../../../src/app/closing/end-sprint.ts';
import { leaveTeam } from '../../../src/app/team/leave-team.ts';
import { chooseOwnPrompt } from '../../../src/app/team/own-prompt.ts';
import type { Team } from '../../../src/app/team/team.ts';
import { sprintStatus } from '../../../src/app/watching/sprint-status.ts';
import { postMessage } from '../../../src/slack/views/post-message.ts';
import { actorOf, harnessForEach, refusalOf } from '../../support/app-harness.ts';

// Friday noon before the sprints of Monday 2 to Friday 13 November 2026; Lisbon is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ben = actorOf('ben');
const DIRECT = { channelId: 'D-ben', isDirect: true };
const DAY = '2026-11-03';

/** Ben has a card on each of two teams that are asked at the same time. */
async function onTwoTeams(ofSecond: { promptAt?: string } = {}) {
  const h = harness();
  const first = await h.setUpTeam({ name: 'Tugboats' });
  const second = await h.setUpTeam({ name: 'Pilots', channelId: 'C2', ...ofSecond });
  const tugs = (await h.plan(first, { name: 'Tugs 1', cards: 'Tide table, 5, @Ben' })).sprint;
  const pilots = (await h.plan(second, { name: 'Pilots 1', cards: 'Pilot roster, 3, @Ben' })).sprint;
  await h.drain();
  return { h, tugs, pilots };
}

const days = (h: ReturnType<typeof harness>): (readonly PromptContent[])[] =>
  h
    .messagesTo('ben')
    .flatMap((sent) => ('prompt' in sent ? [[sent.prompt, ...(sent.prompt.others ?? [])]] : []));

/** What is left on Ben's cards of both sprints, as said. */
async function leftOn(h: ReturnType<typeof harness>, ...sprints: { id: string }[]) {
  const said: (number | undefined)[] = [];
  for (const { id } of sprints) {
    const { facts } = await h.read((read) => read.recordsOf(id));
    const last = facts.findLast(({ kind }) => kind === 'answer');
    said.push(last?.kind === 'answer' ? last.leftPoints : undefined);
  }
  return said;
}

describe('somebody on two teams that ask at the same time', () => {
  test('gets one message, each team’s cards under its name and counted on', async () => {
    const { h } = await onTwoTeams();
    await h.pass(`${DAY}T09:15:00Z`);
    expect(h.kindsTo('ben')).toEqual(['daily-prompt']);
    const [parts = []] = days(h);
    expect(parts.map(({ team }) => team.name).sort()).toEqual(['Pilots', 'Tugboats']);
    const [content] = h.messagesTo('ben');
    const { text } = postMessage(content as NonNullable<typeof content>);
    for (const name of ['Pilots', 'Tugboats']) expect(text).toMatch(new RegExp(`^${name}$`, 'm'));
    expect(text).toMatch(/^1\. .* left$[\s\S]*^2\. .* left$/m);
    // How to answer in words is said once, and when each sprint closes.
    expect(text.match(/Or write here/g)).toHaveLength(1);
    expect(text.match(/The sprint closes on/g)).toHaveLength(2);
  });

  test('gets two where the times differ, and one where they chose a time of their own', async () => {
    const { h } = await onTwoTeams({ promptAt: '10:00' });
    await h.pass(`${DAY}T09:15:00Z`);
    await h.pass(`${DAY}T10:00:00Z`);
    expect(days(h).map((parts) => parts.length)).toEqual([1, 1]);
    await chooseOwnPrompt(h.deps, ben, { at: '08:00', timeZone: '' });
    await h.pass('2026-11-04T08:00:00Z');
    expect(days(h).map((parts) => parts.length)).toEqual([1, 1, 2]);
  });

  test('sees an answer to either in the message, and is reminded of the other alone', async () => {
    const { h, tugs, pilots } = await onTwoTeams();
    await h.pass(`${DAY}T09:15:00Z`);
    await recordUnchanged(h.deps, ben, { sprintId: tugs.id, day: DAY });
    await h.pass(`${DAY}T12:15:00Z`);
    const [prompt = [], reminder = []] = days(h);
    expect(new Map(prompt.map(({ sprint, state }) => [sprint.id, state]))).toEqual(
      new Map([
        [tugs.id, 'unchanged'],
        [pilots.id, 'asked'],
      ]),
    );
    expect(reminder.map(({ sprint }) => sprint.id)).toEqual([pilots.id]);
  });

  test('gets one reminder and one last call about both', async () => {
    const { h } = await onTwoTeams();
    for (const time of ['09:15', '12:15', '16:00']) await h.pass(`2026-11-13T${time}:00Z`);
    expect(h.kindsTo('ben')).toEqual(['daily-prompt', 'reminder', 'last-call']);
    expect(days(h).map((parts) => parts.length)).toEqual([2, 2, 2]);
    for (const content of h.messagesTo('ben'))
      expect(postMessage(content).text.match(/Or write here/g)).toHaveLength(1);
  });

  test('answers both in words, by the places in the message or with one word', async () => {
    const { h, tugs, pilots } = await onTwoTeams();
    await h.pass(`${DAY}T09:15:00Z`);
    const [parts = []] = days(h);
    const inOrder = parts.map(({ sprint }) => sprint);
    const both = await answerInWords(h.deps, ben, { text: '2, 1', place: DIRECT });
    expect([both.kind, both.others?.map(({ kind }) => kind)]).toEqual(['recorded', ['recorded']]);
    expect(await leftOn(h, ...inOrder)).toEqual([2, 1]);
    await answerInWords(h.deps, ben, { text: '2: 0', place: DIRECT });
    expect(await leftOn(h, ...inOrder)).toEqual([2, 0]);
    h.set('2026-11-04T09:15:00Z');
    await h.pass('2026-11-04T09:15:00Z');
    await answerInWords(h.deps, ben, { text: 'away', place: DIRECT });
    for (const { id } of [tugs, pilots]) {
      const prompt = await h.read((read) => read.promptOf(id, ben.userId, '2026-11-04'));
      if (prompt) expect(prompt.state).toBe('away');
    }
  });

  test('answers on a weekend as on the last day asked: both, or the only sprint that runs', async () => {
    const { h, tugs, pilots } = await onTwoTeams();
    const team = (await h.read((read) => read.teamById(pilots.teamId))) as Team;
    await h.pass('2026-11-06T09:15:00Z');
    const [inOrder = []] = days(h);
    await refusalOf(sprintStatus(h.deps, ben, DIRECT), 'several-teams');
    h.set('2026-11-07T11:00:00Z');
    await answerInWords(h.deps, ben, { text: '2, 1', place: DIRECT });
    expect(await leftOn(h, ...inOrder.map(({ sprint }) => sprint))).toEqual([2, 1]);
    await closeSprint(h.deps, actorOf('ana'), { sprintId: tugs.id });
    // So do commands about a sprint mean the only one that runs.
    expect((await listCards(h.deps, ben, DIRECT)).heading.sprint.id).toBe(pilots.id);
    expect((await sprintStatus(h.deps, ben, DIRECT)).sprint.id).toBe(pilots.id);
    const alone = await answerInWords(h.deps, ben, { text: '2', place: DIRECT });
    expect(alone).toMatchObject({ prompt: { sprint: { id: pilots.id }, day: '2026-11-07' } });
    // One that is only planned isn't meant.
    await h.plan(team, {
      name: 'Pilots 2',
      startsOn: '2026-11-16',
      endsOn: '2026-11-20',
      cards: 'Fog, 1, @Ben',
    });
    await closeSprint(h.deps, actorOf('ana'), { sprintId: pilots.id });
    await refusalOf(answerInWords(h.deps, ben, { text: '2', place: DIRECT }), 'several-teams');
  });

  test('is asked which is meant where two messages asked', async () => {
    const { h } = await onTwoTeams({ promptAt: '10:00' });
    await h.pass(`${DAY}T09:15:00Z`);
    await h.pass(`${DAY}T10:00:00Z`);
    for (const now of [`${DAY}T11:00:00Z`, '2026-11-04T07:00:00Z']) {
      h.set(now);
      await refusalOf(answerInWords(h.deps, ben, { text: '2', place: DIRECT }), 'several-teams');
    }
  });

  test('need not say which where they name a card of one', async () => {
    const { h, tugs, pilots } = await onTwoTeams({ promptAt: '10:00' });
    await h.pass(`${DAY}T09:15:00Z`);
    await h.pass(`${DAY}T10:00:00Z`);
    await answerInWords(h.deps, ben, { text: 'roster: 1', place: DIRECT });
    expect(await leftOn(h, tugs, pilots)).toEqual([undefined, 1]);
    await answerInWords(h.deps, ben, { text: '3 left on tide', place: DIRECT });
    expect(await leftOn(h, tugs, pilots)).toEqual([3, 1]);
    const both = answerInWords(h.deps, ben, { text: 'roster 0, tide 1', place: DIRECT });
    await refusalOf(both, 'several-teams');
  });

  test('keeps the message when the details of one sprint are deleted, as long as the other’s are kept', async () => {
    const { h, tugs, pilots } = await onTwoTeams();
    await h.pass(`${DAY}T09:15:00Z`);
    await h.pass('2026-11-13T17:00:00Z');
    const reduce = (sprintId: string) =>
      h.write((tx) => tx.write.retention.reduceSprint(sprintId, new Date('2027-11-13T17:00:00Z')));
    const promptOf = (sprintId: string) => h.read((read) => read.promptOf(sprintId, ben.userId, DAY));
    const postId = (await promptOf(pilots.id))?.postId ?? '';
    await reduce(tugs.id);
    expect(await promptOf(tugs.id)).toBeUndefined();
    expect((await h.read((read) => read.promptsOfPost(postId))).map(({ sprintId }) => sprintId)).toEqual([
      pilots.id,
    ]);
    await reduce(pilots.id);
    expect(await h.read((read) => read.postById(postId))).toBeUndefined();
  });

  test.each(['Tugboats', 'Pilots'])(
    'is still asked for the other team in a message that waits while they leave %s',
    async (name) => {
      const { h, tugs, pilots } = await onTwoTeams();
      h.set(`${DAY}T09:15:00Z`);
      await h.tick();
      const [left, kept] = name === 'Tugboats' ? [tugs, pilots] : [pilots, tugs];
      await leaveTeam(h.deps, ben, { teamId: left.teamId });
      await h.drain();
      const [parts = [], ...others] = days(h);
      expect([parts.map(({ sprint }) => sprint.id), others]).toEqual([[kept.id], []]);
    },
  );

  test('is asked nothing in a message that waits while they leave both', async () => {
    const { h, tugs, pilots } = await onTwoTeams();
    h.set(`${DAY}T09:15:00Z`);
    await h.tick();
    for (const { teamId } of [tugs, pilots]) await leaveTeam(h.deps, ben, { teamId });
    await h.drain();
    expect(days(h)).toEqual([]);
  });

  test('loses nothing of an answer of which one part can’t be', async () => {
    const { h, tugs, pilots } = await onTwoTeams();
    await h.pass(`${DAY}T09:15:00Z`);
    const impossible = answerInWords(h.deps, ben, { text: '1: 2, 2: 0 surprise 50', place: DIRECT });
    await refusalOf(impossible, 'bad-input');
    expect(await leftOn(h, tugs, pilots)).toEqual([undefined, undefined]);
  });
});
