import { describe, expect, test } from 'vitest';
import { askAdvice } from '../../../src/app/advice/ask-advice.ts';
import { closeSprint, reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import { baselineForm, nameBaseline } from '../../../src/app/history/name-baseline.ts';
import type { PastSprint } from '../../../src/app/history/past-sprint.ts';
import { setMeasures } from '../../../src/app/team/set-measures.ts';
import { sprintStatus } from '../../../src/app/watching/sprint-status.ts';
import { actorOf, CHANNEL, harnessForEach, PEOPLE, refusalOf } from '../../support/app-harness.ts';
import { typedMeasures } from '../../support/typed-measures.ts';
import { importPast, pastSprintsOf, withVelocity } from '../past-sprints.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');

const PAST = [withVelocity(undefined), withVelocity(0), withVelocity(10), withVelocity(20), withVelocity(30)];

async function withPast(past: readonly Partial<PastSprint>[] = PAST) {
  const h = harness();
  const team = await h.setUpTeam({ productOwnerId: PEOPLE.dayo });
  const sprints = await importPast(h, team, pastSprintsOf(past));
  const named = (sprintName: string) =>
    nameBaseline(h.deps, ana, {
      place: CHANNEL,
      sprint: sprintName === 'first' || sprintName === 'first-three' ? sprintName : { sprintName },
    });
  const stored = async () => (await h.read((read) => read.teamById(team.id)))?.baselineSprintId;
  return { h, team, sprints, named, stored };
}

