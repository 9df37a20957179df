/** A team that was ended, and that everybody has left: whoever may set one up in its channel takes it over. */
import { describe, expect, test } from 'vitest';
import { commitPlan, previewPlan } from '../../../src/app/planning/plan-sprint.ts';
import { letGoOfOld } from '../../../src/app/privacy/ended-teams.ts';
import { erasePerson } from '../../../src/app/privacy/erase-person.ts';
import { DAYS_UNTIL_FINAL } from '../../../src/app/privacy/promised-times.ts';
import { endTeam, resumeTeam } from '../../../src/app/team/end-team.ts';
import { setUpTeam, setupForm } from '../../../src/app/team/set-up-team.ts';
import { overview } from '../../../src/app/watching/overview.ts';
import { sprintStatus } from '../../../src/app/watching/sprint-status.ts';
import { dayPlus } from '../../../src/sprint/calendar.ts';
import {
  actorOf,
  CHANNEL,
  type Harness,
  harnessForEach,
  PEOPLE,
  refusalOf,
} from '../../support/app-harness.ts';

// Lisbon is on UTC in winter.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const dayo = actorOf('dayo');

/** Ended on Thursday of its first week, and left by everybody that evening. */
async function endedAndLeft() {
  const h = harness();
  h.directory.channels.set(CHANNEL.channelId, { name: 'tugs', isArchived: false, isShared: false });
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team);
  await h.pass('2026-11-05T12:00:00Z');
  await endTeam(h.deps, actorOf('ana'), { teamId: team.id });
  h.set('2026-11-05T18:00:00Z');
  for (const who of ['ana', 'ben', 'chi'] as const) await erasePerson(h.deps, actorOf(who));
  await h.drain();
  h.messenger.messages.length = 0;
  return { h, team, sprint };
}

async function takeOver(h: Harness) {
  const {
    existing: _,
    sprintsLeftBehind: __,
    isShared: ___,
    ...form
  } = await setupForm(h.deps, dayo, CHANNEL);
  return setUpTeam(h.deps, dayo, { ...form, memberIds: [PEOPLE.dayo], facilitatorIds: [PEOPLE.dayo] });
}

/** What the clock does on that day, in all batches. */
async function letGo(h: Harness, now: string): Promise<void> {
  h.set(now);
  while ((await letGoOfOld(h.deps)) > 0);
}

describe('a team that was ended and that everybody has left', () => {
  test('is seen by nobody, and the form says what is left behind', async () => {
    const { h } = await endedAndLeft();
    const details = await refusalOf(sprintStatus(h.deps, dayo, CHANNEL), 'not-a-member');
    expect(details).toMatchObject({ isDeserted: true });
    await refusalOf(resumeTeam(h.deps, dayo, CHANNEL), 'not-a-member');
    expect((await overview(h.deps, dayo, CHANNEL)).teams).toEqual([]);
    expect(await setupForm(h.deps, dayo, CHANNEL)).toMatchObject({ existing: false, sprintsLeftBehind: 1 });
  });

  test('goes on when somebody sets it up again, its sprint too, and is not erased on the day that was told', async () => {
    const { h, team, sprint } = await endedAndLeft();
    h.set('2026-11-06T08:00:00Z');
    const again = await takeOver(h);
    expect(again).toMatchObject({ id: team.id, name: team.name });
    expect(again.endedAt).toBeUndefined();
    expect((await sprintStatus(h.deps, dayo, CHANNEL)).sprint.id).toBe(sprint.id);
    await h.drain();
    expect(h.kindsTo(CHANNEL)).toEqual(['team-set-up']);
    expect(h.kindsTo('dayo')).toContain('role-given');
    await h.pass('2026-11-13T17:00:00Z');
    expect((await h.sprint(sprint.id)).state).toBe('closed');
    expect(h.kindsTo(CHANNEL)).toContain('verdict');
    await letGo(h, '2027-12-06T12:00:00Z');
    expect(await h.read((read) => read.teamById(team.id))).toMatchObject({ id: team.id });
  });

  test('begins with a new sprint when the one that it left open was closed meanwhile', async () => {
    const { h, sprint } = await endedAndLeft();
    const day = dayPlus('2026-11-05', DAYS_UNTIL_FINAL + 1);
    await letGo(h, `${day}T12:00:00Z`);
    expect((await h.sprint(sprint.id)).state).toBe('cancelled');
    const again = await takeOver(h);
    expect((await overview(h.deps, dayo, CHANNEL)).teams).toMatchObject([
      { isFacilitator: true, sprint: undefined, hasFinishedSprint: true },
    ]);
    const next = { startsOn: dayPlus(day, 1), endsOn: dayPlus(day, 7), cards: 'Lamp, 3, @Dayo' };
    await previewPlan(h.deps, dayo, h.planInput(again, next));
    const planned = await commitPlan(h.deps, dayo, { teamId: again.id });
    expect(planned.sprint.state).toBe('open');
  });

  test('is a new team once the old one was erased', async () => {
    const { h, team } = await endedAndLeft();
    await letGo(h, '2027-12-06T12:00:00Z');
    expect(await setupForm(h.deps, dayo, CHANNEL)).toEqual(
      expect.not.objectContaining({ sprintsLeftBehind: expect.anything() }),
    );
    expect((await takeOver(h)).id).not.toBe(team.id);
  });
});

describe('a team that was ended because it had no sprint for two years', () => {
  async function idle() {
    const h = harness();
    h.directory.channels.set(CHANNEL.channelId, { name: 'tugs', isArchived: false, isShared: false });
    const team = await h.setUpTeam();
    await h.plan(team);
    await h.pass('2026-11-13T17:00:00Z');
    await h.database.session.execute(`update loadline.sprints set created_at = '2026-10-30'` as never);
    await h.database.session.execute(`update loadline.teams set created_at = '2026-10-30'` as never);
    await letGo(h, '2028-11-20T12:00:00Z');
    const state = async () => (await h.read((read) => read.teamById(team.id)))?.endedAt !== undefined;
    expect(await state()).toBe(true);
    return { h, team, isEnded: state };
  }

  test('has as long as any other when it is taken back', async () => {
    const { h, isEnded } = await idle();
    await resumeTeam(h.deps, actorOf('ana'), CHANNEL);
    await letGo(h, '2028-11-21T12:00:00Z');
    expect(await isEnded()).toBe(false);
  });

  test('has as long as any other when somebody takes it over', async () => {
    const { h, isEnded } = await idle();
    for (const who of ['ana', 'ben', 'chi'] as const) await erasePerson(h.deps, actorOf(who));
    await takeOver(h);
    await letGo(h, '2028-11-21T12:00:00Z');
    expect(await isEnded()).toBe(false);
  });
});
