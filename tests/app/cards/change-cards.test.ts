import { describe, expect, test } from 'vitest';
import { answerForm } from '../../../src/app/answering/answer-form.ts';
import { statesOf } from '../../../src/app/cards/card-line.ts';
import {
  blockCard,
  dropCard,
  listCards,
  reopenCard,
  unblockCard,
} from '../../../src/app/cards/change-cards.ts';
import { takeCards } from '../../../src/app/cards/change-owners.ts';
import { pullCard, pullForm, pullLine } from '../../../src/app/cards/pull-card.ts';
import type { Problem } from '../../../src/app/input-problem.ts';
import type { RecordedFact } from '../../../src/app/team/team.ts';
import { sprintStatus } from '../../../src/app/watching/sprint-status.ts';
import { problemWords } from '../../../src/words/problems.ts';
import {
  actorOf,
  CHANNEL,
  type Harness,
  harnessForEach,
  PEOPLE,
  problemsOf,
  refusalOf,
} from '../../support/app-harness.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ben = actorOf('ben');

async function running(cards?: string) {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team, cards === undefined ? {} : { cards });
  await h.pass('2026-11-04T10:00:00Z');
  return { h, team, sprint };
}

function pull(h: Harness, line: string) {
  return pullLine(h.deps, ben, { place: CHANNEL, line });
}

function reason({ problem }: { problem: Problem }): string {
  return problemWords(problem);
}

