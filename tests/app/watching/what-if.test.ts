import { describe, expect, test } from 'vitest';
import { recordUnchanged } from '../../../src/app/answering/record-answers.ts';
import { pullCards } from '../../../src/app/cards/pull-cards.ts';
import { sprintStatus } from '../../../src/app/watching/sprint-status.ts';
import { askWhatIf, type WhatIfQuestion, whatIfForm } from '../../../src/app/watching/what-if.ts';
import { actorOf, CHANNEL, harnessForEach, problemsOf } from '../../support/app-harness.ts';
import { importPast, missing, pastSprintsOf } from '../past-sprints.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then; 10 points committed.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ben = actorOf('ben');

async function running(sprints: number) {
  const h = harness();
  const team = await h.setUpTeam();
  const past = Array.from({ length: sprints }, (_, i) => missing(10, 5 + (i % 6)));
  if (sprints > 0) await importPast(h, team, pastSprintsOf(past));
  const { sprint } = await h.plan(team);
  await h.pass('2026-11-06T09:15:00Z');
  await recordUnchanged(h.deps, ben, { sprintId: sprint.id, day: '2026-11-05' });
  await pullCards(h.deps, ben, { place: CHANNEL, text: 'Fog horn, 3, @Ben' });
  const ask = (question: Partial<WhatIfQuestion>) =>
    askWhatIf(h.deps, ben, { sprintId: sprint.id, without: '', awayDays: '', morePoints: '', ...question });
  return { h, sprint, ask };
}

describe('what if', () => {
  test('begins with the chances that the status tells, and leaves everything as it is', async () => {
    const { h, ask } = await running(8);
    const before = await sprintStatus(h.deps, ben, CHANNEL);
    const { chances } = await ask({ awayDays: '1' });
    if (before.load.from !== 'projection') throw new Error(before.load.from);
    expect(chances?.now.kept).toBeCloseTo(before.load.reading.keepingChance as number, 12);
    expect(chances?.now.all).toBeCloseTo(before.load.reading.allFinishedChance, 12);
    expect((await sprintStatus(h.deps, ben, CHANNEL)).summary).toEqual(before.summary);
  });

  test('without a card that was pulled in it looks better, with somebody away or more points worse', async () => {
    const { h, sprint, ask } = await running(8);
    const { cards } = await whatIfForm(h.deps, ben, { sprintId: sprint.id });
    expect(cards.map(({ number }) => number)).toEqual([1, 2, 3, 4]);
    const without = await ask({ without: '4' });
    expect(without.without?.title).toBe('Fog horn');
    expect(without.chances?.changed.kept).toBeGreaterThan(without.chances?.now.kept as number);
    const away = await ask({ awayDays: '2' });
    // Three people, six days to come.
    expect(away.memberDaysLeft).toBe(18);
    expect(away.chances?.changed.kept).toBeLessThan(away.chances?.now.kept as number);
    const more = await ask({ morePoints: '2' });
    expect(more.chances?.changed.all).toBeLessThan(more.chances?.now.all as number);
  });

  test('tells no chances before the team has three closed sprints', async () => {
    const { ask } = await running(2);
    expect(await ask({ morePoints: '2' })).toMatchObject({ chances: undefined, load: { from: 'pace' } });
  });

  test('says what can’t be read', async () => {
    const { ask } = await running(0);
    expect(Object.keys(await problemsOf(ask({ awayDays: '19', morePoints: 'some' })))).toEqual([
      'awayDays',
      'morePoints',
    ]);
    expect(await problemsOf(ask({}))).toEqual({
      awayDays: 'Say at least one thing: a card, days away, or points.',
    });
  });
});
