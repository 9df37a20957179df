import { describe, expect, test } from 'vitest';
import { answerForm } from '../../../src/app/answering/answer-form.ts';
import { answerInWords, answersForCard } from '../../../src/app/answering/answer-in-words.ts';
import { recordAnswers, recordAway, recordUnchanged } from '../../../src/app/answering/record-answers.ts';
import { dropCard, reopenCard } from '../../../src/app/cards/change-cards.ts';
import { pullCards } from '../../../src/app/cards/pull-cards.ts';
import { answersInForce, ledgerOf } from '../../../src/sprint/ledger.ts';
import {
  actorOf,
  CHANNEL,
  directMessagesOf,
  type Harness,
  harnessForEach,
  PEOPLE,
  type PersonName,
  problemsOf,
  refusalOf,
} from '../../support/app-harness.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');

/** The first day of the sprint, asked and delivered. */
async function askedOnMonday(cards?: string) {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team, cards === undefined ? {} : { cards });
  await h.pass('2026-11-02T09:15:00Z');
  return { h, team, sprint };
}

/** `worked + left, surprise, drift` of a card, after everything that was said. */
async function standing(h: Harness, sprintId: string, number: number) {
  const { cards, facts } = await h.records(sprintId);
  const state = ledgerOf(cards, facts)[number - 1];
  if (!state) throw new Error(`there is no card ${number}`);
  const { workedPoints, leftPoints, surprisePoints, driftPoints, finished } = state;
  expect(state.card.estimatePoints + surprisePoints + driftPoints).toBe(workedPoints + leftPoints);
  return { worked: workedPoints, left: leftPoints, surprise: surprisePoints, drift: driftPoints, finished };
}

function say(h: Harness, who: PersonName, text: string, threadTs?: string) {
  const place = directMessagesOf(who);
  return answerInWords(h.deps, actorOf(who), { text, place, ...(threadTs && { threadTs }) });
}

describe('an answer', () => {
  test('is recorded, meets the day’s prompt, and brings the prompt up to date in its place', async () => {
    const { h, sprint } = await askedOnMonday();
    const outcome = await h.answer('ben', sprint.id, '2026-11-02', {
      1: { left: '3', worked: '2', note: ' half of the tables ' },
      3: { left: '2' },
    });
    await h.drain();
    expect(outcome).toMatchObject({
      kind: 'recorded',
      prompt: {
        state: 'answered',
        answered: [
          { workedPoints: 2, leftPoints: 3, growthPoints: 0, note: 'half of the tables' },
          { workedPoints: 0, leftPoints: 2 },
        ],
      },
    });
    expect(await standing(h, sprint.id, 1)).toEqual({
      worked: 2,
      left: 3,
      surprise: 0,
      drift: 0,
      finished: false,
    });
    const [message, ...others] = h.messenger.messages.filter(({ at }) => at.channelId === `D-${PEOPLE.ben}`);
    expect(others).toEqual([]);
    expect(message).toMatchObject({ updates: 1, content: { prompt: { state: 'answered' } } });
  });

  test('with only what is left counts the decrease as worked', async () => {
    const { h, sprint } = await askedOnMonday();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '1,5' } });
    expect(await standing(h, sprint.id, 1)).toMatchObject({ worked: 3.5, left: 1.5 });
  });

  test('with both shows that a card shrank, which is drift unless surprise work fell away', async () => {
    const { h, sprint } = await askedOnMonday();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '6', worked: '1', surprise: '2' } });
    h.set('2026-11-03T10:00:00Z');
    await h.answer('ben', sprint.id, '2026-11-03', { 1: { left: '3', worked: '1', surprise: '-1' } });
    expect(await standing(h, sprint.id, 1)).toEqual({
      worked: 2,
      left: 3,
      surprise: 1,
      drift: -1,
      finished: false,
    });
  });

  test('of 0 finishes the card, which is then not asked about any more', async () => {
    const { h, sprint } = await askedOnMonday();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '0' } });
    expect(await standing(h, sprint.id, 1)).toMatchObject({ finished: true });
    h.set('2026-11-03T10:00:00Z');
    const form = await answerForm(h.deps, actorOf('ben'), { place: CHANNEL });
    expect(form.cards.map(({ card }) => card.number)).toEqual([3]);
  });

  test('for an earlier day goes before what was said of later ones', async () => {
    const { h, sprint } = await askedOnMonday();
    h.set('2026-11-04T10:00:00Z');
    await h.answer('ben', sprint.id, '2026-11-04', { 1: { left: '1', worked: '2' } });
    // 5 left on Monday, then 3 − 2 = 1: without Monday's answer the card had shrunk by 2.
    expect(await standing(h, sprint.id, 1)).toMatchObject({ worked: 2, drift: -2 });
    const form = await answerForm(h.deps, actorOf('ben'), { place: CHANNEL, day: 'Monday' });
    expect(form.day).toBe('2026-11-02');
    await h.answer('ben', sprint.id, form.day, { 1: { left: '3', worked: '2' } });
    expect(await standing(h, sprint.id, 1)).toEqual({
      worked: 4,
      left: 1,
      surprise: 0,
      drift: 0,
      finished: false,
    });
  });

  test('is recorded once when the same form is sent twice', async () => {
    const { h, sprint } = await askedOnMonday();
    for (let i = 0; i < 2; i += 1) {
      await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '3', worked: '1', surprise: '0' } });
    }
    expect((await h.records(sprint.id)).facts).toHaveLength(1);
  });

  test('may leave out cards about which nothing is typed', async () => {
    const { h, sprint } = await askedOnMonday();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '' }, 3: { left: '1' } });
    const { cards, facts } = await h.records(sprint.id);
    expect(facts.map(({ cardId }) => cardId)).toEqual([cards[2]?.id]);
  });

  test('that leaves out all of them says that nothing changed', async () => {
    const { h, sprint } = await askedOnMonday();
    const outcome = await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '' }, 3: { left: ' ' } });
    expect(outcome).toMatchObject({ kind: 'recorded', prompt: { state: 'unchanged', answered: [] } });
    expect((await h.records(sprint.id)).facts).toEqual([]);
  });

  test('is recorded for all cards or for none', async () => {
    const { h, sprint } = await askedOnMonday();
    await problemsOf(h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '3' }, 3: { left: 'lots' } }));
    expect((await h.records(sprint.id)).facts).toEqual([]);
  });
});