describe('pulling a card in', () => {
  test('enters it today with the next number, counts it as pulled in, and shows what that means', async () => {
    const { h, sprint } = await running();
    const pulled = await pullCard(h.deps, ben, {
      place: CHANNEL,
      title: ' Fog   horn; loud ',
      estimate: '2,5',
      ownerIds: [PEOPLE.ben, PEOPLE.chi, PEOPLE.ben],
    });
    expect(pulled).toMatchObject({
      heading: { sprint: { id: sprint.id } },
      card: {
        number: 4,
        key: '4',
        title: 'Fog horn; loud',
        estimatePoints: 2.5,
        origin: 'pulled-in',
        ownerIds: [PEOPLE.ben, PEOPLE.chi],
        state: 'open',
      },
      summary: {
        totals: { commitmentPoints: 10, pulledInPoints: 2.5, loadPoints: 12.5 },
        ratios: { pullInRatio: 0.25 },
      },
    });
    const { cards } = await h.records(sprint.id);
    expect(cards[3]).toMatchObject({ enteredOn: '2026-11-04', addedBy: PEOPLE.ben });
  });

  test('by a line reads it like a planned one', async () => {
    const { h } = await running();
    const { card } = await pull(h, 'LP-9: Fog horn, loud, ½, <@UCHI|chi>');
    expect(card).toMatchObject({
      key: 'LP-9',
      title: 'Fog horn, loud',
      estimatePoints: 0.5,
      ownerIds: [PEOPLE.chi],
    });
  });

  test('is asked about from the next day on, and shown in today’s prompt at once', async () => {
    const { h } = await running();
    await pull(h, 'Fog horn, 3, @Ben');
    await h.drain();
    expect(h.messagesTo('ben').at(-1)).toMatchObject({
      kind: 'daily-prompt',
      prompt: { cards: [{ number: 1 }, { number: 3 }, { number: 4 }] },
    });
    await h.pass('2026-11-05T09:15:00Z');
    expect(h.messagesTo('ben').at(-1)).toMatchObject({ prompt: { day: '2026-11-05', cards: { length: 3 } } });
  });

  test.each<[object, string, string]>([
    [{ title: ' ' }, 'title', 'Give the card a title of 1 to 200 characters.'],
    [{ title: 'x'.repeat(201) }, 'title', 'Give the card a title of 1 to 200 characters.'],
    [{ estimate: '' }, 'estimate', 'Write points in halves from 0 to 999.5, for example 3 or 0.5.'],
    [{ estimate: '0.7' }, 'estimate', 'Write points in halves from 0 to 999.5, for example 3 or 0.5.'],
    [{ ownerIds: [PEOPLE.dayo] }, 'ownerIds', 'Choose members of the team only.'],
  ])('with %j is refused', async (change, field, message) => {
    const { h } = await running();
    const input = { place: CHANNEL, title: 'Fog horn', estimate: '3', ownerIds: [], ...change };
    expect(await problemsOf(pullCard(h.deps, ben, input))).toEqual({ [field]: message });
  });

  test.each(['Fog "horn", 3', '"Fog", 3', 'Fog, 3; 4', '"'])(
    'a form’s title is a title, even if it holds %j',
    async (title) => {
      const { h } = await running();
      const { card } = await pullCard(h.deps, ben, { place: CHANNEL, title, estimate: '3', ownerIds: [] });
      expect(card).toMatchObject({ title, estimatePoints: 3 });
    },
  );

  test('by a line that can’t be read shows how', async () => {
    const { h } = await running();
    expect(reason(await refusalOf(pull(h, ''), 'bad-argument'))).toMatch(/^The estimate is missing/);
    expect(reason(await refusalOf(pull(h, 'Fog horn'), 'bad-argument'))).toMatch(/^The estimate is missing/);
    expect(reason(await refusalOf(pull(h, 'Fog horn, 3\nBuoys, 2'), 'bad-argument'))).toBe(
      'Bring in one card at a time.',
    );
  });

  test('with a key that the sprint has already is refused, in upper or lower case', async () => {
    const { h } = await running('LP-7: Tide table, 5, @Ben');
    expect(await refusalOf(pull(h, 'lp-7: Fog horn, 3'), 'key-taken')).toEqual({
      key: 'lp-7',
      sprintName: 'Harbour 12',
    });
  });

  test('is refused beyond a hundred cards', async () => {
    const { h } = await running(Array.from({ length: 99 }, (_, i) => `Card ${i + 1}, 1`).join('\n'));
    await pull(h, 'Fog horn, 3');
    expect(await refusalOf(pull(h, 'Buoys, 3'), 'too-many-cards')).toEqual({ limit: 100 });
  });

  test('into a sprint that has not begun is refused: it still can be planned', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await h.plan(team);
    await refusalOf(pull(h, 'Fog horn, 3'), 'sprint-not-begun');
    await refusalOf(pullForm(h.deps, ben, CHANNEL), 'sprint-not-begun');
  });

  test('when no sprint is open is refused', async () => {
    const h = harness();
    await h.setUpTeam();
    await refusalOf(pull(h, 'Fog horn, 3'), 'no-sprint-running');
  });

  test('is weighed with the pace and the days left', async () => {
    const { h, sprint } = await running();
    await h.answer('ben', sprint.id, '2026-11-04', { 1: { left: '1' } });
    expect(await pullForm(h.deps, ben, CHANNEL)).toMatchObject({
      workingDaysLeft: 7,
      memberIds: [PEOPLE.ana, PEOPLE.ben, PEOPLE.chi],
      // 6 left − 4 worked ÷ 3 days × 7 days.
      load: { from: 'pace', pace: { signal: 'light', projectedLeftPoints: 6 - (4 / 3) * 7 } },
      check: { openPoints: 10, ownSprints: 0, pulledIn: { cards: 0, finished: 0 } },
    });
  });
});

