import { describe, expect, test } from 'vitest';
import { recordAway } from '../../../src/app/answering/record-answers.ts';
import { blockCard } from '../../../src/app/cards/change-cards.ts';
import { pullCards } from '../../../src/app/cards/pull-cards.ts';
import { closeSprint } from '../../../src/app/closing/end-sprint.ts';
import { overview } from '../../../src/app/watching/overview.ts';
import {
  shareStatus,
  sprintStatus,
  statusBurndown,
  statusChart,
} from '../../../src/app/watching/sprint-status.ts';
import type { Burndown } from '../../../src/sprint/burndown.ts';
import {
  actorOf,
  CHANNEL,
  directMessagesOf,
  harnessForEach,
  PEOPLE,
  refusalOf,
} from '../../support/app-harness.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ben = actorOf('ben');

async function running() {
  const h = harness();
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team);
  await h.pass('2026-11-03T09:15:00Z');
  return { h, team, sprint };
}

describe('the status', () => {
  test('shows days, answers, growth without names, and, without history, the pace', async () => {
    const { h, sprint } = await running();
    await h.answer('ben', sprint.id, '2026-11-02', {
      1: { left: '6', worked: '1', surprise: '2', note: 'a new rule' },
    });
    await h.answer('ben', sprint.id, '2026-11-03', { 1: { left: '3', worked: '2', note: 'easier' } });
    const status = await sprintStatus(h.deps, ben, CHANNEL);
    expect(status).toMatchObject({
      on: '2026-11-03',
      begun: true,
      workingDays: 10,
      workingDaysLeft: 8,
      asked: 2,
      answered: 1,
      // Left 3 + 3 + 2, worked 3 in two days, eight days to go, load 12.
      load: { from: 'pace', pace: { signal: 'light', projectedLeftPoints: 8 - 1.5 * 8 }, ownSprints: 0 },
      summary: { totals: { loadPoints: 12, workedPoints: 3, openLeftPoints: 8 } },
    });
    expect(status.growth.map(({ card, ...growth }) => ({ number: card.number, ...growth }))).toEqual([
      { number: 1, day: '2026-11-03', surprisePoints: 0, driftPoints: -1, note: 'easier' },
      { number: 1, day: '2026-11-02', surprisePoints: 2, driftPoints: 0, note: 'a new rule' },
    ]);
  });

  test('says which cards are blocked, on what, and on how many evenings cards were', async () => {
    const { h } = await running();
    await blockCard(h.deps, ben, { place: CHANNEL, reference: '1', on: 'waiting for the key' });
    const before = await sprintStatus(h.deps, ben, CHANNEL);
    expect(before.summary.blockedCardDays).toBe(0);
    await h.pass('2026-11-05T09:15:00Z');
    const status = await sprintStatus(h.deps, ben, CHANNEL);
    expect(status.cards.map(({ blocked }) => blocked)).toEqual([
      { since: '2026-11-03', on: 'waiting for the key' },
      undefined,
      undefined,
    ]);
    // The evenings of Tuesday and Wednesday.
    expect(status.summary.blockedCardDays).toBe(2);
  });

  test('counts who is away as having met the day', async () => {
    const { h, sprint } = await running();
    await recordAway(h.deps, ben, { sprintId: sprint.id, day: '2026-11-03' });
    expect(await sprintStatus(h.deps, ben, CHANNEL)).toMatchObject({ asked: 2, answered: 1 });
  });

  test('says why there is no pace yet', async () => {
    const { h } = await running();
    expect((await sprintStatus(h.deps, ben, CHANNEL)).load).toMatchObject({
      from: 'pace',
      pace: { signal: undefined, because: { code: 'few-days', needed: 2 } },
    });
  });

  test('of a sprint that is still to come says so', async () => {
    const h = harness();
    await h.plan(await h.setUpTeam());
    expect(await sprintStatus(h.deps, ben, directMessagesOf('ben'))).toMatchObject({
      begun: false,
      workingDaysLeft: 10,
    });
  });

  test('without a sprint is refused', async () => {
    const h = harness();
    await h.setUpTeam();
    await refusalOf(sprintStatus(h.deps, ben, CHANNEL), 'no-sprint-running');
  });

  test('has a chart up to today', async () => {
    const { h, sprint } = await running();
    const image = await statusChart(h.deps, ben, sprint.id);
    expect(image).toMatchObject({ fileName: 'burndown.png', altText: 'Burndown of Harbour 12' });
    expect(h.charts.burndowns.at(-1)).toMatchObject({ today: '2026-11-03', commitmentPoints: 10 });
  });

  test('ends its chart in the evening before, as long as less than half of those asked have answered', async () => {
    const { h, sprint } = await running();
    const ends = async () => {
      await statusChart(h.deps, ben, sprint.id);
      const { days } = h.charts.burndowns.at(-1) as Burndown;
      return days.findLast(({ leftPoints }) => leftPoints !== undefined)?.day;
    };
    h.set('2026-11-04T08:00:00Z');
    expect(await ends()).toBe('2026-11-03');
    await h.pass('2026-11-04T09:15:00Z');
    expect(await ends()).toBe('2026-11-03');
    await h.answer('ben', sprint.id, '2026-11-04', { 1: { left: '4' } });
    expect(await ends()).toBe('2026-11-04');
  });

  test('is drawn from what was read for its words, as the same chart that is asked for by itself', async () => {
    const { h, sprint } = await running();
    await h.answer('ben', sprint.id, '2026-11-03', { 1: { left: '4' } });
    const status = await sprintStatus(h.deps, ben, CHANNEL);
    const read = () => Promise.reject(new Error('nothing is read again'));
    await statusBurndown({ ...h.deps, store: { ...h.deps.store, read, transaction: read } }, ben, status);
    await statusChart(h.deps, ben, sprint.id);
    const [drawn, asked] = h.charts.burndowns.slice(-2);
    expect(drawn?.days.findLast(({ leftPoints }) => leftPoints !== undefined)?.day).toBe('2026-11-03');
    expect(drawn).toEqual(asked);
  });

  test('reaches the channel only when somebody shares it', async () => {
    const { h, sprint } = await running();
    await sprintStatus(h.deps, ben, CHANNEL);
    await h.drain();
    expect(h.kindsTo(CHANNEL)).toEqual(['plan']);
    await shareStatus(h.deps, ben, { sprintId: sprint.id });
    await h.drain();
    expect(h.messagesTo(CHANNEL).at(-1)).toMatchObject({
      kind: 'shared-status',
      byUserId: PEOPLE.ben,
      status: { on: '2026-11-03' },
    });
    expect(h.messenger.messages.at(-1)?.image?.altText).toBe('Burndown of Harbour 12');
  });

  test('of a sprint that is over is not shared', async () => {
    const { h, sprint } = await running();
    await closeSprint(h.deps, actorOf('ana'), { place: CHANNEL });
    await refusalOf(shareStatus(h.deps, ben, { sprintId: sprint.id }), 'sprint-over');
  });
});

