import { describe, expect, test } from 'vitest';
import { recordAway } from '../../../src/app/answering/record-answers.ts';
import { openHomePage, refreshHomePage } from '../../../src/app/watching/home-page.ts';
import { actorOf, harnessForEach } from '../../support/app-harness.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ben = actorOf('ben');

describe('the home page', () => {
  test('is made again only for those who have opened it', async () => {
    const h = harness();
    await h.setUpTeam();
    expect(await refreshHomePage(h.deps, ben)).toBeUndefined();
    const opened = await openHomePage(h.deps, ben);
    expect(await refreshHomePage(h.deps, ben)).toEqual(opened);
    expect(await refreshHomePage(h.deps, actorOf('ana'))).toBeUndefined();
    expect(await refreshHomePage(h.deps, { ...ben, workspaceId: 'W2' })).toBeUndefined();
  });

  test('shows the member’s own open cards and how they met the day', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const { sprint } = await h.plan(team);
    await h.pass('2026-11-03T09:20:00Z');
    expect((await openHomePage(h.deps, ben)).teams).toMatchObject([
      { isPromptDay: true, promptState: 'asked', myOpenCards: [{}, {}] },
    ]);
    await recordAway(h.deps, ben, { sprintId: sprint.id, day: '2026-11-03' });
    expect((await refreshHomePage(h.deps, ben))?.teams).toMatchObject([{ promptState: 'away' }]);
  });

  test('knows the days on which nobody is asked', async () => {
    const h = harness();
    await h.plan(await h.setUpTeam());
    await h.pass('2026-11-07T10:00:00Z');
    expect((await openHomePage(h.deps, ben)).teams).toMatchObject([
      { isPromptDay: false, promptState: undefined },
    ]);
  });

  test('is empty for somebody without a team', async () => {
    const h = harness();
    await h.setUpTeam();
    expect(await openHomePage(h.deps, actorOf('dayo'))).toEqual({ teams: [] });
  });
});
