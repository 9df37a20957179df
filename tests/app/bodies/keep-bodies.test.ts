import { describe, expect, test } from 'vitest';
import type { KeptAdvice } from '../../../src/app/advice/advice.ts';
import { askAdvice } from '../../../src/app/advice/ask-advice.ts';
import {
  bodyForm,
  endBody,
  type KeepInput,
  keepBody,
  orderBodies,
  renameBody,
} from '../../../src/app/bodies/keep-bodies.ts';
import { movedDates } from '../../../src/app/bodies/moved-dates.ts';
import { cancelSprint } from '../../../src/app/closing/end-sprint.ts';
import { dayPlus } from '../../../src/sprint/calendar.ts';
import {
  actorOf,
  CHANNEL,
  harnessForEach,
  PEOPLE,
  problemsOf,
  refusalOf,
} from '../../support/app-harness.ts';
import { importPast, pastSprintsOf } from '../past-sprints.ts';

// Sprints of one week each in November 2026, in Lisbon, which is on UTC then; ten points committed to.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');
const WEEKS = ['2026-11-02', '2026-11-09', '2026-11-16'] as const;

/** @param past how many sprints of 20 points each have closed before */
async function teamWith(past = 4) {
  const h = harness();
  const team = await h.setUpTeam({ productOwnerId: PEOPLE.dayo });
  await importPast(h, team, pastSprintsOf(Array.from({ length: past }, () => ({}))));
  const keep = (name: string, leftPoints: number, more: Partial<KeepInput> = {}) =>
    keepBody(h.deps, ana, { place: CHANNEL, name, leftPoints, growth: { points: 0 }, ...more } as KeepInput);
  const asked = async () =>
    (await askAdvice(h.deps, actorOf('ben'), { place: CHANNEL }, { about: 'kept' })) as KeptAdvice;
  const begin = async (week: number) => {
    const startsOn = WEEKS[week] as string;
    h.set(`${startsOn}T08:00:00Z`);
    const { sprint } = await h.plan(team, { name: `Quay ${week}`, startsOn, endsOn: dayPlus(startsOn, 4) });
    return sprint;
  };
  const play = async (week: number) => {
    const sprint = await begin(week);
    await h.pass(`${sprint.endsOn}T17:00:00Z`);
  };
  const told = () => h.read((read) => read.toldDatesOf(team.id));
  return { h, team, keep, asked, begin, play, told };
}

const likely = ({ bodies }: KeptAdvice) =>
  bodies.map(({ forecast }) => {
    const date = 'undefined' in forecast ? undefined : forecast.dates[1];
    return date && 'on' in date ? date.sprints : undefined;
  });

describe('a body of work that is kept', () => {
  test('is forecast as the same points are when they are asked about', async () => {
    const { h, keep, asked } = await teamWith();
    await keep('Harbour lights', 80);
    const question = { about: 'forecast', backlogPoints: 80, growthPoints: 0 } as const;
    const once = await askAdvice(h.deps, ana, { place: CHANNEL }, question);
    expect((await asked()).bodies[0]?.forecast).toEqual('forecast' in once && once.forecast);
  });

  test('is forecast again when a sprint closes, by the number that was said last, and what was told stays', async () => {
    const { keep, asked, play, told } = await teamWith();
    await keep('Harbour lights', 80);
    await play(0);
    await play(1);
    expect(
      (await told()).map(({ toldOn, leftPoints, sprintsSinceSaid }) => [
        toldOn,
        leftPoints,
        sprintsSinceSaid,
      ]),
    ).toEqual([
      ['2026-10-30', 80, 0],
      ['2026-11-06', 80, 1],
      ['2026-11-13', 80, 2],
    ]);
    // Two weeks in which nobody said that anything of it got done: it comes two weeks later, or more where less was finished.
    const { bodies, on } = await asked();
    const [kept] = bodies;
    expect(kept?.sprintsSinceSaid).toBe(2);
    expect(kept && movedDates(kept, on)?.lately).toMatchObject({ since: '2026-11-06' });
    expect(kept && movedDates(kept, on)?.inAll?.days).toBeGreaterThanOrEqual(14);
  });

  test('is brought up to date by keeping it again, whatever the case of its name, and by its number', async () => {
    const { h, keep, asked, play, told } = await teamWith();
    await keep('Harbour lights', 80, { growth: { points: 2, mostPoints: 4 }, sharePercent: 60 });
    await play(0);
    h.set('2026-11-06T18:00:00Z');
    const { before, body } = await keepBody(h.deps, ana, {
      place: CHANNEL,
      name: 'harbour  LIGHTS',
      leftPoints: 65,
    });
    expect([before?.leftPoints, body]).toMatchObject([
      80,
      { name: 'Harbour lights', leftPoints: 65, growthPoints: 2, growthMostPoints: 4, sharePercent: 60 },
    ]);
    expect((await asked()).bodies).toMatchObject([
      { sprintsSinceSaid: 0, told: [{ leftPoints: 80 }, { leftPoints: 65 }] },
    ]);
    // The telling of that day's closing gives way to it.
    expect(await told()).toMatchObject([
      { toldOn: '2026-10-30' },
      { toldOn: '2026-11-06', sprintsSinceSaid: 0 },
    ]);
    await keepBody(h.deps, ana, {
      place: CHANNEL,
      name: '1',
      leftPoints: 60,
      growth: 'measured',
      sharePercent: 100,
    });
    expect((await asked()).bodies.map((kept) => kept.body)).toMatchObject([
      { leftPoints: 60, growthPoints: undefined, sharePercent: undefined },
    ]);
  });

  test('is kept before anything can be forecast, and nothing is told of it until then', async () => {
    const { keep, asked, told } = await teamWith(2);
    await keep('Harbour lights', 80);
    expect((await asked()).bodies).toMatchObject([{ forecast: { undefined: { code: 'few-sprints' } } }]);
    expect(await told()).toEqual([]);
  });

  test('isn’t forecast again for a sprint that was cancelled', async () => {
    const { h, keep, begin, told } = await teamWith();
    await keep('Harbour lights', 80);
    const sprint = await begin(0);
    await cancelSprint(h.deps, ana, { sprintId: sprint.id, reason: '' });
    expect(await told()).toHaveLength(1);
  });

  test('is out of the list when it is done, with what was first told of it, and forgotten when it is removed', async () => {
    const { h, team, keep, asked, told } = await teamWith();
    await keep('Harbour lights', 40);
    await keep('Beacons', 40);
    h.set('2026-11-20T12:00:00Z');
    const done = await endBody(h.deps, ana, { place: CHANNEL, reference: 'harbour', how: 'done' });
    expect(done.told[0]).toMatchObject({ toldOn: '2026-10-30' });
    expect((await asked()).done).toMatchObject([{ body: { name: 'Harbour lights' } }]);
    expect((await asked()).bodies.map(({ body }) => body.name)).toEqual(['Beacons']);
    await endBody(h.deps, ana, { place: CHANNEL, reference: '1', how: 'removed' });
    const bodies = await h.read((read) => read.bodiesOf(team.id));
    expect(bodies.map(({ name }) => name)).toEqual(['Harbour lights']);
    expect(new Set((await told()).map(({ bodyId }) => bodyId))).toEqual(new Set([done.body.id]));
    // A name that is free again.
    await keep('Harbour lights', 10);
  });

  test('gets another name', async () => {
    const { h, keep, asked } = await teamWith();
    await keep('Harbour lights', 40);
    await renameBody(h.deps, ana, { place: CHANNEL, reference: '1', name: ' Pier  lights ' });
    expect((await asked()).bodies.map(({ body }) => body.name)).toEqual(['Pier lights']);
    await keep('Beacons', 10);
    expect(
      await problemsOf(renameBody(h.deps, ana, { place: CHANNEL, reference: '2', name: 'pier lights' })),
    ).toEqual({
      name: 'Other work is kept by that name already.',
    });
  });
});

