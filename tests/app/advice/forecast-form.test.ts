import { describe, expect, test } from 'vitest';
import { askAdvice, forecastForm } from '../../../src/app/advice/ask-advice.ts';
import { actorOf, CHANNEL, harnessForEach, PEOPLE, refusalOf } from '../../support/app-harness.ts';
import { finishing, importPast, pastSprintsOf } from '../past-sprints.ts';

// Friday noon in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');

describe('what is known before a forecast', () => {
  test('is what the sprints finished that it will be made from, oldest first', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await importPast(h, team, pastSprintsOf([0, 1, 2, 3, 4, 5, 6].map((more) => finishing(20, more))));
    expect(await forecastForm(h.deps, actorOf('ben'), { place: CHANNEL })).toMatchObject({
      team: { id: team.id },
      velocities: [22, 23, 24, 25, 26],
    });
  });

  test('leaves out a sprint whose velocity an import did not tell, and is nothing without a sprint', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const ask = async () => (await forecastForm(h.deps, actorOf('ana'), { teamId: team.id })).velocities;
    expect(await ask()).toEqual([]);
    await importPast(h, team, pastSprintsOf([finishing(20, 0), { velocityPoints: undefined }]));
    expect(await ask()).toEqual([20]);
  });

  test('is for members and the product owner only', async () => {
    const h = harness();
    await h.setUpTeam();
    const dayo = actorOf('dayo');
    await refusalOf(forecastForm(h.deps, dayo, { place: CHANNEL }), 'not-a-member');
    await h.setUpTeam({ productOwnerId: PEOPLE.dayo });
    expect(await forecastForm(h.deps, dayo, { place: CHANNEL })).toMatchObject({ velocities: [] });
  });
});

test('an answer says whether the person who asked may plan next', async () => {
  const h = harness();
  await h.setUpTeam({ productOwnerId: PEOPLE.dayo });
  for (const [name, may] of [
    ['ana', true],
    ['ben', false],
    ['dayo', false],
  ] as const) {
    const advice = await askAdvice(h.deps, actorOf(name), { place: CHANNEL }, { about: 'odds' });
    expect(advice.askerIsFacilitator).toBe(may);
  }
});
