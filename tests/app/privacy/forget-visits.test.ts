import { expect, test } from 'vitest';
import { reduceSprints } from '../../../src/app/privacy/reduce-sprints.ts';
import { openHomePage } from '../../../src/app/watching/home-page.ts';
import { actorOf, harnessForEach } from '../../support/app-harness.ts';

const harness = harnessForEach('2026-10-30T12:00:00Z');

test('that somebody looked in is forgotten after a year, unless they are on a team', async () => {
  const h = harness();
  await h.setUpTeam();
  const [ben, dayo] = [actorOf('ben'), actorOf('dayo')];
  for (const person of [ben, dayo]) await openHomePage(h.deps, person);
  const known = () =>
    h.deps.store.read((read) => read.homeOpenedBy(ben.workspaceId, [ben.userId, dayo.userId]));
  h.set('2027-10-30T11:00:00Z');
  await reduceSprints(h.deps);
  expect(await known()).toHaveLength(2);
  h.set('2027-10-30T13:00:00Z');
  await reduceSprints(h.deps);
  expect(await known()).toEqual([ben.userId]);
});