describe('dropping a card', () => {
  test('keeps its estimate in the commitment, and its reason', async () => {
    const { h, sprint } = await running();
    const { card } = await dropCard(h.deps, ben, { place: CHANNEL, reference: '#2', reason: ' not wanted ' });
    expect(card).toMatchObject({ number: 2, state: 'dropped' });
    const { summary } = await listCards(h.deps, ben, CHANNEL);
    expect(summary.totals).toMatchObject({ commitmentPoints: 10, openLeftPoints: 7 });
    const { facts } = await h.records(sprint.id);
    expect(facts).toMatchObject([
      { kind: 'drop', note: 'not wanted', memberId: PEOPLE.ben, day: '2026-11-04' },
    ]);
  });

  test('takes it off the lists from which its owners answer', async () => {
    const { h } = await running();
    await dropCard(h.deps, ben, { place: CHANNEL, reference: '1', reason: 'not wanted' });
    await h.drain();
    expect(h.messagesTo('ben').at(-1)).toMatchObject({ prompt: { cards: [{ number: 3 }] } });
  });

  test('twice is refused, and so is everything else that would change it', async () => {
    const { h } = await running();
    const wanted = { place: CHANNEL, reference: '1' };
    await dropCard(h.deps, ben, { ...wanted, reason: 'not wanted' });
    const again = dropCard(h.deps, ben, { ...wanted, reason: 'not wanted' });
    expect(await refusalOf(again, 'card-dropped')).toEqual({ card: '1 (Tide table)' });
    await refusalOf(takeCards(h.deps, ben, { place: CHANNEL, words: wanted.reference }), 'card-dropped');
    await refusalOf(reopenCard(h.deps, ben, wanted), 'card-dropped');
  });

  test.each(['', '  ', 'x'.repeat(301)])('with the reason %j is refused', async (text) => {
    const { h } = await running();
    const attempt = dropCard(h.deps, ben, { place: CHANNEL, reference: '1', reason: text });
    expect(await refusalOf(attempt, 'bad-argument')).toMatchObject({ command: 'drop' });
  });

  test('that is not there is refused with those that are', async () => {
    const { h } = await running('LP-7: Tide table, 5, @Ben\nCrane log, 3');
    const attempt = dropCard(h.deps, ben, { place: CHANNEL, reference: 'LP-99', reason: 'not wanted' });
    expect(await refusalOf(attempt, 'no-such-card')).toEqual({ reference: 'LP-99', known: ['1 LP-7', '2'] });
  });

  test('may name it by number or key, and goes on the first day when the sprint has not begun', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const { sprint } = await h.plan(team, { cards: 'LP-7: Tide table, 5, @Ben\nLP-8: Crane log, 3' });
    await dropCard(h.deps, ben, { place: CHANNEL, reference: 'lp-7', reason: 'not wanted' });
    await dropCard(h.deps, ben, { sprintId: sprint.id, reference: '2', reason: 'not wanted' });
    const { facts } = await h.records(sprint.id);
    expect(facts.map(({ day }) => day)).toEqual(['2026-11-02', '2026-11-02']);
  });
});

describe('reopening a card', () => {
  async function finished() {
    const { h, sprint } = await running();
    await h.answer('ben', sprint.id, '2026-11-04', { 1: { left: '0' } });
    return { h, sprint, wanted: { place: CHANNEL, reference: '1' } };
  }

  test.each(['ben', 'ana'] as const)('is for an owner or a facilitator: %s', async (who) => {
    const { h, wanted } = await finished();
    const { card } = await reopenCard(h.deps, actorOf(who), wanted);
    expect(card.state).toBe('open');
    await refusalOf(reopenCard(h.deps, actorOf(who), wanted), 'card-not-finished');
  });

  test('by another member is refused', async () => {
    const { h, wanted } = await finished();
    const attempt = reopenCard(h.deps, actorOf('chi'), wanted);
    expect(await refusalOf(attempt, 'not-card-owner')).toEqual({ card: '1 (Tide table)', act: 'reopen' });
  });
});