describe('the overview', () => {
  test('shows the caller’s open cards, how today was met, and what they may do', async () => {
    const { h, team, sprint } = await running();
    await h.answer('ben', sprint.id, '2026-11-03', { 1: { left: '0' } });
    const { teams, canSetUpHere } = await overview(h.deps, ben, CHANNEL);
    expect(canSetUpHere).toBe(false);
    expect(teams).toMatchObject([
      {
        team: { id: team.id },
        sprint: { id: sprint.id },
        begun: true,
        isFacilitator: false,
        myOpenCards: [{ number: 3 }],
        promptState: 'answered',
        today: '2026-11-03',
        reopenable: false,
      },
    ]);
    const anas = (await overview(h.deps, actorOf('ana'), directMessagesOf('ana'))).teams[0];
    expect(anas).toMatchObject({ isFacilitator: true, myOpenCards: [], promptState: undefined });
  });

  test('offers to set up only in a channel without a team', async () => {
    const { h } = await running();
    const elsewhere = await overview(h.deps, ben, { channelId: 'C2', isDirect: false });
    expect(elsewhere).toEqual({ teams: [], canSetUpHere: true });
    expect((await overview(h.deps, ben, directMessagesOf('ben'))).canSetUpHere).toBe(false);
  });

  test('shows the product owner who is no member the team, without cards and answers', async () => {
    const { h, team, sprint } = await running();
    await h.setUpTeam({ productOwnerId: PEOPLE.dayo });
    for (const place of [CHANNEL, directMessagesOf('dayo')]) {
      const { teams, canSetUpHere } = await overview(h.deps, actorOf('dayo'), place);
      expect(canSetUpHere).toBe(false);
      expect(teams).toMatchObject([
        {
          team: { id: team.id },
          sprint: { id: sprint.id },
          isMember: false,
          isProductOwner: true,
          isFacilitator: false,
          myOpenCards: [],
          promptState: undefined,
          hasFinishedSprint: false,
        },
      ]);
    }
  });

  test('shows a member who is the product owner once, as both', async () => {
    const { h } = await running();
    await h.setUpTeam({ productOwnerId: PEOPLE.ben });
    const { teams } = await overview(h.deps, ben, directMessagesOf('ben'));
    expect(teams).toMatchObject([{ isMember: true, isProductOwner: true, myOpenCards: [{}, {}] }]);
    expect((await overview(h.deps, actorOf('ana'), directMessagesOf('ana'))).teams).toMatchObject([
      { isMember: true, isProductOwner: false },
    ]);
  });

  test('takes the cards from a product owner who is a member no more', async () => {
    const { h } = await running();
    await h.setUpTeam({ memberIds: [PEOPLE.ana, PEOPLE.chi], productOwnerId: PEOPLE.ben });
    expect((await overview(h.deps, ben, CHANNEL)).teams).toMatchObject([
      { isMember: false, isProductOwner: true, isFacilitator: false, myOpenCards: [] },
    ]);
  });

  test('knows whether a sprint is over', async () => {
    const { h } = await running();
    const isOver = async () => (await overview(h.deps, ben, CHANNEL)).teams[0]?.hasFinishedSprint;
    expect(await isOver()).toBe(false);
    await closeSprint(h.deps, actorOf('ana'), { place: CHANNEL });
    expect(await isOver()).toBe(true);
  });

  test('shows a stranger nothing', async () => {
    const { h } = await running();
    for (const place of [CHANNEL, directMessagesOf('dayo')]) {
      expect(await overview(h.deps, actorOf('dayo'), place)).toEqual({ teams: [], canSetUpHere: false });
    }
  });

  test('offers reopening until closing time on the next working day', async () => {
    const { h } = await running();
    await pullCards(h.deps, ben, { place: CHANNEL, text: 'Fog horn, 3, @Ben' });
    await closeSprint(h.deps, actorOf('ana'), { place: CHANNEL });
    const isReopenable = async () => (await overview(h.deps, actorOf('ana'), CHANNEL)).teams[0]?.reopenable;
    expect(await isReopenable()).toBe(true);
    h.set('2026-11-04T17:00:00Z');
    expect(await isReopenable()).toBe(false);
  });
});
