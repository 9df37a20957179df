import { describe, expect, test } from 'vitest';
import { recordUnchanged } from '../../../src/app/answering/record-answers.ts';
import { pullCards, pullForm } from '../../../src/app/cards/pull-cards.ts';
import type { PullInCheck, PullInSize } from '../../../src/app/cards/pull-in-check.ts';
import { closeSprint, reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import type { PastCard, PastSprint } from '../../../src/app/history/past-sprint.ts';
import { sprintStatus } from '../../../src/app/watching/sprint-status.ts';
import type { PullInChance, PullInRecord } from '../../../src/forecast/pull-in-chance.ts';
import { DEFAULT_SCALE } from '../../../src/sprint/scale.ts';
import { actorOf, CHANNEL, type Harness, harnessForEach } from '../../support/app-harness.ts';
import { finishing, importPast, missing, pastSprintsOf } from '../past-sprints.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then; 10 points committed.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ben = actorOf('ben');

/** Everything finished evenly over ten working days. */
function watched(points: number, cards: readonly PastCard[] = []): Partial<PastSprint> {
  const trace = Array.from({ length: 11 }, (_, i) => ({
    cardPoints: points,
    finishedPoints: Math.round((points * i) / 10),
    underwayPoints: 0,
  }));
  return { ...finishing(points, 0), trace, cards };
}

async function running(past: readonly Partial<PastSprint>[]) {
  const { h, team, sprint } = await unanswered(past);
  await recordUnchanged(h.deps, ben, { sprintId: sprint.id, day: '2026-11-05' });
  return { h, team, sprint };
}

async function unanswered(past: readonly Partial<PastSprint>[]) {
  const h = harness();
  const team = await h.setUpTeam();
  if (past.length > 0) await importPast(h, team, pastSprintsOf(past));
  const { sprint } = await h.plan(team);
  await h.pass('2026-11-06T09:15:00Z');
  return { h, team, sprint };
}

async function checkOf(h: Harness): Promise<PullInCheck> {
  return (await pullForm(h.deps, ben, CHANNEL)).check;
}

function chanceOf(check: PullInCheck, points: number): PullInChance {
  const { chance } = check.sizes.find(({ estimatePoints }) => estimatePoints === points) as PullInSize;
  if ('undefined' in chance) throw new Error(chance.undefined.code);
  return chance;
}

describe('the check before a card is pulled in', () => {
  test('tells no chance where the status tells none, since nobody has answered for days', async () => {
    const { h } = await unanswered(Array.from({ length: 6 }, () => watched(14)));
    const because = { undefined: { code: 'nobody-answered' } };
    expect((await checkOf(h)).sizes.map(({ chance }) => chance)).toEqual(DEFAULT_SCALE.map(() => because));
    expect((await sprintStatus(h.deps, ben, CHANNEL)).load).toEqual({
      from: 'nothing',
      because: because.undefined,
    });
  });

  test('gives each size of the scale both chances, the smaller the likelier, done first the likelier', async () => {
    const { h } = await running(Array.from({ length: 6 }, () => watched(14)));
    const check = await checkOf(h);
    expect(check).toMatchObject({ openPoints: 10, ownSprints: 6, pulledIn: { cards: 0, finished: 0 } });
    expect(check.sizes.map(({ estimatePoints }) => estimatePoints)).toEqual(DEFAULT_SCALE);
    const chances = DEFAULT_SCALE.map((points) => chanceOf(check, points));
    for (const [i, { afterOpenWork, doneFirst }] of chances.entries()) {
      expect(afterOpenWork).toBeLessThanOrEqual(doneFirst);
      expect(doneFirst).toBeLessThanOrEqual(chances[i - 1]?.doneFirst ?? 1);
      expect(afterOpenWork).toBeLessThanOrEqual(chances[i - 1]?.afterOpenWork ?? 1);
    }
    expect(chances[0]?.doneFirst).toBeGreaterThan(0.8);
    expect(chances.at(-1)?.doneFirst).toBeLessThan(0.25);
  });

  test('sees room where a team that pulls nothing in has always had time to spare', async () => {
    const { h, sprint } = await running(Array.from({ length: 8 }, () => watched(20)));
    await h.answer('ben', sprint.id, '2026-11-05', { 1: { left: '0' }, 3: { left: '0' } });
    await h.answer('chi', sprint.id, '2026-11-05', { 2: { left: '0' } });
    const check = await checkOf(h);
    expect(check.openPoints).toBe(0);
    // At least 12 points were finished in the later six tenths of each past sprint.
    expect(chanceOf(check, 5).afterOpenWork).toBeGreaterThan(0.8);
  });

  test('counts in the surprise work that cards of the size tend to hold', async () => {
    const cards = (surprisePoints: number): PastCard[] =>
      Array.from({ length: 6 }, () => ({ estimatePoints: 3, surprisePoints }));
    const { h } = await running(Array.from({ length: 6 }, () => watched(14, cards(0))));
    const plain = chanceOf(await checkOf(h), 3).doneFirst;
    await h.write(async (tx) => {
      const team = await tx.read.teamByChannel('W1', CHANNEL.channelId);
      for (const past of await tx.read.pastSprintsOf(team?.id ?? '')) {
        const { name: _n, startsOn: _s, importedAt: _i, recordedValue: _v, ...left } = past;
        await tx.write.history.savePastSprint({
          ...left,
          cards: cards(4),
          workspaceId: 'W1',
          recordedAt: new Date(0),
        });
      }
    });
    expect(chanceOf(await checkOf(h), 3).doneFirst).toBeLessThan(plain);
  });

  test('shows the record of cards like it, pulled in with about as much work a day', async () => {
    const pulledIn = (finished: boolean): PastCard => ({
      estimatePoints: 3,
      surprisePoints: 0,
      pulledIn: { workingDaysLeft: 6, finished },
    });
    const { h } = await running([
      watched(10, [pulledIn(true), pulledIn(true), pulledIn(false)]),
      watched(10, [pulledIn(true), pulledIn(true), pulledIn(false)]),
    ]);
    const check = await checkOf(h);
    expect(check.pulledIn).toEqual({ cards: 6, finished: 4 });
    const three = check.sizes.find(({ estimatePoints }) => estimatePoints === 3);
    expect(three?.record as PullInRecord).toMatchObject({ finished: 4, cards: 6, comparable: true });
    const huge = check.sizes.find(({ estimatePoints }) => estimatePoints === 21);
    expect(huge?.record as PullInRecord).toMatchObject({ cards: 6, comparable: false });
  });

  test('below three closed sprints gives no chance, and says how many there are', async () => {
    const { h } = await running([watched(10)]);
    expect((await checkOf(h)).sizes[0]?.chance).toEqual({
      undefined: { code: 'few-sprints', needed: 3, known: 1, having: 'closed' },
    });
  });

  test('on the last evening and in a reopened sprint says why there is no chance', async () => {
    const { h, sprint } = await running(Array.from({ length: 4 }, () => watched(10)));
    await h.pass('2026-11-13T09:15:00Z');
    expect(chanceOf(await checkOf(h), 1).doneFirst).toBeGreaterThan(0);
    await h.answer('ben', sprint.id, '2026-11-13', { 1: { left: '0' } });
    const because = async () => {
      const [size] = (await checkOf(h)).sizes;
      return size && 'undefined' in size.chance ? size.chance.undefined : 'a chance';
    };
    expect(await because()).toEqual({ code: 'last-day-over' });
    await closeSprint(h.deps, actorOf('ana'), { place: CHANNEL });
    await reopenSprint(h.deps, actorOf('ana'), { place: CHANNEL });
    expect(await because()).toEqual({ code: 'corrections-only' });
  });
});

test('the reply to a card that was pulled in shows its chance as it was before it came in', async () => {
  const { h } = await running(Array.from({ length: 6 }, () => watched(14)));
  const before = chanceOf(await checkOf(h), 3);
  const { check } = await pullCards(h.deps, ben, { place: CHANNEL, text: 'Fog horn, 3, @Ben' });
  expect(check?.sizes).toHaveLength(1);
  expect(check && chanceOf(check, 3)).toEqual(before);
  expect((await checkOf(h)).openPoints).toBe(13);
});

describe('after a card came in, the status tells the chance that the check told before', () => {
  const imported = [18, 12, 16, 19, 14, 15].map((points) => missing(20, points));
  test.each([
    ['of an imported past', imported],
    ['of a past that was watched', Array.from({ length: 6 }, () => watched(14))],
  ])('%s', async (_, past) => {
    const { h } = await running(past);
    const told = chanceOf(await checkOf(h), 13).afterOpenWork;
    await pullCards(h.deps, ben, { place: CHANNEL, text: 'Fog horn, 13, @Ben' });
    const { load } = await sprintStatus(h.deps, ben, CHANNEL);
    if (load.from !== 'projection') throw new Error(load.from);
    expect(told).toBeCloseTo(load.reading.allFinishedChance, 12);
  });

  test('and no card is likelier done first than the open work of its size', async () => {
    const { h } = await running(imported);
    await pullCards(h.deps, ben, { place: CHANNEL, text: 'Fog horn, 3, @Ben' });
    const { openPoints } = await checkOf(h);
    expect(openPoints).toBe(13);
    const { load } = await sprintStatus(h.deps, ben, CHANNEL);
    if (load.from !== 'projection') throw new Error(load.from);
    expect(chanceOf(await checkOf(h), 13).doneFirst).toBeCloseTo(load.reading.allFinishedChance, 12);
  });
});