describe('a correction', () => {
  test('takes the place of the member’s own answer for the day, which stays on record', async () => {
    const { h, sprint } = await askedOnMonday();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '1', note: 'slip of the finger' } });
    h.set('2026-11-02T10:00:00Z');
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '4', note: 'really' } });
    const { facts } = await h.records(sprint.id);
    expect(facts).toMatchObject([
      { kind: 'answer', memberId: PEOPLE.ben, leftPoints: 1, note: 'slip of the finger' },
      { kind: 'answer', memberId: PEOPLE.ben, leftPoints: 4, note: 'really', supersedesId: facts[0]?.id },
    ]);
    expect(facts.map(({ recordedAt }) => recordedAt.toISOString())).toEqual([
      '2026-11-02T09:15:00.000Z',
      '2026-11-02T10:00:00.000Z',
    ]);
    expect(answersInForce(facts)).toHaveLength(1);
    expect(await standing(h, sprint.id, 1)).toMatchObject({ worked: 1, left: 4 });
  });

  test('of an earlier day re-derives what follows', async () => {
    const { h, sprint } = await askedOnMonday();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '3' } });
    h.set('2026-11-03T10:00:00Z');
    await h.answer('ben', sprint.id, '2026-11-03', { 1: { left: '2' } });
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '4' } });
    expect(await standing(h, sprint.id, 1)).toMatchObject({ worked: 3, left: 2, drift: 0 });
  });

  test('of the day on which the card was finished is possible', async () => {
    const { h, sprint } = await askedOnMonday();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '0' } });
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '1' } });
    expect(await standing(h, sprint.id, 1)).toMatchObject({ left: 1, finished: false });
  });

  test('is shown in the form with what was said before', async () => {
    const { h, sprint } = await askedOnMonday();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '6', surprise: '1', note: 'a new rule' } });
    const form = await answerForm(h.deps, actorOf('ben'), { place: directMessagesOf('ben') });
    expect(form).toMatchObject({ userId: PEOPLE.ben, day: '2026-11-02' });
    expect(form.cards.map(({ previousLeftPoints, given }) => ({ previousLeftPoints, given }))).toEqual([
      { previousLeftPoints: 5, given: { worked: undefined, left: 6, surprise: 1, note: 'a new rule' } },
      { previousLeftPoints: 2, given: undefined },
    ]);
  });
});

describe('a card with several owners', () => {
  test('adds up what each has worked; the latest left counts', async () => {
    const { h, sprint } = await askedOnMonday('Pilot roster, 8, @Ben @Chi');
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '5', worked: '3' } });
    await h.answer('chi', sprint.id, '2026-11-02', { 1: { left: '3', worked: '2' } });
    expect(await standing(h, sprint.id, 1)).toMatchObject({ worked: 5, left: 3, drift: 0 });
  });

  test('may be answered for by the second owner on the day on which the first one finished it', async () => {
    const { h, sprint } = await askedOnMonday('Pilot roster, 8, @Ben @Chi');
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '0', worked: '8' } });
    await h.answer('chi', sprint.id, '2026-11-02', { 1: { left: '1', worked: '0', surprise: '1' } });
    expect(await standing(h, sprint.id, 1)).toEqual({
      worked: 8,
      left: 1,
      surprise: 1,
      drift: 0,
      finished: false,
    });
  });
});

