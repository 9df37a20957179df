import { describe, expect, test } from 'vitest';
import { answerForm } from '../../../src/app/answering/answer-form.ts';
import { dropCard, listCards, undropCard } from '../../../src/app/cards/change-cards.ts';
import { assignCards, giveCards, releaseCards, takeCards } from '../../../src/app/cards/change-owners.ts';
import { pullCards } from '../../../src/app/cards/pull-cards.ts';
import { cardsMessage } from '../../../src/slack/views/cards/card-messages.ts';
import { postMessage } from '../../../src/slack/views/post-message.ts';
import {
  actorOf,
  CHANNEL,
  directMessagesOf,
  harnessForEach,
  PEOPLE,
  type PersonName,
  refusalOf,
} from '../../support/app-harness.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');

/** Card 1 is Ben’s, card 2 Chi’s, card 3 both’s; Ana facilitates and owns none. */
async function running(productOwnerId?: string) {
  const h = harness();
  const team = await h.setUpTeam({ productOwnerId });
  const { sprint } = await h.plan(team);
  await h.pass('2026-11-04T10:00:00Z');
  const ownersOf = async (): Promise<(readonly string[])[]> =>
    (await h.records(sprint.id)).cards.map(({ ownerIds }) => ownerIds);
  const give = (who: PersonName, words: string) => giveCards(h.deps, actorOf(who), { place: CHANNEL, words });
  return { h, team, sprint, ownersOf, give };
}

describe('giving cards', () => {
  test('puts others in the giver’s place, and co-owners stay', async () => {
    const { give, ownersOf } = await running();
    const { cards } = await give('ben', `1, 3 to <@${PEOPLE.ana}>`);
    expect(cards.map(({ number }) => number)).toEqual([1, 3]);
    expect(await ownersOf()).toEqual([[PEOPLE.ana], [PEOPLE.chi], [PEOPLE.ana, PEOPLE.chi]]);
  });

  test('hands a card over whole when a facilitator gives it who doesn’t own it', async () => {
    const { give, ownersOf } = await running();
    await give('ana', '3 @Ana');
    expect((await ownersOf())[2]).toEqual([PEOPLE.ana]);
  });

  test('takes several people, names without a sign, and the giver again', async () => {
    const { give, ownersOf } = await running();
    await give('ben', '1 Chi and Ana');
    expect((await ownersOf())[0]).toEqual([PEOPLE.chi, PEOPLE.ana]);
    await give('chi', '2 @chi @ana');
    expect((await ownersOf())[1]).toEqual([PEOPLE.chi, PEOPLE.ana]);
    await give('ben', '3 @chi');
    expect((await ownersOf())[2]).toEqual([PEOPLE.chi]);
  });

  test('asks the new owners from the next day on, and the former ones no more', async () => {
    const { h, give } = await running();
    await give('ben', '1 3 @ana');
    const asked = (who: PersonName) => h.kindsTo(who).filter((kind) => kind === 'daily-prompt').length;
    const before = [asked('ana'), asked('ben')];
    await h.pass('2026-11-05T09:15:00Z');
    expect([asked('ana'), asked('ben')]).toEqual([(before[0] as number) + 1, before[1]]);
  });

  test('brings the open prompts of both up to date at once', async () => {
    const { h, give } = await running();
    await give('ben', '1 @chi');
    await h.drain();
    const listed = (who: PersonName) =>
      h
        .messagesTo(who)
        .flatMap((content) => (content.kind === 'daily-prompt' ? [content.prompt] : []))
        .find(({ day }) => day === '2026-11-04')
        ?.cards.map(({ number }) => number);
    expect([listed('ben'), listed('chi')]).toEqual([[3], [1, 2, 3]]);
  });

  test.each([
    ['somebody else’s card', 'chi', '1 @chi', 'not-card-owner'],
    ['a card that isn’t there', 'ben', '9 @chi', 'no-such-card'],
    ['no card', 'ben', '@chi', 'bad-argument'],
    ['no people', 'ben', '1', 'bad-argument'],
    ['somebody who isn’t on the team', 'ben', '1 @zoe', 'bad-argument'],
  ] as const)('is refused for %s, and then nothing of it is done', async (_, who, words, code) => {
    const { give, ownersOf } = await running();
    const before = await ownersOf();
    await refusalOf(give(who, words), code);
    expect(await ownersOf()).toEqual(before);
  });

  test('is refused for a dropped card', async () => {
    const { h, give } = await running();
    await dropCard(h.deps, actorOf('ben'), { place: CHANNEL, reference: '1', reason: 'not wanted' });
    await refusalOf(give('ben', '1 @chi'), 'card-dropped');
  });
});

