import { sql } from 'drizzle-orm';
import { describe, expect, test } from 'vitest';
import type { PromptContent } from '../../../src/app/answering/prompt-content.ts';
import { recordAway, recordUnchanged } from '../../../src/app/answering/record-answers.ts';
import { takeCards } from '../../../src/app/cards/change-owners.ts';
import { runDueWork } from '../../../src/app/clock/ask-members.ts';
import { setMeasures } from '../../../src/app/team/set-measures.ts';
import { actorOf, CHANNEL, harnessForEach, PEOPLE } from '../../support/app-harness.ts';
import { typedMeasures } from '../../support/typed-measures.ts';

// Friday noon before the sprint of Monday 2 to Friday 13 November 2026; Lisbon is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');

/** A planned sprint whose first prompt has not come yet. */
async function plannedSprint() {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team);
  await h.drain();
  return { h, team, sprint };
}

function promptsTo(h: ReturnType<typeof harness>, who: 'ana' | 'ben' | 'chi'): PromptContent[] {
  return h.messagesTo(who).flatMap((content) => (content.kind === 'daily-prompt' ? [content.prompt] : []));
}

describe('the daily prompt', () => {
  test('goes to each member with open cards at the team’s time, and lists those cards', async () => {
    const { h } = await plannedSprint();
    await h.pass('2026-11-02T09:14:59Z');
    expect([h.kindsTo('ben'), h.kindsTo('chi')]).toEqual([[], []]);
    await h.pass('2026-11-02T09:15:00Z');
    expect(
      promptsTo(h, 'ben').map(({ day, state, cards }) => [day, state, cards.map(({ number }) => number)]),
    ).toEqual([['2026-11-02', 'listed', [1, 3]]]);
    expect(promptsTo(h, 'chi')[0]?.cards.map(({ title }) => title)).toEqual(['Crane log', 'Pilot roster']);
    expect(h.kindsTo('ana')).toEqual([]);
  });

  test('only lists the cards on the first morning, and asks from the next day on', async () => {
    const { h } = await plannedSprint();
    await h.pass('2026-11-02T09:15:00Z');
    await h.pass('2026-11-02T16:00:00Z');
    await h.pass('2026-11-03T09:15:00Z');
    expect(promptsTo(h, 'ben').map(({ state }) => state)).toEqual(['listed', 'asked']);
    expect(h.kindsTo('ben')).toEqual(['daily-prompt', 'daily-prompt']);
  });

  test('asks on the first day already when its time is noon or later', async () => {
    const h = harness();
    const team = await h.setUpTeam({ promptAt: '12:00' });
    await h.plan(team);
    await h.pass('2026-11-02T12:00:00Z');
    expect(promptsTo(h, 'ben').map(({ state }) => state)).toEqual(['asked']);
  });

  test('does not go to somebody who is no member any more, even while a card is still theirs', async () => {
    const { h } = await plannedSprint();
    await h.database.session.execute(
      sql`update loadline.members set is_active = false where user_id = ${PEOPLE.ben}`,
    );
    await h.pass('2026-11-02T09:15:00Z');
    expect([h.kindsTo('ben'), h.kindsTo('chi')]).toEqual([[], ['daily-prompt']]);
  });

  test('comes once a member and day, however often the clock ticks', async () => {
    const { h, sprint } = await plannedSprint();
    await h.pass('2026-11-02T09:15:00Z');
    await h.pass('2026-11-02T09:15:00Z');
    await h.pass('2026-11-02T09:16:00Z');
    // As if the clock had stopped after the prompts and before it noted the next time.
    await h.write((tx) =>
      tx.write.sprints.update({ ...sprint, nextPromptAt: new Date('2026-11-02T09:15:00Z') }),
    );
    await h.pass('2026-11-02T09:20:00Z');
    expect([h.kindsTo('ben'), h.kindsTo('chi')]).toEqual([['daily-prompt'], ['daily-prompt']]);
  });

  test('comes once when two clocks tick at the same time', async () => {
    const { h } = await plannedSprint();
    h.set('2026-11-02T09:15:00Z');
    await Promise.all([runDueWork(h.deps), runDueWork(h.deps), runDueWork(h.deps)]);
    await h.drain();
    expect([h.kindsTo('ben'), h.kindsTo('chi')]).toEqual([['daily-prompt'], ['daily-prompt']]);
  });

  test('is caught up with when the clock stood still for an hour', async () => {
    const { h } = await plannedSprint();
    await h.pass('2026-11-02T10:20:00Z');
    expect(promptsTo(h, 'ben').map(({ day }) => day)).toEqual(['2026-11-02']);
  });

  test('of a day that was missed is never sent; the next day is asked about at its time', async () => {
    const { h } = await plannedSprint();
    await h.pass('2026-11-03T08:00:00Z');
    expect(h.kindsTo('ben')).toEqual([]);
    await h.pass('2026-11-03T09:15:00Z');
    expect(promptsTo(h, 'ben').map(({ day }) => day)).toEqual(['2026-11-03']);
  });

  test('is only today’s when the clock stood still for days', async () => {
    const { h } = await plannedSprint();
    await h.pass('2026-11-05T11:00:00Z');
    expect(promptsTo(h, 'ben').map(({ day }) => day)).toEqual(['2026-11-05']);
    await h.pass('2026-11-06T09:15:00Z');
    expect(promptsTo(h, 'ben').map(({ day }) => day)).toEqual(['2026-11-05', '2026-11-06']);
  });

  test('that was recorded but held up until the next day is not delivered', async () => {
    const { h } = await plannedSprint();
    h.set('2026-11-02T09:15:00Z');
    await h.tick();
    h.set('2026-11-03T00:00:00Z');
    await h.drain();
    expect(h.kindsTo('ben')).toEqual([]);
    expect(await h.owedPostIds()).toEqual([]);
  });

  test('leaves days off alone', async () => {
    const { h } = await plannedSprint();
    await h.pass('2026-11-06T09:15:00Z');
    await h.pass('2026-11-07T12:00:00Z');
    await h.pass('2026-11-08T12:00:00Z');
    expect(promptsTo(h, 'ben').map(({ day }) => day)).toEqual(['2026-11-06']);
    await h.pass('2026-11-09T09:15:00Z');
    expect(promptsTo(h, 'ben').map(({ day }) => day)).toEqual(['2026-11-06', '2026-11-09']);
  });

  test('of a Friday that was missed is not sent on the Saturday either', async () => {
    const { h } = await plannedSprint();
    await h.pass('2026-11-05T09:15:00Z');
    await h.pass('2026-11-07T12:00:00Z');
    expect(promptsTo(h, 'ben').map(({ day }) => day)).toEqual(['2026-11-05']);
  });

  test('comes at once in a sprint that is planned in the middle of its first day', async () => {
    const h = harness();
    h.set('2026-11-02T11:00:00Z');
    const team = await h.setUpTeam();
    await h.plan(team);
    await h.pass('2026-11-02T11:01:00Z');
    expect(promptsTo(h, 'ben').map(({ day }) => day)).toEqual(['2026-11-02']);
  });

  test('passes over who has spoken before being asked, whose cards are done, and who has left the team', async () => {
    const { h, sprint } = await plannedSprint();
    h.set('2026-11-02T08:00:00Z');
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '4' }, 3: { left: '0', worked: '2' } });
    await h.answer('chi', sprint.id, '2026-11-02', { 2: { left: '0' } });
    await h.pass('2026-11-02T09:15:00Z');
    expect([h.kindsTo('ben'), h.kindsTo('chi')]).toEqual([[], []]);
    // The day after: card 3 is finished, so Chi has nothing open; Ben is not on the team any more.
    await h.setUpTeam({ memberIds: [PEOPLE.ana, PEOPLE.chi] });
    await h.pass('2026-11-03T09:15:00Z');
    expect([h.kindsTo('ben'), h.kindsTo('chi')]).toEqual([[], []]);
  });

  test('asks nobody about a card without an owner until somebody takes it', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await h.plan(team, { cards: 'Tide table, 5' });
    await h.pass('2026-11-02T09:15:00Z');
    expect(h.messenger.messages.map(({ content }) => content.kind)).toEqual(['plan']);
    await takeCards(h.deps, actorOf('chi'), { place: CHANNEL, words: '1' });
    await h.pass('2026-11-03T09:15:00Z');
    expect(h.kindsTo('chi')).toEqual(['daily-prompt']);
  });

  test('follows the team’s clock through the end of summer time', async () => {
    const h = harness();
    h.set('2026-10-23T12:00:00Z');
    const team = await h.setUpTeam();
    await h.plan(team, { startsOn: '2026-10-23', endsOn: '2026-10-30' });
    // IANA tz 2025c: Lisbon goes from +1 to 0 on 2026-10-25.
    await h.pass('2026-10-26T08:15:00Z');
    expect(promptsTo(h, 'ben').map(({ day }) => day)).toEqual([]);
    await h.pass('2026-10-26T09:15:00Z');
    expect(promptsTo(h, 'ben').map(({ day }) => day)).toEqual(['2026-10-26']);
  });
});