describe('the baseline sprint', () => {
  test('is the first with a velocity above 0 until one is named, and can become it again', async () => {
    const { sprints, named, stored } = await withPast();
    expect(await named('harbour 4')).toMatchObject({
      baseline: { name: 'Harbour 4', velocityPoints: 20 },
      isFirst: false,
      before: { name: 'Harbour 3' },
      latest: { name: 'Harbour 5', growthBefore: 3, growthAfter: 1.5 },
    });
    expect(await stored()).toBe(sprints[3]?.sprintId);
    expect(await named('first')).toMatchObject({
      baseline: { name: 'Harbour 3' },
      isFirst: true,
      before: { name: 'Harbour 4' },
      latest: { growthBefore: 1.5, growthAfter: 3 },
    });
    expect(await stored()).toBeUndefined();
  });

  test('can be the median of the first three, for verdicts, history and export', async () => {
    const { h, team, named, stored } = await withPast([
      ...PAST.slice(0, 4),
      withVelocity(6),
      withVelocity(40),
    ]);
    await named('Harbour 4');
    expect(await named('first-three')).toMatchObject({
      baseline: { rule: 'first-three', velocityPoints: 10 },
      isFirst: false,
      before: { name: 'Harbour 4' },
      latest: { name: 'Harbour 6', growthBefore: 2, growthAfter: 4 },
    });
    expect(await stored()).toBeUndefined();
    expect((await named('first-three')).before).toBeUndefined();
    const { sprint } = await h.plan(team);
    await h.pass('2026-11-02T09:15:00Z');
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '0' } });
    await h.pass('2026-11-13T17:00:00Z');
    const summary = (await h.read((read) => read.latestResult(sprint.id)))?.summary;
    expect([summary?.ratios.velocityGrowth, summary?.baseline]).toEqual([0.5, 'first-three']);
    const history = await askAdvice(h.deps, ana, { place: CHANNEL }, { about: 'history' });
    expect(history).toMatchObject({
      velocityBaseline: { baseline: { velocityPoints: 10 }, sprintId: undefined },
    });
  });

  test('is none before the third sprint closes, which counts among the three', async () => {
    const { h, team, named } = await withPast([withVelocity(2), withVelocity(20)]);
    expect(await named('first-three')).toMatchObject({
      baseline: { rule: 'first-three', velocityPoints: undefined },
      before: { name: 'Harbour 1' },
      latest: undefined,
    });
    const { sprint } = await h.plan(team);
    await h.pass('2026-11-02T09:15:00Z');
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '0' } });
    const { summary: running } = await sprintStatus(h.deps, ana, CHANNEL);
    expect(running.ratios.velocityGrowth).toEqual({ undefined: { code: 'no-baseline' } });
    await h.pass('2026-11-13T17:00:00Z');
    // 5 points, by the median of 2, 20 and 5.
    const summary = (await h.read((read) => read.latestResult(sprint.id)))?.summary;
    expect([summary?.ratios.velocityGrowth, summary?.baseline]).toEqual([1, 'first-three']);
  });

  test('shows growth for each member-day where the team is not as large as then', async () => {
    const { h, team, named } = await withPast([
      { name: 'Harbour 1', ...withVelocity(10), memberDays: 60 },
      withVelocity(10),
    ]);
    const { sprint } = await h.plan(team);
    await h.pass('2026-11-02T09:15:00Z');
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '0' } });
    await h.pass('2026-11-13T17:00:00Z');
    const summary = (await h.read((read) => read.latestResult(sprint.id)))?.summary;
    // 5 points in 10 days of 3 people, by 10 points in 60 member-days.
    expect([summary?.ratios.velocityGrowth, summary?.growthPerMemberDay]).toEqual([0.5, 1]);
    await named('Harbour 2');
    h.set('2026-11-16T08:00:00Z');
    await reopenSprint(h.deps, ana, { place: CHANNEL });
    await closeSprint(h.deps, ana, { place: CHANNEL });
    const again = (await h.read((read) => read.latestResult(sprint.id)))?.summary;
    expect([again?.ratios.velocityGrowth, again?.growthPerMemberDay]).toEqual([0.5, undefined]);
  });

  test('named as it is says that nothing changed, and stays named when other sprints come in before it', async () => {
    const { sprints, named, stored } = await withPast();
    expect((await named('Harbour 3')).before).toBeUndefined();
    expect(await stored()).toBe(sprints[2]?.sprintId);
  });

  test('that is the latest sprint leaves no growth to show', async () => {
    const { named } = await withPast();
    expect((await named('Harbour 5')).latest).toBeUndefined();
  });

  test('counts in the next verdict; the one that is posted stays', async () => {
    const { h, team, named } = await withPast();
    const { sprint } = await h.plan(team);
    await h.pass('2026-11-02T09:15:00Z');
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '0' } });
    await h.pass('2026-11-13T17:00:00Z');
    const growth = async (id: string) =>
      (await h.read((read) => read.latestResult(id)))?.summary.ratios.velocityGrowth;
    // 5 points, by 10.
    expect(await growth(sprint.id)).toBe(0.5);
    await named('Harbour 4');
    expect(await growth(sprint.id)).toBe(0.5);
    h.set('2026-11-16T08:00:00Z');
    const { sprint: next } = await h.plan(team, {
      name: 'Harbour 13',
      startsOn: '2026-11-16',
      endsOn: '2026-11-20',
    });
    await h.answer('ben', next.id, '2026-11-16', { 1: { left: '0' } });
    await h.pass('2026-11-20T17:00:00Z');
    expect(await growth(next.id)).toBe(0.25);
  });

  test('must have a velocity, be closed, and be there', async () => {
    const { h, team, named, stored } = await withPast();
    await h.plan(team);
    expect(await refusalOf(named('Harbour 1'), 'no-velocity')).toEqual({
      sprintName: 'Harbour 1',
      finishedPoints: undefined,
    });
    expect((await refusalOf(named('Harbour 2'), 'no-velocity')).finishedPoints).toBe(0);
    await refusalOf(named('Harbour 12'), 'sprint-not-closed');
    await refusalOf(named('Quay'), 'no-such-sprint');
    expect(await stored()).toBeUndefined();
  });

  test('waits for a closed sprint in which something was finished', async () => {
    const { h, named } = await withPast(PAST.slice(0, 2));
    expect((await refusalOf(named('first'), 'no-closed-sprint')).withVelocity).toBe(true);
    await refusalOf(baselineForm(h.deps, ana, CHANNEL), 'no-closed-sprint');
  });

  test('is for facilitators to choose, not for members or the product owner', async () => {
    const { h, named, stored } = await withPast();
    for (const [who, code] of [
      ['ben', 'not-a-facilitator'],
      ['dayo', 'not-a-member'],
    ] as const) {
      const actor = actorOf(who);
      await refusalOf(
        nameBaseline(h.deps, actor, { place: CHANNEL, sprint: { sprintName: 'Harbour 4' } }),
        code,
      );
      await refusalOf(baselineForm(h.deps, actor, CHANNEL), code);
    }
    expect(await stored()).toBeUndefined();
    await named('Harbour 4');
    expect(await stored()).toBeDefined();
  });

  test('of another team is refused, though its id is real', async () => {
    const { h, sprints } = await withPast();
    const other = await h.setUpTeam({ channelId: 'C2' });
    await importPast(h, other, pastSprintsOf(PAST));
    const attempt = nameBaseline(h.deps, ana, {
      teamId: other.id,
      sprint: { sprintId: sprints[3]?.sprintId ?? '' },
    });
    await refusalOf(attempt, 'no-such-sprint');
  });

  test('stays when the team’s people or measures are changed', async () => {
    const { h, team, sprints, named, stored } = await withPast();
    await named('Harbour 4');
    await h.setUpTeam({ name: 'Pilots' });
    await setMeasures(h.deps, ana, {
      teamId: team.id,
      ...typedMeasures({ closesAt: '16:00', scale: '1, 2, 3' }),
    });
    expect(await stored()).toBe(sprints[3]?.sprintId);
  });
});

describe('the form', () => {
  test('offers sprints with a velocity, the latest first, and says which one is named', async () => {
    const { h, named } = await withPast();
    const names = async () => {
      const form = await baselineForm(h.deps, ana, CHANNEL);
      return [form.choices.map(({ name }) => name), form.first.name, form.named?.name, form.leftOut];
    };
    const choices = ['Harbour 5', 'Harbour 4', 'Harbour 3'];
    expect(await names()).toEqual([choices, 'Harbour 3', undefined, 0]);
    await named('Harbour 4');
    expect(await names()).toEqual([choices, 'Harbour 3', 'Harbour 4', 0]);
  });

  test('holds 99 sprints, and counts those that are too old for it', async () => {
    const { h } = await withPast(Array.from({ length: 102 }, () => withVelocity(5)));
    const { choices, first, leftOut } = await baselineForm(h.deps, ana, CHANNEL);
    expect([choices.length, choices.at(-1)?.name, first.name, leftOut]).toEqual([
      99,
      'Harbour 4',
      'Harbour 1',
      3,
    ]);
  });
});