describe('taking a share in cards', () => {
  test('is for those who do the team’s work: a facilitator who is no member reads how to mend it', async () => {
    const h = harness();
    const team = await h.setUpTeam({ memberIds: [PEOPLE.ben, PEOPLE.chi] });
    await h.plan(team, { cards: 'Tide table, 5, @Ben\nCrane log, 3' });
    await h.pass('2026-11-04T10:00:00Z');
    const wanted = { place: CHANNEL, words: '2' };
    await refusalOf(takeCards(h.deps, actorOf('ana'), wanted), 'takes-no-cards');
    await refusalOf(answerForm(h.deps, actorOf('ana'), { place: CHANNEL }), 'no-cards-of-yours');
    expect((await answerForm(h.deps, actorOf('chi'), { place: CHANNEL })).takeable).toHaveLength(1);
  });

  test('makes the caller one of their owners, once, and tells nobody', async () => {
    const { h, ownersOf } = await running();
    const wanted = { place: directMessagesOf('ben'), words: '2' };
    const { cards } = await takeCards(h.deps, actorOf('ben'), wanted);
    expect(cards.map(({ ownerIds }) => ownerIds)).toEqual([[PEOPLE.chi, PEOPLE.ben]]);
    expect(await refusalOf(takeCards(h.deps, actorOf('ben'), wanted), 'already-owner')).toEqual({
      card: '2 (Crane log)',
    });
    await refusalOf(takeCards(h.deps, actorOf('ben'), { ...wanted, words: '' }), 'bad-argument');
    await takeCards(h.deps, actorOf('ana'), { place: CHANNEL, words: '1 2, 3' });
    expect((await ownersOf()).every((ids) => ids.includes(PEOPLE.ana))).toBe(true);
    await h.drain();
    expect(h.kindsTo('ana')).not.toContain('cards-given');
  });
});

describe('pulling in several cards', () => {
  test('takes one a line, all or none, and names the bad lines', async () => {
    const { h, sprint } = await running();
    const pull = (text: string) => pullCards(h.deps, actorOf('ben'), { place: CHANNEL, text });
    const { problems } = await refusalOf(pull('Fog horn, 3, @Ben\nBuoy'), 'bad-input');
    expect(problems).toMatchObject([{ problem: { code: 'bad-lines', lines: [{ lineNumber: 2 }] } }]);
    expect((await h.records(sprint.id)).cards).toHaveLength(3);
    const { cards, summary } = await pull('Fog horn, 3, @Ben\n\nBuoy, 2');
    expect(cards.map(({ number, title, origin }) => [number, title, origin])).toEqual([
      [4, 'Fog horn', 'pulled-in'],
      [5, 'Buoy', 'pulled-in'],
    ]);
    expect(summary.totals.pulledInPoints).toBe(5);
  });
});

describe('releasing cards', () => {
  test('takes the caller off, leaves co-owners, and tells facilitators of cards that are nobody’s then', async () => {
    const { h, ownersOf } = await running();
    await releaseCards(h.deps, actorOf('ben'), { place: CHANNEL, words: '3' });
    await h.drain();
    expect([(await ownersOf())[2], h.kindsTo('ana')]).toEqual([[PEOPLE.chi], []]);
    await releaseCards(h.deps, actorOf('ben'), { place: CHANNEL, words: '1' });
    await h.drain();
    expect([(await ownersOf())[0], h.kindsTo('ana')]).toEqual([[], ['owner-needed']]);
  });

  test('is for its owners; a facilitator takes everybody off, and is told nothing', async () => {
    const { h, ownersOf } = await running();
    await refusalOf(releaseCards(h.deps, actorOf('chi'), { place: CHANNEL, words: '1' }), 'not-card-owner');
    await releaseCards(h.deps, actorOf('ana'), { place: CHANNEL, words: '1 3' });
    await h.drain();
    expect([await ownersOf(), h.kindsTo('ana')]).toEqual([[[], [PEOPLE.chi], []], []]);
    await refusalOf(releaseCards(h.deps, actorOf('ben'), { place: CHANNEL, words: '' }), 'bad-argument');
  });
});