describe('the reminder', () => {
  test('goes once, after the team’s minutes, to who has not met the day', async () => {
    const { h, sprint } = await plannedSprint();
    await h.pass('2026-11-03T09:15:00Z');
    await h.answer('chi', sprint.id, '2026-11-03', { 2: { left: '2' }, 3: { left: '2' } });
    await h.pass('2026-11-03T12:14:00Z');
    expect(h.kindsTo('ben')).toEqual(['daily-prompt']);
    h.set('2026-11-03T12:15:00Z');
    await h.tick();
    // One for Ben; none is so much as recorded for Chi.
    expect(await h.owedKinds()).toEqual(['reminder']);
    await h.pass('2026-11-03T16:00:00Z');
    expect([h.kindsTo('ben'), h.kindsTo('chi')]).toEqual([['daily-prompt', 'reminder'], ['daily-prompt']]);
  });

  test.each([
    ['away', recordAway],
    ['unchanged', recordUnchanged],
  ])('spares who said %s', async (_, record) => {
    const { h, sprint } = await plannedSprint();
    await h.pass('2026-11-03T09:15:00Z');
    await record(h.deps, actorOf('ben'), { sprintId: sprint.id, day: '2026-11-03' });
    await h.pass('2026-11-03T12:15:00Z');
    expect(h.kindsTo('ben')).toEqual(['daily-prompt']);
  });

  test('spares a member whose open cards have all been answered for by a co-owner on that day', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const { sprint } = await h.plan(team, { cards: 'Tide table, 5, @Ben @Chi\nCrane log, 3, @Chi' });
    await h.pass('2026-11-03T09:15:00Z');
    await h.answer('chi', sprint.id, '2026-11-03', { 1: { left: '4' } });
    await h.pass('2026-11-03T12:15:00Z');
    expect(h.kindsTo('ben')).not.toContain('reminder');
    // What was said on the day before is no answer for this one.
    await h.pass('2026-11-04T09:15:00Z');
    await h.answer('chi', sprint.id, '2026-11-04', { 2: { left: '2' } });
    await h.pass('2026-11-04T12:15:00Z');
    expect(h.kindsTo('ben')).toContain('reminder');
  });

  test('is skipped when the answer came before it was delivered', async () => {
    const { h, sprint } = await plannedSprint();
    await h.pass('2026-11-03T09:15:00Z');
    h.set('2026-11-03T12:15:00Z');
    await h.tick();
    await recordUnchanged(h.deps, actorOf('ben'), { sprintId: sprint.id, day: '2026-11-03' });
    await h.drain();
    expect([h.kindsTo('ben'), h.kindsTo('chi')]).toEqual([['daily-prompt'], ['daily-prompt', 'reminder']]);
  });

  test('spares whose last card a co-owner has finished meanwhile', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const { sprint } = await h.plan(team, { cards: 'Pilot roster, 2, @Ben @Chi' });
    await h.pass('2026-11-03T09:15:00Z');
    await h.answer('ben', sprint.id, '2026-11-03', { 1: { left: '0' } });
    await h.pass('2026-11-03T12:15:00Z');
    expect(h.kindsTo('chi')).toEqual(['daily-prompt']);
  });

  test('counts from the prompt when that came late, and does not come with it', async () => {
    const { h } = await plannedSprint();
    await h.pass('2026-11-03T13:00:00Z');
    expect(h.kindsTo('ben')).toEqual(['daily-prompt']);
    await h.pass('2026-11-03T15:59:00Z');
    expect(h.kindsTo('ben')).toEqual(['daily-prompt']);
    await h.pass('2026-11-03T16:00:00Z');
    expect(h.kindsTo('ben')).toEqual(['daily-prompt', 'reminder']);
  });

  test('of a day that has passed is not sent', async () => {
    const { h } = await plannedSprint();
    await h.pass('2026-11-03T09:15:00Z');
    await h.pass('2026-11-04T08:00:00Z');
    expect(h.kindsTo('ben')).toEqual(['daily-prompt']);
  });

  test('does not come a second time when the prompt time is moved to later on the same day', async () => {
    const { h } = await plannedSprint();
    await h.pass('2026-11-03T09:15:00Z');
    await h.pass('2026-11-03T12:15:00Z');
    const before = h.kindsTo('ben');
    await h.setUpTeam({ promptAt: '14:00' });
    await h.pass('2026-11-03T14:00:00Z');
    await h.pass('2026-11-03T17:30:00Z');
    expect([before, h.kindsTo('ben')]).toEqual([['daily-prompt', 'reminder'], []]);
    await h.pass('2026-11-04T14:00:00Z');
    expect(h.kindsTo('ben')).toEqual(['daily-prompt']);
  });
});