describe('growth must be explained', () => {
  test('nothing is recorded until somebody says why, and nothing typed is lost', async () => {
    const { h, sprint } = await askedOnMonday();
    const outcome = await h.answer('ben', sprint.id, '2026-11-02', {
      1: { left: '7', worked: '1', note: 'a new rule' },
      3: { left: '1' },
    });
    expect(outcome).toMatchObject({
      kind: 'growth-to-explain',
      day: '2026-11-02',
      answers: [
        { left: '7', worked: '1', note: 'a new rule' },
        { left: '1', worked: '' },
      ],
      grown: [{ card: { number: 1 }, growthPoints: 3 }],
    });
    expect((await h.records(sprint.id)).facts).toEqual([]);
    expect(await h.read((read) => read.promptOf(sprint.id, PEOPLE.ben, '2026-11-02'))).toMatchObject({
      state: 'asked',
    });
  });

  test('is asked about no longer once there is a later answer about the card, which stays', async () => {
    const { h, sprint } = await askedOnMonday('Tide table, 5, @Ben');
    const asked = await say(h, 'ben', '7');
    if (asked.kind !== 'growth-to-explain') throw new Error('nothing was asked');
    const explained = asked.answers.map((answer) => ({ ...answer, surprise: '2' }));
    const press = () =>
      recordAnswers(h.deps, actorOf('ben'), {
        sprintId: sprint.id,
        day: asked.day,
        answers: explained,
        asOf: asked.asOf,
      });
    await say(h, 'ben', '4');
    expect(await refusalOf(press(), 'answered-since')).toEqual({ card: '1 (Tide table)' });
    expect(await standing(h, sprint.id, 1)).toMatchObject({ worked: 1, left: 4, surprise: 0 });
  });

  test('names what a co-owner said since morning, and their prompts show it', async () => {
    const { h } = await askedOnMonday('Tide table, 8, @Ben @Chi');
    h.set('2026-11-02T10:00:00Z');
    await say(h, 'chi', '4');
    await h.drain();
    const prompt = h.messagesTo('ben').find(({ kind }) => kind === 'daily-prompt');
    expect(prompt).toMatchObject({
      prompt: { cards: [{ leftPoints: 4, saidLast: { userId: PEOPLE.chi, day: '2026-11-02' } }] },
    });
    expect(await say(h, 'ben', '6')).toMatchObject({
      kind: 'growth-to-explain',
      grown: [
        {
          growthPoints: 2,
          saidByOther: { userId: PEOPLE.chi, leftPoints: 4, at: new Date('2026-11-02T10:00:00Z') },
        },
      ],
    });
  });

  test.each([
    ['3', { surprise: 3, drift: 0 }],
    ['1.5', { surprise: 1.5, drift: 1.5 }],
    ['0', { surprise: 0, drift: 3 }],
  ])('%s points of 3 as surprise work make the rest drift', async (surprise, expected) => {
    const { h, sprint } = await askedOnMonday();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '7', worked: '1', surprise } });
    expect(await standing(h, sprint.id, 1)).toMatchObject(expected);
  });

  test.each([
    ['4', '7', '1', 'The card grew by 3 points, so surprise work is from 0 to 3.'],
    ['-1', '7', '1', 'The card grew by 3 points, so surprise work is from 0 to 3.'],
    ['1', '3', '', 'The card didn’t grow, so no surprise work came up: leave this at 0.'],
    [
      '-1',
      '3',
      '0',
      'The card shrank and holds no surprise work that could have fallen away: leave this at 0.',
    ],
    ['x', '7', '1', 'Write points in halves from 0 to 999.5, for example 3 or 0.5.'],
  ])('a surprise of %s with %s left and “%s” worked is refused', async (surprise, left, worked, message) => {
    const { h, sprint } = await askedOnMonday();
    const { cards } = await h.records(sprint.id);
    const attempt = h.answer('ben', sprint.id, '2026-11-02', { 1: { left, worked, surprise } });
    expect(await problemsOf(attempt)).toEqual({ [`surprise:${cards[0]?.id}`]: message });
  });
});