describe('assigning cards', () => {
  test('is for facilitators, and puts the named people in place of the owners', async () => {
    const { h, ownersOf } = await running();
    const wanted = { place: CHANNEL, words: '1 3 @chi' };
    await refusalOf(assignCards(h.deps, actorOf('ben'), wanted), 'not-a-facilitator');
    await assignCards(h.deps, actorOf('ana'), wanted);
    expect(await ownersOf()).toEqual([[PEOPLE.chi], [PEOPLE.chi], [PEOPLE.chi]]);
  });

  test('tells those who got cards, once, in one message each', async () => {
    const { h } = await running();
    await assignCards(h.deps, actorOf('ana'), { place: CHANNEL, words: '1 3 @chi @ana' });
    await h.drain();
    const told = h.messagesTo('chi').filter(({ kind }) => kind === 'cards-given');
    expect(told).toMatchObject([{ byUserId: PEOPLE.ana, cards: [{ number: 1 }] }]);
    expect(h.kindsTo('ana')).not.toContain('cards-given');
    expect(h.kindsTo('ben')).not.toContain('cards-given');
  });
});

describe('a dropped card', () => {
  test('is told to the product owner, unless they dropped it, and brought up to date when it is taken back', async () => {
    const { h } = await running(PEOPLE.chi);
    await dropCard(h.deps, actorOf('chi'), { place: CHANNEL, reference: '2', reason: 'not wanted' });
    await dropCard(h.deps, actorOf('ben'), { place: CHANNEL, reference: '1', reason: 'no data' });
    await h.drain();
    const told = () => h.messagesTo('chi').filter(({ kind }) => kind === 'cards-dropped');
    expect(told()).toMatchObject([
      { byUserId: PEOPLE.ben, reason: 'no data', cards: [{ number: 1 }], isTakenBack: false },
    ]);
    await undropCard(h.deps, actorOf('ben'), { place: CHANNEL, reference: '1' });
    await h.drain();
    expect(told()).toMatchObject([{ isTakenBack: true }]);
  });
});

describe('taking a drop back', () => {
  const one = { place: CHANNEL, reference: '1' };

  async function dropped() {
    const { h, sprint, team } = await running();
    await h.answer('ben', sprint.id, '2026-11-04', { 1: { left: '2' } });
    await dropCard(h.deps, actorOf('ben'), { ...one, reason: 'not wanted' });
    return { h, sprint, team };
  }

  test('leaves the card open with what was left, as often as it happens', async () => {
    const { h } = await dropped();
    expect((await undropCard(h.deps, actorOf('ana'), one)).card).toMatchObject({
      state: 'open',
      leftPoints: 2,
    });
    await refusalOf(undropCard(h.deps, actorOf('ana'), one), 'card-not-dropped');
    const again = await dropCard(h.deps, actorOf('ben'), { ...one, reason: 'really' });
    expect(again.card.state).toBe('dropped');
    expect((await undropCard(h.deps, actorOf('ana'), one)).card.state).toBe('open');
    const { planChanges } = await listCards(h.deps, actorOf('ben'), CHANNEL);
    expect(planChanges.map(({ part, changedBy }) => [part, changedBy])).toEqual([
      ['undrop', PEOPLE.ana],
      ['undrop', PEOPLE.ana],
    ]);
    await h.pass('2026-11-13T17:00:00Z');
    // The verdict's thread is owed once the verdict is out.
    await h.drain();
    const verdict = h.messagesTo(CHANNEL).find(({ kind }) => kind === 'verdict-cards');
    const { text } = postMessage(verdict as NonNullable<typeof verdict>);
    expect(text).toMatch(/The plan was changed on .*\n.*the drop of .* was taken back/);
  });

  test('is for the person who dropped the card, and for a facilitator', async () => {
    const { h } = await dropped();
    await refusalOf(undropCard(h.deps, actorOf('chi'), one), 'not-a-facilitator');
    expect((await undropCard(h.deps, actorOf('ben'), one)).card.state).toBe('open');
  });

  test('is for the product owner, who may drop cards as well without being a member', async () => {
    const { h } = await dropped();
    await h.setUpTeam({ productOwnerId: PEOPLE.dayo });
    expect((await undropCard(h.deps, actorOf('dayo'), one)).card.state).toBe('open');
    const again = { ...one, reason: 'not wanted' };
    expect((await dropCard(h.deps, actorOf('dayo'), again)).card.state).toBe('dropped');
    await refusalOf(takeCards(h.deps, actorOf('dayo'), { place: CHANNEL, words: '2' }), 'not-a-member');
  });
});