describe('the last call', () => {
  test('goes an hour before closing on the last day to everybody with open cards, once', async () => {
    const { h, sprint } = await plannedSprint();
    await h.pass('2026-11-13T09:15:00Z');
    await h.answer('chi', sprint.id, '2026-11-13', { 2: { left: '2' } });
    await h.pass('2026-11-13T12:15:00Z');
    await h.pass('2026-11-13T15:59:00Z');
    expect(h.kindsTo('ben')).toEqual(['daily-prompt', 'reminder']);
    await h.pass('2026-11-13T16:00:00Z');
    await h.pass('2026-11-13T16:30:00Z');
    expect(h.kindsTo('ben')).toEqual(['daily-prompt', 'reminder', 'last-call']);
    expect(h.kindsTo('chi')).toEqual(['daily-prompt', 'last-call']);
    const [call] = h.messagesTo('chi').filter(({ kind }) => kind === 'last-call');
    expect(call).toMatchObject({
      prompt: {
        state: 'asked',
        cards: [
          { leftPoints: 2, saidLast: { userId: PEOPLE.chi, at: new Date('2026-11-13T09:15:00Z') } },
          { saidLast: undefined },
        ],
      },
    });
  });

  test('spares who answered in the hour before it, who is away, and whose cards are done', async () => {
    const { h, sprint } = await plannedSprint();
    await h.pass('2026-11-13T09:15:00Z');
    await recordAway(h.deps, actorOf('ben'), { sprintId: sprint.id, day: '2026-11-13' });
    h.set('2026-11-13T15:00:00Z');
    await recordUnchanged(h.deps, actorOf('chi'), { sprintId: sprint.id, day: '2026-11-13' });
    await h.pass('2026-11-13T16:00:00Z');
    expect([h.kindsTo('ben'), h.kindsTo('chi')]).toEqual([['daily-prompt'], ['daily-prompt']]);
  });

  test('spares who has the day off, and comes on no day on which the team doesn’t work', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await h.plan(team, { endsOn: '2026-11-14' });
    await h.pass('2026-11-14T16:00:00Z');
    expect(h.kindsTo('ben')).not.toContain('last-call');
  });

  test('is met by “still so”, which counts as an answer and in no answer rate', async () => {
    const { h, sprint } = await plannedSprint();
    await h.pass('2026-11-13T09:15:00Z');
    await h.answer('chi', sprint.id, '2026-11-13', { 2: { left: '2' }, 3: { left: '1' } });
    await h.pass('2026-11-13T16:00:00Z');
    const prompts = () => h.read((read) => read.promptsOf([{ sprintId: sprint.id, day: '2026-11-13' }]));
    const before = await prompts();
    await recordUnchanged(h.deps, actorOf('chi'), { sprintId: sprint.id, day: '2026-11-13' });
    const after = await prompts();
    expect(after).toHaveLength(before.length);
    expect(after.find(({ userId }) => userId === PEOPLE.chi)).toMatchObject({
      state: 'answered',
      answeredAt: new Date('2026-11-13T16:00:00Z'),
    });
  });

  test('leaves a day that was met before it was asked as one met early, so that it keeps its place in the answer rate', async () => {
    const { h, sprint } = await plannedSprint();
    h.set('2026-11-13T08:00:00Z');
    await recordUnchanged(h.deps, actorOf('chi'), { sprintId: sprint.id, day: '2026-11-13' });
    await h.pass('2026-11-13T09:15:00Z');
    await h.pass('2026-11-13T16:00:00Z');
    expect(h.kindsTo('chi')).toEqual(['last-call']);
    await recordUnchanged(h.deps, actorOf('chi'), { sprintId: sprint.id, day: '2026-11-13' });
    const prompt = await h.read((read) => read.promptOf(sprint.id, PEOPLE.chi, '2026-11-13'));
    expect(prompt).toMatchObject({ postId: undefined, answeredAt: new Date('2026-11-13T08:00:00Z') });
  });

  test('comes instead of the reminder when both are overdue', async () => {
    const { h } = await plannedSprint();
    await h.pass('2026-11-13T09:15:00Z');
    await h.pass('2026-11-13T16:10:00Z');
    expect(h.kindsTo('ben')).toEqual(['daily-prompt', 'last-call']);
  });

  test('does not follow on the heels of a prompt that came late', async () => {
    const { h } = await plannedSprint();
    await h.pass('2026-11-13T16:10:00Z');
    await h.pass('2026-11-13T16:11:00Z');
    expect(h.kindsTo('ben')).toEqual(['daily-prompt']);
  });
});