describe('what can’t be said is refused with the reason and the way out', () => {
  test.each([
    [{ left: '', note: 'tides' }, 'left', 'Write points in halves from 0 to 999.5, for example 3 or 0.5.'],
    [{ left: '', worked: '1' }, 'left', 'Write points in halves from 0 to 999.5, for example 3 or 0.5.'],
    [{ left: '0.3' }, 'left', 'Write points in halves from 0 to 999.5, for example 3 or 0.5.'],
    [{ left: '3', worked: '-1' }, 'worked', 'Write points in halves from 0 to 999.5, for example 3 or 0.5.'],
    [{ left: '3', note: 'x'.repeat(501) }, 'note', 'Keep the note within 500 characters.'],
  ])('%j', async (given, field, message) => {
    const { h, sprint } = await askedOnMonday();
    const { cards } = await h.records(sprint.id);
    const attempt = h.answer('ben', sprint.id, '2026-11-02', { 1: given });
    expect(await problemsOf(attempt)).toEqual({ [`${field}:${cards[0]?.id}`]: message });
  });

  test('a finished card names the way to reopen it, and can be answered for afterwards', async () => {
    const { h, sprint } = await askedOnMonday();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '0' } });
    h.set('2026-11-03T10:00:00Z');
    const attempt = h.answer('ben', sprint.id, '2026-11-03', { 1: { left: '1', surprise: '1' } });
    expect(Object.values(await problemsOf(attempt))).toEqual([
      '1 (Tide table) was finished on Mon 2 Nov. If it isn’t done after all, reopen it first with “reopen 1”.',
    ]);
    await reopenCard(h.deps, actorOf('ben'), { place: CHANNEL, reference: '1' });
    await h.answer('ben', sprint.id, '2026-11-03', { 1: { left: '1', surprise: '1' } });
    expect(await standing(h, sprint.id, 1)).toEqual({
      worked: 5,
      left: 1,
      surprise: 1,
      drift: 0,
      finished: false,
    });
  });

  test('a dropped card', async () => {
    const { h, sprint } = await askedOnMonday();
    await dropCard(h.deps, actorOf('ben'), { place: CHANNEL, reference: '1', reason: 'not wanted' });
    const attempt = h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '1' } });
    expect(Object.values(await problemsOf(attempt))).toEqual([
      '1 (Tide table) was dropped on Mon 2 Nov, so nothing can be left on it.',
    ]);
  });

  test('somebody else’s card', async () => {
    const { h, sprint } = await askedOnMonday();
    const attempt = h.answer('ben', sprint.id, '2026-11-02', { 2: { left: '1' } });
    expect(Object.values(await problemsOf(attempt))).toEqual([
      '2 (Crane log) isn’t one of your cards. Its owners answer for it; if you work on it too, become an owner with “take 2”.',
    ]);
  });

  test('a card of another sprint', async () => {
    const { h, sprint } = await askedOnMonday();
    await refusalOf(h.answer('ben', sprint.id, '2026-11-02', { 99: { left: '1' } }), 'sprint-changed');
  });

  test('a day before the card came into the sprint', async () => {
    const { h, sprint } = await askedOnMonday();
    h.set('2026-11-04T10:00:00Z');
    await pullCards(h.deps, actorOf('ben'), { place: CHANNEL, text: 'Fog horn, 3, @Ben' });
    const attempt = h.answer('ben', sprint.id, '2026-11-03', { 4: { left: '1' } });
    expect(Object.values(await problemsOf(attempt))).toEqual([
      '4 (Fog horn) came into the sprint on Wed 4 Nov; answer for that day or a later one.',
    ]);
  });

  test('a day that has not come, lies outside the sprint, or is none', async () => {
    const { h, sprint } = await askedOnMonday();
    const on = (day: string) => h.answer('ben', sprint.id, day, { 1: { left: '1' } });
    expect(await refusalOf(on('2026-11-03'), 'day-not-come')).toEqual({ day: '2026-11-03' });
    expect(await refusalOf(on('tomorrow'), 'day-not-come')).toEqual({ day: '2026-11-03' });
    for (const day of ['2026-11-01', '2026-11-14', 'yesterday', '3 Nov', '2026-11-31', 'some day']) {
      expect(await refusalOf(on(day), 'day-outside-sprint')).toMatchObject({ day, startsOn: '2026-11-02' });
    }
  });

  test('a sprint that has not begun, and one that is over', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const { sprint } = await h.plan(team);
    await refusalOf(h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '1' } }), 'sprint-not-begun');
    await h.pass('2026-11-13T17:00:00Z');
    await refusalOf(h.answer('ben', sprint.id, '2026-11-13', { 1: { left: '1' } }), 'sprint-over');
  });

  test('a form for somebody without a card', async () => {
    const { h } = await askedOnMonday();
    const attempt = answerForm(h.deps, actorOf('ana'), { place: CHANNEL });
    expect(await refusalOf(attempt, 'no-cards-of-yours')).toEqual({ sprintName: 'Harbour 12' });
  });
});