describe('several of them', () => {
  test('are done in turn: the second is forecast as the sum of both', async () => {
    const { h, keep, asked } = await teamWith();
    await keep('Harbour lights', 40);
    await keep('Beacons', 60);
    const question = { about: 'forecast', backlogPoints: 100, growthPoints: 0 } as const;
    const sum = await askAdvice(h.deps, ana, { place: CHANNEL }, question);
    const [first, second] = (await asked()).bodies;
    expect(second?.forecast).toEqual('forecast' in sum && sum.forecast);
    expect(first?.forecast).not.toEqual(second?.forecast);
  });

  test('change places, by number and by name, and keep the order that nobody named', async () => {
    const { h, keep, asked } = await teamWith();
    for (const name of ['Lights', 'Beacons', 'Cranes']) await keep(name, 40);
    const names = async () => (await asked()).bodies.map(({ body }) => body.name);
    await orderBodies(h.deps, ana, { place: CHANNEL, references: ['3'] });
    expect(await names()).toEqual(['Cranes', 'Lights', 'Beacons']);
    await orderBodies(h.deps, ana, { place: CHANNEL, references: ['beacons', '1'] });
    expect(await names()).toEqual(['Beacons', 'Cranes', 'Lights']);
    const { body, turn } = await bodyForm(h.deps, ana, { bodyId: (await asked()).bodies[2]?.body.id ?? '' });
    expect([body?.name, turn]).toEqual(['Lights', 3]);
    await keepBody(h.deps, ana, { bodyId: body?.id ?? '', turn: 1 });
    expect(await names()).toEqual(['Lights', 'Beacons', 'Cranes']);
    await refusalOf(orderBodies(h.deps, ana, { place: CHANNEL, references: ['9'] }), 'no-such-body');
  });

  test('with a share run beside those that wait, which have the rest', async () => {
    const { keep, asked } = await teamWith();
    await keep('Lights', 40);
    const [alone] = likely(await asked());
    await keep('Beacons', 20, { sharePercent: 50 });
    const [waiting, beside] = likely(await asked());
    expect(waiting).toBeCloseTo(2 * (alone ?? 0), 1);
    expect(beside).toBeCloseTo(alone ?? 0, 1);
  });

  test('can’t have more of the sprints than there is', async () => {
    const { keep } = await teamWith();
    await keep('Lights', 40, { sharePercent: 60 });
    await keep('Beacons', 20, { sharePercent: 40 });
    expect(await problemsOf(keep('Cranes', 20))).toEqual({ sharePercent: expect.stringContaining('100%') });
  });
});

test('what can’t be kept is said at its field', async () => {
  const { keep } = await teamWith();
  expect(await problemsOf(keep('12 34', 40))).toHaveProperty('name');
  expect(await problemsOf(keep('Lights', 0))).toHaveProperty('backlogPoints');
  expect(await problemsOf(keep('Lights', 0.3))).toHaveProperty('backlogPoints');
  expect(await problemsOf(keep('Lights', 4, { growth: { points: 4, mostPoints: 2 } }))).toHaveProperty(
    'growthPoints',
  );
  expect(await problemsOf(keep('Lights', 4, { sharePercent: 0.5 }))).toHaveProperty('sharePercent');
  expect(await problemsOf(keep('Lights', 4, { turn: 0 }))).toHaveProperty('turn');
  for (let i = 1; i <= 10; i += 1) await keep(`Lights ${i}`, 4);
  expect(await problemsOf(keep('One more', 4))).toHaveProperty('name');
});