describe('a change of the team’s settings', () => {
  test('moves the next prompt, the closing and the last call to the new zone', async () => {
    const { h, sprint } = await plannedSprint();
    await h.setUpTeam({ timeZone: 'America/New_York', promptAt: '10:00' });
    const moved = await h.sprint(sprint.id);
    expect(moved).toMatchObject({
      nextPromptAt: new Date('2026-11-02T15:00:00Z'),
      closesAtInstant: new Date('2026-11-13T22:00:00Z'),
      lastCallAt: new Date('2026-11-13T21:00:00Z'),
    });
  });

  test('to other working days counts from today', async () => {
    const { h, sprint } = await plannedSprint();
    h.set('2026-11-03T08:00:00Z');
    await h.setUpTeam({ workingDays: [4, 5] });
    expect((await h.sprint(sprint.id)).nextPromptAt).toEqual(new Date('2026-11-05T09:15:00Z'));
  });

  test('to the measures leaves the sprint’s own closing time', async () => {
    const { h, team, sprint } = await plannedSprint();
    await setMeasures(h.deps, actorOf('ana'), {
      teamId: team.id,
      ...typedMeasures({ closesAt: '18:00', reminderAfterMinutes: '60', scale: '1, 2, 4' }),
    });
    expect((await h.sprint(sprint.id)).closesAtInstant).toEqual(new Date('2026-11-13T17:00:00Z'));
    await h.pass('2026-11-03T09:15:00Z');
    await h.pass('2026-11-03T10:15:00Z');
    expect(h.kindsTo('ben')).toEqual(['daily-prompt', 'reminder']);
  });
});