describe('one click', () => {
  test('“nothing changed” meets the day and leaves the ledger as it is', async () => {
    const { h, sprint } = await askedOnMonday();
    const prompt = await recordUnchanged(h.deps, actorOf('ben'), { sprintId: sprint.id, day: '2026-11-02' });
    expect(prompt).toMatchObject({ state: 'unchanged', answered: [] });
    expect((await h.records(sprint.id)).facts).toEqual([]);
  });

  test('“away” meets the day; the next day is asked about again', async () => {
    const { h, sprint } = await askedOnMonday();
    const prompt = await recordAway(h.deps, actorOf('ben'), { sprintId: sprint.id, day: '2026-11-02' });
    expect(prompt.state).toBe('away');
    await h.pass('2026-11-03T09:15:00Z');
    expect(h.kindsTo('ben')).toEqual(['daily-prompt', 'daily-prompt']);
  });

  test('on an old button after numbers were given takes none of them back', async () => {
    const { h, sprint } = await askedOnMonday();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '3' } });
    const prompt = await recordUnchanged(h.deps, actorOf('ben'), { sprintId: sprint.id, day: '2026-11-02' });
    expect(prompt).toMatchObject({ state: 'answered', answered: [{ leftPoints: 3 }] });
  });

  test('“away” after numbers keeps them: who goes home ill has worked before', async () => {
    const { h, sprint } = await askedOnMonday();
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '3' } });
    const prompt = await recordAway(h.deps, actorOf('ben'), { sprintId: sprint.id, day: '2026-11-02' });
    expect(prompt).toMatchObject({ state: 'away', answered: [{ leftPoints: 3 }] });
    expect(await standing(h, sprint.id, 1)).toMatchObject({ worked: 2, left: 3 });
  });

  test('may be followed by numbers anyway', async () => {
    const { h, sprint } = await askedOnMonday();
    await recordUnchanged(h.deps, actorOf('ben'), { sprintId: sprint.id, day: '2026-11-02' });
    const outcome = await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '3' } });
    expect(outcome).toMatchObject({ prompt: { state: 'answered' } });
  });
});

describe('a card that nobody owns', () => {
  test('is offered in the form, and taken with it', async () => {
    const { h, sprint } = await askedOnMonday('Tide table, 5\nCrane log, 3, @Chi');
    const form = await answerForm(h.deps, actorOf('ben'), { place: CHANNEL });
    expect([form.cards, form.takeable.map(({ number }) => number)]).toEqual([[], [1]]);
    const cardIds = (await h.records(sprint.id)).cards.map(({ id }) => id);
    await recordAnswers(h.deps, actorOf('ben'), {
      sprintId: sprint.id,
      day: '2026-11-02',
      answers: [],
      // The second one has an owner, so it is not for the taking here.
      takeCardIds: cardIds,
    });
    expect((await h.records(sprint.id)).cards.map(({ ownerIds }) => ownerIds)).toEqual([
      [PEOPLE.ben],
      [PEOPLE.chi],
    ]);
  });
});

