import { expect, test } from 'vitest';
import { askAdvice } from '../../../src/app/advice/ask-advice.ts';
import { jointForecast } from '../../../src/app/bodies/joint-forecast.ts';
import { endBody, keepBody } from '../../../src/app/bodies/keep-bodies.ts';
import { setUpTeam } from '../../../src/app/team/set-up-team.ts';
import type { Team } from '../../../src/app/team/team.ts';
import {
  actorOf,
  CHANNEL,
  type Harness,
  harnessForEach,
  PEOPLE,
  refusalOf,
} from '../../support/app-harness.ts';
import { importPast, missing, pastSprintsOf } from '../past-sprints.ts';

const harness = harnessForEach('2026-10-30T12:00:00Z');
const [ana, ben] = [actorOf('ana'), actorOf('ben')];

/** Another team of Ana's, without Ben, that finishes so much a sprint. */
async function otherTeam(h: Harness, channelId: string, finished: number, sprints = 5): Promise<Team> {
  const team = await setUpTeam(h.deps, ana, {
    channelId,
    name: `Crew of ${channelId}`,
    timeZone: 'Europe/Lisbon',
    promptAt: '09:15',
    workingDays: [1, 2, 3, 4, 5],
    memberIds: [PEOPLE.ana, PEOPLE.chi],
    facilitatorIds: [PEOPLE.ana],
    productOwnerId: undefined,
  });
  await importPast(h, team, pastSprintsOf(Array.from({ length: sprints }, () => missing(40, finished))));
  return team;
}

async function world() {
  const h = harness();
  const team = await h.setUpTeam();
  await importPast(h, team, pastSprintsOf(Array.from({ length: 6 }, () => ({}))));
  const keep = (of: Team, name: string, leftPoints: number) =>
    keepBody(h.deps, ana, { teamId: of.id, name, leftPoints, growth: { points: 0 } });
  await keep(team, 'Harbour lights', 60);
  const joint = (actor = ana) => jointForecast(h.deps, actor, { place: CHANNEL, reference: 'harbour' });
  return { h, team, keep, joint };
}

test('parts that teams keep by one name get one answer, whatever the case of the name', async () => {
  const { h, team, keep, joint } = await world();
  await keep(team, 'Harbour lights', 140);
  const [second, third] = [await otherTeam(h, 'C2', 10), await otherTeam(h, 'C3', 40)];
  await keep(second, 'harbour LIGHTS', 80);
  await keep(third, 'Beacons', 80);
  const { joint: answer, ...about } = await joint();
  expect(about).toMatchObject({
    name: 'Harbour lights',
    teamNames: ['Crew of C2', 'Tugboats'],
    unknownTeamNames: [],
  });
  // No later part, so not before the slower one's own date, and for sure later.
  const alone = await askAdvice(h.deps, ana, { teamId: second.id }, { about: 'kept' });
  const own = 'bodies' in alone ? alone.bodies[0]?.forecast : undefined;
  const promised = own && 'dates' in own ? own.dates[2] : undefined;
  const [, joined] = answer?.dates ?? [];
  expect(joined?.soonest).toBe(promised && 'on' in promised ? promised.on : 'no date');
  expect(String(joined?.surely) > String(joined?.soonest)).toBe(true);
});

test('nothing of a single team is in the answer: no pace, no chance, no date of one part', async () => {
  const { h, keep, joint } = await world();
  await keep(await otherTeam(h, 'C2', 10), 'Harbour lights', 80);
  expect(Object.keys(await joint()).sort()).toEqual([
    'joint',
    'name',
    'on',
    'question',
    'staleTeamNames',
    'team',
    'teamNames',
    'unknownTeamNames',
  ]);
  expect(Object.keys((await joint()).joint ?? {})).toEqual(['dates', 'curve']);
});

test('a part of a team that one may not read doesn’t count and isn’t told of', async () => {
  const { h, keep, joint } = await world();
  const second = await otherTeam(h, 'C2', 10);
  await keep(second, 'Harbour lights', 80);
  expect(await refusalOf(joint(ben), 'no-other-part')).toEqual({ body: 'Harbour lights' });
  await refusalOf(
    jointForecast(h.deps, ben, { teamId: second.id, reference: 'Harbour lights' }),
    'not-a-member',
  );
});

test('a part that can’t be forecast yet leaves no date, and says whose it is; one that is done no longer counts', async () => {
  const { h, keep, joint } = await world();
  const second = await otherTeam(h, 'C2', 10, 2);
  await keep(second, 'Harbour lights', 80);
  expect(await joint()).toMatchObject({ joint: undefined, unknownTeamNames: ['Crew of C2'] });
  await endBody(h.deps, ana, { teamId: second.id, reference: '1', how: 'done' });
  await refusalOf(joint(), 'no-other-part');
});

test('a part whose number is older than its team’s latest sprint is named', async () => {
  const { h, team, keep, joint } = await world();
  await keep(await otherTeam(h, 'C2', 10), 'Harbour lights', 80);
  h.set('2026-11-02T08:00:00Z');
  await h.plan(team, { name: 'Quay 1', startsOn: '2026-11-02', endsOn: '2026-11-06' });
  await h.pass('2026-11-06T17:00:00Z');
  expect((await joint()).staleTeamNames).toEqual(['Tugboats']);
});
