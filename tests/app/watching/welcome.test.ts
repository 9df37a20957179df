import { describe, expect, test } from 'vitest';
import { openHomePage, refreshHomePage } from '../../../src/app/watching/home-page.ts';
import { beginWelcome, takeBackWelcome } from '../../../src/app/watching/welcome.ts';
import { actorOf, harnessForEach, PEOPLE } from '../../support/app-harness.ts';

const harness = harnessForEach('2026-10-30T12:00:00Z');
const ben = actorOf('ben');

describe('the welcome', () => {
  test('comes once for each person, and names their teams', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    expect(await beginWelcome(h.deps, ben)).toEqual({ teamNames: [team.name], isAsked: true });
    expect(await beginWelcome(h.deps, ben)).toBeUndefined();
    expect(await beginWelcome(h.deps, actorOf('dayo'))).toEqual({ teamNames: [], isAsked: false });
  });

  test('tells a facilitator and a product owner who are no members nothing about answers', async () => {
    const h = harness();
    const { name } = await h.setUpTeam({ memberIds: [PEOPLE.ben], productOwnerId: PEOPLE.dayo });
    for (const who of ['ana', 'dayo'] as const)
      expect(await beginWelcome(h.deps, actorOf(who))).toEqual({ teamNames: [name], isAsked: false });
  });

  test('comes again after it could not be sent, and the home page stays known as opened', async () => {
    const h = harness();
    await openHomePage(h.deps, ben);
    await beginWelcome(h.deps, ben);
    await takeBackWelcome(h.deps, ben);
    expect(await beginWelcome(h.deps, ben)).toBeDefined();
    expect(await refreshHomePage(h.deps, ben)).toBeDefined();
    await beginWelcome(h.deps, actorOf('dayo'));
    await takeBackWelcome(h.deps, actorOf('dayo'));
    expect(await beginWelcome(h.deps, actorOf('dayo'))).toBeDefined();
  });
});