describe('an answer in words', () => {
  test('counts the cards in the order of the prompt', async () => {
    const { h, sprint } = await askedOnMonday();
    await say(h, 'ben', '2, 0');
    expect(await standing(h, sprint.id, 1)).toMatchObject({ worked: 3, left: 2 });
    expect(await standing(h, sprint.id, 3)).toMatchObject({ worked: 2, finished: true });
  });

  test('finds every card at its place all day long, though one of them is finished by now', async () => {
    const { h, sprint } = await askedOnMonday();
    await say(h, 'ben', '1: 0');
    await say(h, 'ben', '2: 1');
    expect(await standing(h, sprint.id, 1)).toMatchObject({ finished: true });
    expect(await standing(h, sprint.id, 3)).toMatchObject({ left: 1 });
  });

  test('may name a card by key, by number sign, and with what was worked and surprise', async () => {
    const { h, sprint } = await askedOnMonday('LP-7: Tide table, 5, @Ben\nCrane log, 3, @Ben');
    await say(h, 'ben', 'lp-7: 6 worked 1 surprise 2');
    await say(h, 'ben', '#2: 1');
    expect(await standing(h, sprint.id, 1)).toEqual({
      worked: 1,
      left: 6,
      surprise: 2,
      drift: 0,
      finished: false,
    });
    expect(await standing(h, sprint.id, 2)).toMatchObject({ left: 1 });
  });

  test('with negative surprise takes surprise work away again', async () => {
    const { h, sprint } = await askedOnMonday('Tide table, 5, @Ben');
    await say(h, 'ben', '7 surprise 2');
    h.set('2026-11-03T10:00:00Z');
    await say(h, 'ben', '5 worked 0 surprise -2');
    expect(await standing(h, sprint.id, 1)).toEqual({
      worked: 0,
      left: 5,
      surprise: 0,
      drift: 0,
      finished: false,
    });
  });

  test('in the thread of a prompt is about that prompt’s day', async () => {
    const { h, sprint } = await askedOnMonday('Tide table, 5, @Ben');
    const ts = h.messenger.messages.find(({ content }) => content.kind === 'daily-prompt')?.at.ts;
    h.set('2026-11-04T10:00:00Z');
    await say(h, 'ben', '4', ts);
    await say(h, 'ben', '1');
    const { facts } = await h.records(sprint.id);
    expect(facts.map(({ day, kind }) => [day, kind])).toEqual([
      ['2026-11-02', 'answer'],
      ['2026-11-04', 'answer'],
    ]);
  });

  test.each([
    'yesterday: 2',
    'yesterday it was 2',
    'for Tuesday, tide 2',
    'on tue 1: 2',
    '3 Nov: 2',
    '2026-11-03: tide had 2',
  ])('that names a day is about that day: “%s”', async (text) => {
    const { h, sprint } = await askedOnMonday('Tide table, 5, @Ben');
    h.set('2026-11-04T10:00:00Z');
    await say(h, 'ben', '1');
    await say(h, 'ben', text);
    const { facts } = await h.records(sprint.id);
    expect(facts.map(({ day }) => day)).toEqual(['2026-11-04', '2026-11-03']);
    expect(await standing(h, sprint.id, 1)).toMatchObject({ worked: 4, left: 1, drift: 0 });
  });

  test('may name the day for the whole of it', async () => {
    const { h, sprint } = await askedOnMonday('Tide table, 5, @Ben');
    h.set('2026-11-04T10:00:00Z');
    expect(await say(h, 'ben', 'yesterday I was away')).toMatchObject({
      prompt: { day: '2026-11-03', state: 'away' },
    });
    expect(await say(h, 'ben', 'same as yesterday')).toMatchObject({
      prompt: { day: '2026-11-04', state: 'unchanged' },
    });
    expect((await h.records(sprint.id)).facts).toEqual([]);
  });

  test.each([
    ['a day in a free text is not the day of the answer', '4 blocked: waiting since Monday', '2026-11-04'],
    ['what was done yesterday', 'tide done yesterday', '2026-11-03'],
    ['what was left yesterday', 'tide was 2 yesterday', '2026-11-03'],
    ['what was left at some time is asked about', 'tide was 2', undefined],
    ['what was left at some time is asked about today as well', 'today: tide was 2', undefined],
    ['today and another day are not one', 'yesterday: 3, today 2', undefined],
    ['a title may begin with what could be a day', 'sun 4', '2026-11-04'],
  ])('%s', async (_rule, text, day) => {
    const { h, sprint } = await askedOnMonday('Sun and tide table, 5, @Ben');
    h.set('2026-11-04T10:00:00Z');
    await say(h, 'ben', text).catch(() => undefined);
    const { facts } = await h.records(sprint.id);
    expect(new Set(facts.map((fact) => fact.day))).toEqual(new Set(day === undefined ? [] : [day]));
  });

  test.each([
    ['cancel 2', true],
    ['cancel done', true],
    ['cancel a trip 2', true],
    ['cards 1 and 2: 3', true],
    ['cards 40', false],
    ['cancel the sprint', false],
    ['drop 2', false],
    ['close 2', false],
    ['blocked by the harbour office', true],
    ['blocked 2: the harbour office', false],
    ['blocked 7 the harbour office', false],
    ['blocked', false],
  ])('of a card whose name is a word of a command: %s', async (text, expected) => {
    const { h } = await askedOnMonday(
      'Cancel a trip, 5, @Ben\nClose the hatch, 3, @Chi\nDrop anchor, 1, @Ben',
    );
    await say(h, 'ben', 'drop done');
    const input = { text, place: directMessagesOf('ben') };
    expect(await answersForCard(h.deps, actorOf('ben'), input)).toBe(expected);
  });

  test('about a day outside the sprint is refused', async () => {
    const { h } = await askedOnMonday('Tide table, 5, @Ben');
    await refusalOf(say(h, 'ben', 'yesterday: 3'), 'day-outside-sprint');
  });

  test('may name a finished card by a word of its title, and hears how to reopen it', async () => {
    const { h } = await askedOnMonday('Tide table, 5, @Ben\nCrane log, 3, @Ben');
    await say(h, 'ben', 'tide done');
    h.set('2026-11-03T10:00:00Z');
    const problems = Object.values(await problemsOf(say(h, 'ben', 'tide 3')));
    expect(problems[0]).toMatch(/reopen/);
  });

  test('in the thread of somebody else’s prompt is about today', async () => {
    const { h, sprint } = await askedOnMonday('Tide table, 5, @Ben\nCrane log, 3, @Chi');
    const bens = h.messenger.messages.find(
      ({ content }) => content.kind === 'daily-prompt' && content.prompt.userId === PEOPLE.ben,
    );
    h.set('2026-11-04T10:00:00Z');
    const place = directMessagesOf('ben');
    await answerInWords(h.deps, actorOf('chi'), { text: '1', place, threadTs: bens?.at.ts ?? '' });
    const { facts } = await h.records(sprint.id);
    expect(facts).toMatchObject([{ memberId: PEOPLE.chi, day: '2026-11-04' }]);
  });

  test('in the thread of a prompt whose sprint is over is refused', async () => {
    const { h } = await askedOnMonday('Tide table, 5, @Ben');
    const ts = h.messenger.messages.find(({ content }) => content.kind === 'daily-prompt')?.at.ts;
    await h.pass('2026-11-13T17:00:00Z');
    await refusalOf(say(h, 'ben', '4', ts), 'sprint-over');
  });

  test('after closing is told that the sprint is closed while it can be reopened, also when the next is planned', async () => {
    const { h, team } = await askedOnMonday('Tide table, 5, @Ben');
    await h.pass('2026-11-13T17:05:00Z');
    const closed = { sprintName: 'Harbour 12', state: 'closed' };
    expect(await refusalOf(say(h, 'ben', '4'), 'sprint-over')).toEqual(closed);
    await h.plan(team, { name: 'Harbour 13', startsOn: '2026-11-17', endsOn: '2026-11-27' });
    expect(await refusalOf(say(h, 'ben', '4'), 'sprint-over')).toEqual(closed);
    await h.pass('2026-11-16T17:00:00Z');
    await refusalOf(say(h, 'ben', '4'), 'sprint-not-begun');
  });

  test('is refused where no sprint is running, and the latest is final', async () => {
    const { h } = await askedOnMonday('Tide table, 5, @Ben');
    await h.pass('2026-11-13T17:05:00Z');
    await h.pass('2026-11-16T17:00:00Z');
    await refusalOf(say(h, 'ben', '4'), 'no-sprint-running');
  });

  test('“done” is about the only card that is still open', async () => {
    const { h, sprint } = await askedOnMonday();
    expect(await refusalOf(say(h, 'ben', 'done'), 'unclear-words')).toMatchObject({
      problems: [{ code: 'which-done' }],
    });
    await say(h, 'ben', '1 done');
    await say(h, 'ben', 'done');
    expect(await standing(h, sprint.id, 1)).toMatchObject({ finished: true });
    expect(await standing(h, sprint.id, 3)).toMatchObject({ finished: true });
  });

  test('may name a card by its key without a colon', async () => {
    const { h, sprint } = await askedOnMonday('LP-7: Tide table, 5, @Ben\nCrane log, 3, @Ben');
    await say(h, 'ben', 'lp-7 2');
    expect(await standing(h, sprint.id, 1)).toMatchObject({ left: 2 });
  });

  test('may name a card by the number in its key, where no place in the list and no other key has it', async () => {
    const { h, sprint } = await askedOnMonday(
      'LP-41: Tide table, 5, @Ben\nLP-2: Fog horn, 3, @Ben\nCrane log, 3, @Ben',
    );
    await say(h, 'ben', '41: 2');
    await say(h, 'ben', '2: 1');
    await say(h, 'ben', '41 blocked waiting for the crane');
    expect((await h.records(sprint.id)).facts.at(-1)).toMatchObject({
      kind: 'blocked',
      note: 'waiting for the crane',
    });
    expect(await standing(h, sprint.id, 1)).toMatchObject({ left: 2 });
    expect(await standing(h, sprint.id, 2)).toMatchObject({ left: 1 });
  });

  test('may name a card by a word that stands in the title of only one of theirs', async () => {
    const { h, sprint } = await askedOnMonday(
      'Tide table, 5, @Ben\nFog horn and table, 3, @Ben\nDone list, 1, @Ben',
    );
    for (const unclear of ['table: 2', 'list 1 done'])
      await refusalOf(say(h, 'ben', unclear), 'unclear-words');
    await say(h, 'ben', 'tide: 6, 1 surprise');
    await say(h, 'ben', 'done with the horn');
    expect(await standing(h, sprint.id, 1)).toMatchObject({ left: 6, surprise: 1 });
    expect(await standing(h, sprint.id, 2)).toMatchObject({ left: 0 });
  });

  test('may name a card by what looks like a short name at the beginning of its title, as the list shows it', async () => {
    const { h, sprint } = await askedOnMonday('pier-3 Tide table, 5, @Ben\npier-4 Fog horn, 3, @Ben');
    await say(h, 'ben', 'pier-4: 2');
    await say(h, 'ben', 'Pier-3 done');
    expect(await standing(h, sprint.id, 1)).toMatchObject({ left: 0 });
    expect(await standing(h, sprint.id, 2)).toMatchObject({ left: 2 });
    await refusalOf(say(h, 'ben', 'pier-5: 2'), 'unclear-words');
  });

  test('that is not clear comes with an example made of an open card of theirs', async () => {
    const { h } = await askedOnMonday('LP-7: Tide table, 5, @Ben\nCrane log, 3, @Ben');
    const exampleNow = async () => (await refusalOf(say(h, 'ben', 'fine, 7'), 'unclear-words')).example;
    const cardCount = 2;
    expect(await exampleNow()).toEqual({ cardCount, reference: 'LP-7', title: 'Tide table', leftPoints: 5 });
    await say(h, 'ben', 'lp-7 done');
    expect(await exampleNow()).toEqual({ cardCount, reference: '2', title: 'Crane log', leftPoints: 3 });
  });

  test('about a card that nobody owns says how to become its owner', async () => {
    const { h } = await askedOnMonday('Tide table, 5, @Ben\nFog horn, 3');
    const { problems } = await refusalOf(say(h, 'ben', 'horn: 1'), 'bad-input');
    expect(problems).toMatchObject([{ problem: { code: 'nobodys-card', number: '2' } }]);
  });

  test('that names a card without a number comes with an example of that card', async () => {
    const { h } = await askedOnMonday('LP-7: Tide table, 5, @Ben\nCrane log, 3, @Ben');
    const example = { cardCount: 2, reference: '2', title: 'Crane log', leftPoints: 3 };
    expect(await refusalOf(say(h, 'ben', 'crane is in review'), 'unclear-words')).toMatchObject({ example });
  });

  test('of one card that it is as it was records what was left on its day', async () => {
    const { h, sprint } = await askedOnMonday();
    await h.pass('2026-11-03T09:20:00Z');
    await say(h, 'ben', '1: 3, 2 same');
    expect(await standing(h, sprint.id, 1)).toMatchObject({ left: 3 });
    expect(await standing(h, sprint.id, 3)).toMatchObject({ worked: 0, left: 2 });
    await say(h, 'ben', 'yesterday: 1 same');
    const [, ...facts] = (await h.records(sprint.id)).facts;
    expect(facts.at(-1)).toMatchObject({ kind: 'answer', day: '2026-11-02', leftPoints: 5 });
  });

  test('with something said beside it is recorded, and what isn’t kept comes with it', async () => {
    const { h, sprint } = await askedOnMonday();
    expect(await say(h, 'ben', '1: 3, the mail is down')).toMatchObject({ leftOut: ['the mail is down'] });
    expect(await standing(h, sprint.id, 1)).toMatchObject({ left: 3 });
  });

  test.each([
    ['same', 'unchanged'],
    ['away', 'away'],
    ['sick today', 'away'],
  ])('“%s” is %s', async (text, state) => {
    const { h } = await askedOnMonday();
    expect(await say(h, 'ben', text)).toMatchObject({ kind: 'recorded', prompt: { state } });
  });

  test('that is not clear says so and records nothing', async () => {
    const { h, sprint } = await askedOnMonday();
    expect(await refusalOf(say(h, 'ben', 'nearly done'), 'unclear-words')).toMatchObject({
      example: { cardCount: 2 },
    });
    expect(await refusalOf(say(h, 'ana', 'nearly done'), 'no-cards-of-yours')).toEqual({
      sprintName: 'Harbour 12',
    });
    expect((await h.records(sprint.id)).facts).toEqual([]);
  });

  test.each(['all fine', 'how much should we promise?', '👍', 'Good morning!'])(
    'that holds no card and no number is told so, with an example where they have cards: “%s”',
    async (text) => {
      const { h, sprint } = await askedOnMonday();
      expect(await refusalOf(say(h, 'ben', text), 'not-about-cards')).toMatchObject({
        example: { cardCount: 2 },
      });
      expect(await refusalOf(say(h, 'ana', text), 'not-about-cards')).toEqual({ example: undefined });
      expect((await h.records(sprint.id)).facts).toEqual([]);
    },
  );

  test('about an earlier day begins with it', async () => {
    const { h, sprint } = await askedOnMonday('Tide table, 5, @Ben\nCrane log, 3, @Ben');
    h.set('2026-11-03T10:00:00Z');
    await say(h, 'ben', 'yesterday: 4, 2');
    await say(h, 'ben', 'on Monday tide 3');
    const { facts } = await h.records(sprint.id);
    expect(new Set(facts.map(({ day }) => day))).toEqual(new Set(['2026-11-02']));
    expect(await standing(h, sprint.id, 1)).toMatchObject({ left: 3 });
    await refusalOf(say(h, 'ben', 'for tomorrow: 1, 1'), 'day-not-come');
    await refusalOf(say(h, 'ben', 'on 30 Oct: 1, 1'), 'day-outside-sprint');
  });

  test('about somebody else’s card is refused', async () => {
    const { h } = await askedOnMonday('LP-7: Tide table, 5, @Ben\nLP-8: Crane log, 3, @Chi');
    const problems = Object.values(await problemsOf(say(h, 'ben', 'LP-8: 1')));
    expect(problems[0]).toMatch(/^LP-8 \(Crane log\) isn’t one of your cards\./);
  });

  test('asks why when the card grew', async () => {
    const { h, sprint } = await askedOnMonday('Tide table, 5, @Ben');
    expect(await say(h, 'ben', '8')).toMatchObject({
      kind: 'growth-to-explain',
      grown: [{ growthPoints: 3 }],
    });
    expect((await h.records(sprint.id)).facts).toEqual([]);
  });
});
