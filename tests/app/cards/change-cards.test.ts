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
import { pullCards, pullForm } from '../../../src/app/cards/pull-cards.ts';
import type { RecordedFact } from '../../../src/app/team/team.ts';
import { sprintStatus } from '../../../src/app/watching/sprint-status.ts';
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

async function pull(h: Harness, text: string) {
  const { cards, ...pulled } = await pullCards(h.deps, ben, { place: CHANNEL, text });
  return { ...pulled, card: cards[0] };
}

describe('pulling a card in', () => {
  test('names the open cards that have its title, for somebody may have pulled it in before', async () => {
    const { h } = await running();
    expect((await pull(h, 'Fog horn, 3')).alike).toEqual([]);
    const { alike, card } = await pull(h, 'fog  horn, 3');
    expect(alike).toEqual([(card?.number ?? 0) - 1, card?.number]);
    await dropCard(h.deps, ben, { place: CHANNEL, reference: String(card?.number), reason: 'a copy' });
    expect((await pull(h, 'Buoys, 3')).alike).toEqual([]);
    expect((await pull(h, 'LP-9: Buoys, 3')).alike).toHaveLength(2);
  });

  test('enters it today with the next number, counts it as pulled in, and shows what that means', async () => {
    const { h, sprint } = await running();
    const pulled = await pull(h, ' Fog   horn; loud , 2,5, @Ben @Chi @Ben ');
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

  test.each([
    ['', /^The title is missing/],
    ['Fog horn', /^The estimate is missing/],
    [', 3', /^The title is missing/],
    [`${'x'.repeat(201)}, 3`, /201/],
    ['Fog horn, 0.7', /0\.7/],
    ['Fog horn, 3, @Dayo', /Dayo/],
    ['Fog horn, 3\nBuoys', /^Line 2: The estimate is missing/],
    ['Fog horn, 3\nBuoys, 2, @Dayo', /^Line 2: .*Dayo/],
    ['LP-9: Fog horn, 3\nlp-9: Buoys, 2', /^Line 2: .*LP-9.*line 1/i],
    ['Fog horn\t?\thttps://chat.example/p1', /\?/],
  ])('that can’t be read as cards is refused and shows how to write it: %j', async (text, message) => {
    const { h, sprint } = await running();
    const { cards: problem, ...others } = await problemsOf(pull(h, text));
    expect(problem).toMatch(message);
    expect(others).toEqual({});
    expect((await h.records(sprint.id)).cards).toHaveLength(3);
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

  test('is refused when the cards pulled in together would be more than a hundred', async () => {
    const { h, sprint } = await running(Array.from({ length: 98 }, (_, i) => `Card ${i + 1}, 1`).join('\n'));
    expect(await refusalOf(pull(h, 'Fog horn, 3\nBuoys, 3\nNets, 3'), 'too-many-cards')).toEqual({
      limit: 100,
    });
    expect((await h.records(sprint.id)).cards).toHaveLength(98);
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
  const { cards } = await listCards(h.deps, ben, CHANNEL);
  expect(
    cards.map(({ number, state, leftPoints, surprisePoints }) => [number, state, leftPoints, surprisePoints]),
  ).toEqual([
    [1, 'finished', 0, 0],
    [2, 'dropped', 3, 0],
    [3, 'open', 4, 2],
  ]);
});

test('the list of cards tells a product owner from the team', async () => {
  const { h } = await running();
  await h.setUpTeam({ productOwnerId: PEOPLE.dayo });
  for (const [who, isOnTeam] of [
    ['ben', true],
    ['dayo', false],
  ] as const)
    expect(await listCards(h.deps, actorOf(who), CHANNEL)).toMatchObject({ isOnTeam });
});