describe('the list of what changed in the plan', () => {
  /** Card 1 goes to Chi and back to nobody and is taken; Ana joins card 2; Ben leaves card 3; card 4 had no owner. */
  async function changedHands() {
    const { h, give } = await running();
    await pullCards(h.deps, actorOf('ben'), { place: CHANNEL, text: 'Dredging, 2' });
    const change = { place: CHANNEL };
    await give('ben', '1 @chi');
    await h.pass('2026-11-05T10:00:00Z');
    await releaseCards(h.deps, actorOf('chi'), { ...change, words: '1' });
    await h.pass('2026-11-05T10:05:00Z');
    await takeCards(h.deps, actorOf('ana'), { ...change, words: '1, 2' });
    await releaseCards(h.deps, actorOf('ben'), { ...change, words: '3' });
    await takeCards(h.deps, actorOf('ben'), { ...change, words: '4' });
    return h;
  }

  test('says who changed the owners of which card and when, in order', async () => {
    const h = await changedHands();
    const { planChanges, cards } = await listCards(h.deps, actorOf('chi'), CHANNEL);
    const numbers = new Map(cards.map((card) => [card.cardId, card.number]));
    const listed = planChanges.map((change) =>
      change.part === 'owners'
        ? [numbers.get(change.cardId), change.how, change.changedBy, change.newOwnerIds]
        : [],
    );
    const { ana, ben, chi } = PEOPLE;
    expect(listed.slice(0, 2)).toEqual([
      [1, 'handed-over', ben, [chi]],
      [1, 'left', chi, []],
    ]);
    expect(listed.slice(2).sort()).toEqual([
      [1, 'handed-over', ana, [ana]],
      [2, 'joined', ana, [ana]],
      [3, 'left', ben, []],
      [4, 'first', ben, [ben]],
    ]);
  });

  test('names no former owner in the list of cards', async () => {
    const h = await changedHands();
    const { text } = cardsMessage(await listCards(h.deps, actorOf('chi'), CHANNEL));
    expect(text.split('\n').filter((line) => line.startsWith('• Thu 5 Nov'))).toEqual([
      '• Thu 5 Nov, <@UCHI>: Tide table lost an owner',
      '• Thu 5 Nov, <@UANA>: Tide table is now <@UANA>’s',
      '• Thu 5 Nov, <@UANA>: Crane log is now also <@UANA>’s',
      '• Thu 5 Nov, <@UBEN>: Pilot roster lost an owner',
      '• Thu 5 Nov, <@UBEN>: Dredging is now <@UBEN>’s',
    ]);
  });

  test('is in the verdict’s thread once for each card, without a name, and without first owners', async () => {
    const h = await changedHands();
    await h.pass('2026-11-13T17:00:00Z');
    await h.drain();
    const verdict = h.messagesTo(CHANNEL).find(({ kind }) => kind === 'verdict-cards');
    const { text } = postMessage(verdict as NonNullable<typeof verdict>);
    expect(text.slice(text.indexOf('The plan was changed'))).toBe(
      [
        'The plan was changed on Wed 4 Nov and Thu 5 Nov',
        '• Tide table changed hands',
        '• Crane log got another owner',
        '• Pilot roster lost an owner',
      ].join('\n'),
    );
  });
});
