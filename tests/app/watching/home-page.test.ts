import { describe, expect, test } from 'vitest';
import { recordAway } from '../../../src/app/answering/record-answers.ts';
import { pullCards } from '../../../src/app/cards/pull-cards.ts';
import { previewPlan } from '../../../src/app/planning/plan-sprint.ts';
import { openHomePage, refreshHomePage } from '../../../src/app/watching/home-page.ts';
import { actorOf, CHANNEL, harnessForEach } from '../../support/app-harness.ts';

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

  test('sums up the team’s sprint for members and the product owner, and gives away no number of anybody else', async () => {
    const h = harness();
    const { sprint } = await h.plan(await h.setUpTeam());
    await h.pass('2026-11-03T09:20:00Z');
    await h.answer('chi', sprint.id, '2026-11-03', { 3: { left: '1', note: 'said by Chi' } });
    const page = await openHomePage(h.deps, ben);
    expect(page.teams).toMatchObject([
      { progress: { workingDays: 10, workingDaysLeft: 9, commitmentPoints: 10, leftPoints: 9 } },
    ]);
    expect(page.teams[0]?.myOpenCards.every(({ ownerIds }) => ownerIds.includes(ben.userId))).toBe(true);
    expect(JSON.stringify(page)).not.toContain('said by Chi');
    await h.setUpTeam({ productOwnerId: actorOf('dayo').userId });
    expect((await openHomePage(h.deps, actorOf('dayo'))).teams).toMatchObject([
      { progress: { leftPoints: 9 }, myOpenCards: [] },
    ]);
  });

  test('says to facilitators only what is to be done next', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const stepsOf = async (who: 'ana' | 'ben') =>
      (await openHomePage(h.deps, actorOf(who))).teams[0]?.nextSteps;
    expect(await stepsOf('ana')).toEqual([{ code: 'plan', when: 'now' }]);
    const draft = h.planInput(team, { name: 'Quay 4' });
    await previewPlan(h.deps, actorOf('ana'), draft);
    expect(await stepsOf('ana')).toEqual([{ code: 'finish-draft', sprint: 'Quay 4' }]);
    await h.plan(team);
    expect(await stepsOf('ana')).toEqual([]);
    h.set('2026-11-12T10:00:00Z');
    await pullCards(h.deps, ben, { place: CHANNEL, text: 'Fog horn, 3' });
    expect(await stepsOf('ana')).toEqual([
      { code: 'find-owners', cards: 1 },
      { code: 'plan', when: 'soon' },
    ]);
    expect(await stepsOf('ben')).toEqual([]);
  });

  test('is empty for somebody without a team', async () => {
    const h = harness();
    await h.setUpTeam();
    expect(await openHomePage(h.deps, actorOf('dayo'))).toEqual({ teams: [] });
  });
});