describe('a blocked card', () => {
  const wanted = { place: CHANNEL, reference: '1' };
  const on = 'waiting for the key';

  async function blocksOf(h: Harness, sprintId: string) {
    const [state] = statesOf(await h.records(sprintId));
    return state?.blocks.map(({ since, until, said }) => [since, until, (said as RecordedFact).note]);
  }

  test.each(['ben', 'ana'] as const)(
    'is named by an owner or a facilitator, and moves again: %s',
    async (who) => {
      const { h, sprint } = await running();
      await blockCard(h.deps, actorOf(who), { ...wanted, on: ` ${on} ` });
      expect(await blocksOf(h, sprint.id)).toEqual([['2026-11-04', undefined, on]]);
      await unblockCard(h.deps, actorOf(who), wanted);
      expect(await blocksOf(h, sprint.id)).toEqual([['2026-11-04', '2026-11-04', on]]);
      expect(await refusalOf(unblockCard(h.deps, actorOf(who), wanted), 'card-not-blocked')).toEqual({
        card: '1 (Tide table)',
      });
    },
  );

  test('is told to the facilitators once for each block, without who said it', async () => {
    const { h } = await running();
    await blockCard(h.deps, ben, { ...wanted, on });
    await blockCard(h.deps, ben, { ...wanted, on: 'the other key' });
    await h.drain();
    const told = () => h.messagesTo('ana').filter(({ kind }) => kind === 'cards-blocked');
    expect(told()).toMatchObject([{ cards: [{ number: 1, blocked: { on: 'the other key' } }] }]);
    expect(JSON.stringify(told())).not.toContain('byUserId');
    await unblockCard(h.deps, ben, wanted);
    await blockCard(h.deps, ben, { ...wanted, on });
    await h.drain();
    expect(told()).toHaveLength(2);
  });

  test('keeps what it waits for to itself where that begins with “private:”', async () => {
    const { h } = await running();
    await blockCard(h.deps, ben, { ...wanted, on: 'private: my own mistake' });
    await h.drain();
    const told = h.messagesTo('ana').filter(({ kind }) => kind === 'cards-blocked');
    expect(told).toMatchObject([{ cards: [{ number: 1, blocked: { on: '' } }] }]);
    expect((await sprintStatus(h.deps, actorOf('ana'), CHANNEL)).cards[0]?.blocked).toMatchObject({ on: '' });
  });

  test('is not told to the facilitator who said it', async () => {
    const { h } = await running();
    await blockCard(h.deps, actorOf('ana'), { ...wanted, on });
    await h.drain();
    expect(h.kindsTo('ana')).not.toContain('cards-blocked');
  });

  test('is moving again with the next answer', async () => {
    const { h, sprint } = await running();
    await blockCard(h.deps, ben, { ...wanted, on });
    await h.answer('ben', sprint.id, '2026-11-04', { 1: { left: '4' } });
    expect(await blocksOf(h, sprint.id)).toEqual([['2026-11-04', '2026-11-04', on]]);
  });

  test('is moving again with the answer of that morning, given once more', async () => {
    const { h, sprint } = await running();
    await h.answer('ben', sprint.id, '2026-11-04', { 1: { left: '4' } });
    await blockCard(h.deps, ben, { ...wanted, on });
    const { cards } = await answerForm(h.deps, ben, { sprintId: sprint.id });
    // What the form offers comes back with it, and must not end the block by itself.
    expect(cards[0]?.given).toBeUndefined();
    await h.answer('ben', sprint.id, '2026-11-04', { 1: { left: '4' } });
    expect(await blocksOf(h, sprint.id)).toEqual([['2026-11-04', '2026-11-04', on]]);
  });

  test('is not named by another member, nor said by one to move', async () => {
    const { h } = await running();
    const refused = { card: '1 (Tide table)', act: 'block' };
    expect(await refusalOf(blockCard(h.deps, actorOf('chi'), { ...wanted, on }), 'not-card-owner')).toEqual(
      refused,
    );
    await blockCard(h.deps, ben, { ...wanted, on });
    expect(await refusalOf(unblockCard(h.deps, actorOf('chi'), wanted), 'not-card-owner')).toEqual(refused);
  });

  test.each(['', '  ', 'x'.repeat(301)])('on %j is refused', async (text) => {
    const { h } = await running();
    const attempt = blockCard(h.deps, ben, { ...wanted, on: text });
    expect(await refusalOf(attempt, 'bad-argument')).toMatchObject({ command: 'blocked' });
  });

  test('that is finished or dropped is refused', async () => {
    const { h, sprint } = await running();
    await h.answer('ben', sprint.id, '2026-11-04', { 1: { left: '0' } });
    await refusalOf(blockCard(h.deps, ben, { ...wanted, on }), 'card-finished');
    await dropCard(h.deps, ben, { place: CHANNEL, reference: '3', reason: 'not wanted' });
    await refusalOf(blockCard(h.deps, ben, { place: CHANNEL, reference: '3', on }), 'card-dropped');
  });
});

test('the list of cards holds each with its standing', async () => {
  const { h, sprint } = await running();
  await h.answer('ben', sprint.id, '2026-11-04', { 1: { left: '0' }, 3: { left: '4', surprise: '2' } });
  await dropCard(h.deps, ben, { place: CHANNEL, reference: '2', reason: 'not wanted' });
  const { cards, openCount } = await listCards(h.deps, ben, CHANNEL);
  expect(openCount).toBe(1);
  expect(
    cards.map(({ number, state, leftPoints, surprisePoints }) => [number, state, leftPoints, surprisePoints]),
  ).toEqual([
    [1, 'finished', 0, 0],
    [2, 'dropped', 3, 0],
    [3, 'open', 4, 2],
  ]);
});
